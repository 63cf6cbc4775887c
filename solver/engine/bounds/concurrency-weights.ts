/**
 * One resource for all: a weight for each task such that no tasks that can be in progress at one minute weigh more than `CAPACITY`
 * together, and all work weighs as much as it can. Whatever the capacities and orders forbid counts in it at once, so its energy says more
 * than that of any resource alone.
 *
 * The weights are the prices of a linear program: least total time of the concurrent sets that together last as long as each task does. It
 * begins with few sets, and those are added that weigh too much by the prices so far, until there is none: a few hundred of the thousands
 * there are.
 *
 * Sources: Mingozzi, Maniezzo, Ricciardelli, Bianco (1998), whose bound LB3 rests on such weights; Gilmore & Gomory (1961), A linear
 * programming approach to the cutting-stock problem, for adding what the prices ask for; Kelley (1960), The cutting-plane method.
 */
import { rowPrices } from '../../linear/row-prices.ts';
import { ConcurrentSets, weightOf } from './concurrent-sets.ts';
import type { ConcurrencyQuestion } from './concurrent-sets.ts';

/** Weights are whole numbers; thirds, fifths and sevenths of this are, too. */
export const CAPACITY = 2520;

/** Linear programs solved before giving up, coefficients of the last of them, and sets looked at for those that weigh too much. */
const MOST_ROUNDS = 40;
const MOST_COEFFICIENTS = 36_000;
const MOST_LOOKS = 100_000;
/** What prices may say too much in floating point. */
const SLACK = 1e-6;

/**
 * @param lengths of the tasks, in minutes
 * @param question what each task takes, and which stand apart
 * @param shouldStop asked between linear programs, each some hundredths of a second
 * @returns the weight of each task; no set weighs more than `CAPACITY`, whatever the linear program said. Null where there are too many sets,
 *   or when told to stop
 */
export function concurrencyWeights(
  lengths: readonly number[],
  question: ConcurrencyQuestion,
  shouldStop?: () => boolean,
): number[] | null {
  const prices = pricesOf(lengths, question, shouldStop);
  // A price of 1/3 comes as a little less. Of whole weights none is over for the slack.
  return prices === null ? null : Array.from(prices, (price) => Math.floor(CAPACITY * price + SLACK));
}

/** Prices under which no set weighs more than 1 and `SLACK`. */
function pricesOf(
  lengths: readonly number[],
  question: ConcurrencyQuestion,
  shouldStop?: () => boolean,
): Float64Array | null {
  const sets = new ConcurrentSets(question);
  const largest = question.amounts.map((amount) =>
    Math.max(...amount.map((use, r) => use / Math.max(1, question.capacities[r]!)), 0.01),
  );
  const mostSets = MOST_COEFFICIENTS / lengths.length;
  const rows: number[][] = [];
  let prices: Float64Array = Float64Array.from(lengths);
  for (let round = 0; round < MOST_ROUNDS && rows.length < mostSets && shouldStop?.() !== true; round++) {
    let found = overweight(prices, largest, sets, rows.length === 0 ? 0 : 1 + SLACK);
    if (found.length === 0) {
      const heavier = sets.heavier(prices, 1 + SLACK, MOST_LOOKS);
      if (heavier === null) return null;
      if (heavier.length === 0) return prices;
      found = heavier.map((set) => sets.grown(set[0]!, [...set, ...sets.tasks]));
    }
    rows.push(...found);
    prices = pricesUnder(rows, lengths);
  }
  return null;
}

/** Sets that weigh more than `limit`, each grown from another task, heavy tasks first and heavy for their size first. */
function overweight(
  weights: ArrayLike<number>,
  sizes: readonly number[],
  sets: ConcurrentSets,
  limit: number,
): number[][] {
  const byWeight = [...sets.tasks].sort((a, b) => weights[b]! - weights[a]! || a - b);
  const bySize = [...sets.tasks].sort((a, b) => weights[b]! / sizes[b]! - weights[a]! / sizes[a]! || a - b);
  const found = new Map<string, number[]>();
  for (const task of sets.tasks)
    for (const order of [byWeight, bySize]) {
      const set = sets.grown(task, order);
      if (weightOf(set, weights) > limit) found.set([...set].sort((a, b) => a - b).join(), set);
    }
  return [...found.values()];
}

function pricesUnder(sets: readonly (readonly number[])[], lengths: readonly number[]): Float64Array {
  const coefficients = new Float64Array(lengths.length * sets.length);
  sets.forEach((set, j) => set.forEach((task) => (coefficients[task * sets.length + j] = -1)));
  return rowPrices({
    variables: sets.length,
    rows: lengths.length,
    coefficients,
    limits: Float64Array.from(lengths, (length) => -length),
    costs: new Float64Array(sets.length).fill(1),
  });
}
