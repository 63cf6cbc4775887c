/**
 * Stocks that are only ever drawn from, and what they are worth to a resource.
 *
 * A mode that needs little of a resource often draws much from a stock. Apart, "the energy fits under the tier" and "the draws fit into the stock" each
 * let every task take its own cheapest mode; their sum with the right weights does not. Any weights ≥ 0 give a true inequality, so only
 * their worth hangs on how well they are chosen, by ascent along subgradients of the bound that they give.
 *
 * Example: two tasks, each with a mode of energy 9 that draws nothing and one of energy 1 that draws 2, of a stock of 2. Apart, the energy is at
 * least 2. With weight 4 a unit drawn: 9 and 9 for either mode, so at least 18 − 4 · 2 = 10, which is true.
 *
 * Sources: Geoffrion (1974), Lagrangean relaxation for integer programming; Held, Wolfe, Crowder (1974), Validation of subgradient optimization;
 * Glover (1968) for surrogate constraints. Only + − × / and square roots, so every machine agrees.
 */
import type { Problem, Reservoir, Task } from '../../problem.ts';

export interface Stock {
  readonly amount: number;
  /** By task and mode: what is surely drawn, ≥ 0. */
  readonly drawn: readonly (readonly number[])[];
}

/** Weights are whole multiples of 1 / SCALE. */
export const SCALE = 64;
/** Steps of the ascent, and how each is shorter than the one before. */
const STEPS = 150;
const SHORTER = 0.96;

/** The reservoirs that nothing fills. */
export function stocksOf(problem: Problem): Stock[] {
  return problem.reservoirs
    .filter(({ events }) => events.length > 0 && events.every(({ amount }) => amount <= 0))
    .map((reservoir) => ({
      amount: reservoir.initial,
      drawn: problem.tasks.map((task) => task.modes.map((_, mode) => drawnBy(reservoir, task, mode))),
    }));
}

function drawnBy(reservoir: Reservoir, task: Task, mode: number): number {
  let sum = 0;
  for (const { point, amount, if: when = [] } of reservoir.events) {
    if (point.task !== task.id) continue;
    // What hangs on other choices too is not sure.
    if (when.every(({ choice, options }) => choice === task.choice && options.includes(mode))) sum -= amount;
  }
  return sum;
}

/**
 * Weights of the stocks beside the energies of a resource.
 *
 * @param energies by task and mode, ≥ 0; null for a mode that cannot be taken
 * @param always by task: whether it is in every solution
 * @returns for each stock its weight times SCALE, a whole number; null where no weights say more than the energies alone
 */
export function weightsOf(
  stocks: readonly Stock[],
  energies: readonly (readonly (number | null)[])[],
  always: readonly boolean[],
): number[] | null {
  const none = stocks.map(() => 0);
  let weights = none;
  let best = { bound: -Infinity, weights };
  let step = 1;
  for (let k = 0; k < STEPS; k++, step *= SHORTER) {
    const { bound, over } = boundBy(weights, stocks, energies, always);
    if (bound > best.bound) best = { bound, weights };
    // No weight can rise or fall to any gain: where no stock is scarce, this is so at once.
    const mayMove = over.some((each, s) => each > 0 || (each < 0 && weights[s]! > 0));
    if (!mayMove) break;
    const length = Math.sqrt(over.reduce((sum, each) => sum + each * each, 0));
    weights = weights.map((weight, s) => Math.max(0, weight + (step / length) * over[s]!));
  }
  if (best.weights === none) return null;
  const whole = best.weights.map((weight) => Math.round(weight * SCALE));
  const bound = (scaled: readonly number[]): number =>
    boundBy(
      scaled.map((weight) => weight / SCALE),
      stocks,
      energies,
      always,
    ).bound;
  return bound(whole) > bound(none) ? whole : null;
}

/** The least energy by these weights, and by how much each stock is overdrawn where it is least. */
function boundBy(
  weights: readonly number[],
  stocks: readonly Stock[],
  energies: readonly (readonly (number | null)[])[],
  always: readonly boolean[],
): { readonly bound: number; readonly over: number[] } {
  const over = stocks.map(({ amount }) => -amount);
  let bound = 0;
  for (let t = 0; t < energies.length; t++) {
    if (!always[t]!) continue;
    const modes = energies[t]!;
    let least = Infinity;
    let cheapest = -1;
    for (let mode = 0; mode < modes.length; mode++) {
      let cost = modes[mode]!;
      if (cost === null) continue;
      for (let s = 0; s < stocks.length; s++) cost += weights[s]! * stocks[s]!.drawn[t]![mode]!;
      if (cost < least) [least, cheapest] = [cost, mode];
    }
    if (cheapest < 0) continue;
    bound += least;
    for (let s = 0; s < stocks.length; s++) over[s]! += stocks[s]!.drawn[t]![cheapest]!;
  }
  stocks.forEach(({ amount }, s) => (bound -= weights[s]! * amount));
  return { bound, over };
}
