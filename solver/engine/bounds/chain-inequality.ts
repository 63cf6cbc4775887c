/**
 * What chains, stocks and energies say together of the modes taken: an inequality between the modes and the tier.
 *
 * A mode that makes a chain short often draws much from a stock. Apart, "each chain ends by the tier" and "the draws fit into the stock" each
 * let every task take its own best mode; weighed together they do not. With a flow along the lags into the tier, what flows through a
 * task pays for its minutes; with prices of stocks and work
 *
 *   Σ (flow × minutes + Σ price × draw + Σ price × work) of the modes taken + constant ≤ factor × tier.
 *
 * Any prices ≥ 0 and any flow give a true inequality; how much it says hangs on them, so they come from the linear program.
 *
 * Example: two tasks, one after the other, each 1 minute by drawing 1 from a stock of 1, or 3 minutes without. The longest chain of shortest
 * modes is 2. With a flow of 1 and a price of 2 a unit drawn, either mode costs 3, so 3 + 3 ≤ tier + 2 · 1: the tier is at least 4, which is true.
 *
 * Sources: Geoffrion (1974), Lagrangean relaxation for integer programming; Fulkerson (1961), A network flow computation for project cost
 * curves, for flows as the prices of minutes on chains.
 */
import type { ModeProject } from '../project/mode-project.ts';
import type { ChainPrices } from './chain-program.ts';

export interface ChainInequality {
  /** By mode, whole numbers ≥ 0. */
  readonly costs: Float64Array;
  readonly constant: number;
  readonly factor: number;
}

/** Prices are rounded to multiples of 1 / SCALE. */
const SCALE = 8192;

/** @param prices ≥ 0 */
export function chainInequality(given: ModeProject, prices: ChainPrices): ChainInequality {
  const { firstMode, length } = given.modes;
  const { stocks, stock, drawn } = given.draws;
  const { count } = given.project;
  const ofStock = Float64Array.from(prices.stock, whole);
  const ofWork = Float64Array.from(prices.resource, whole);
  const { minutes, ...flow } = chainFlow(given, prices);
  let { constant, factor } = flow;
  const costs = new Float64Array(length.length);
  for (let task = 0; task < count; task++)
    for (let mode = firstMode[task]!; mode < firstMode[task + 1]!; mode++) {
      let cost = minutes[task]! * length[mode]!;
      ofStock.forEach((price, s) => (cost += price * drawn[mode * stocks + s]!));
      // Work that ends by the tier fits under the capacity until then.
      if (given.dues.dueOfEnd[task]! >= 0) ofWork.forEach((price, r) => (cost += price * given.work(task, mode, r)));
      costs[mode] = cost;
    }
  ofStock.forEach((price, s) => (constant -= price * stock[s]!));
  ofWork.forEach((price, r) => (factor += price * given.most[r]!));
  return { costs, constant, factor };
}

const whole = (price: number): number => Math.round(price * SCALE);

/**
 * A whole flow near the prices: what leaves each task also comes to it, over lags or from its release.
 *
 * @returns by task what pays for its minutes; the flow times the gaps that count whatever the modes; and all that flows into the tier
 */
function chainFlow(
  { lags, dues }: ModeProject,
  prices: ChainPrices,
): { readonly minutes: Float64Array; readonly constant: number; readonly factor: number } {
  const { before, release, topological, fromEnd, least, entryOfBefore } = lags;
  const { dueOfStart, dueOfEnd } = dues;
  const count = topological.length;
  const minutes = new Float64Array(count);
  const leaving = new Float64Array(count);
  let constant = 0;
  let factor = 0;
  for (let task = 0; task < count; task++) {
    const fromItsEnd = dueOfEnd[task]! < 0 ? 0 : whole(prices.end[task]!);
    const fromItsStart = dueOfStart[task]! < 0 ? 0 : whole(prices.start[task]!);
    minutes[task] = fromItsEnd;
    leaving[task] = fromItsEnd + fromItsStart;
    factor += fromItsEnd + fromItsStart;
    constant += fromItsEnd * dueOfEnd[task]! + fromItsStart * dueOfStart[task]!;
  }
  for (let k = count - 1; k >= 0; k--) {
    const task = topological[k]!;
    let left = leaving[task]!;
    let widest = -1;
    const send = (b: number, flow: number): void => {
      const a = entryOfBefore[b]!;
      const from = before.items[b]!;
      leaving[from]! += flow;
      if (fromEnd[a] === 1) minutes[from]! += flow;
      constant += flow * least[a]!;
      left -= flow;
    };
    for (let b = before.start[task]!; b < before.start[task + 1]!; b++) {
      const price = prices.lag[entryOfBefore[b]!]!;
      if (price > 0 && (widest < 0 || price > prices.lag[entryOfBefore[widest]!]!)) widest = b;
      send(b, Math.min(left, whole(price)));
    }
    // What rounding left over goes the way of most of it, unless the release holds the task.
    if (widest >= 0 && prices.release[task] === 0) send(widest, left);
    constant += left * release[task]!;
  }
  return { minutes, constant, factor };
}
