/**
 * One resource for all: a weight for each task such that no tasks that can be in progress at one minute weigh more than `CAPACITY`
 * together, and all work weighs as much as it can. Whatever the capacities and orders forbid counts in it at once, so its energy says more
 * than that of any resource alone.
 *
 * The weights are the prices of a linear program: least total time of the concurrent sets that together last as long as each task does.
 *
 * Source: Mingozzi, Maniezzo, Ricciardelli, Bianco (1998), whose bound LB3 rests on such weights.
 */
import { rowPrices } from '../../linear/row-prices.ts';

/** Weights are whole numbers; thirds, fifths and sevenths of this are, too. */
export const CAPACITY = 2520;

/**
 * @param lengths of the tasks, in minutes
 * @param sets every maximal set of tasks that can be in progress at one minute
 * @returns the weight of each task; no set weighs more than `CAPACITY`, whatever the linear program said
 */
export function concurrencyWeights(lengths: readonly number[], sets: readonly (readonly number[])[]): number[] {
  const coefficients = new Float64Array(lengths.length * sets.length);
  sets.forEach((set, j) => set.forEach((task) => (coefficients[task * sets.length + j] = -1)));
  const prices = rowPrices({
    variables: sets.length,
    rows: lengths.length,
    coefficients,
    limits: Float64Array.from(lengths, (length) => -length),
    costs: new Float64Array(sets.length).fill(1),
  });
  const heaviest = Math.max(1, heaviestOf(sets, prices));
  // A price of 1/3 comes as a little less; where that makes a set too heavy, all weights give way.
  const weights = Array.from(prices, (price) => Math.floor((CAPACITY * price) / heaviest + 1e-6));
  const most = heaviestOf(sets, weights);
  return most <= CAPACITY ? weights : weights.map((weight) => Math.floor((weight * CAPACITY) / most));
}

/** What the heaviest set weighs; 0 where there is none. */
function heaviestOf(sets: readonly (readonly number[])[], weights: ArrayLike<number>): number {
  let most = 0;
  for (const set of sets)
    most = Math.max(
      most,
      set.reduce((sum, task) => sum + weights[task]!, 0),
    );
  return most;
}
