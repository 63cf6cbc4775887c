/** How far the times of a plan may move in its order before a latest tier gets worse. */
import type { Problem } from '../problem.ts';
import { earliestTimes, latestTimes, type PlanOrder } from './plan-order.ts';
import { endNode, startNode } from './taken.ts';

export interface Room {
  /** Minutes a node, −1 for absent tasks. */
  readonly earliest: Int32Array;
  /** Minutes a node, −1 for absent tasks. The slack of a point is its latest time less its own. */
  readonly latest: Int32Array;
}

/**
 * The earliest and the latest time of every point, with every tier of kind `latest` at the value it has now, or less.
 *
 * @param order of a solution of the problem
 */
export function roomWithin(problem: Problem, order: PlanOrder): Room {
  const lower = new Int32Array(order.nodes);
  const upper = new Int32Array(order.nodes).fill(problem.horizon);
  const taskIndex = new Map(problem.tasks.map((task, index) => [task.id, index]));
  for (const tier of problem.tiers) {
    if (tier.kind !== 'latest') continue;
    const terms = tier.terms.flatMap((term) => {
      const index = taskIndex.get(term.point.task)!;
      const node = term.point.at === 'start' ? startNode(index) : endNode(index);
      const time = order.times[node]!;
      const minus = term.minus === true;
      const plus = term.plus ?? 0;
      return time < 0 ? [] : [{ node, minus, plus, value: plus + (minus ? -time : time) }];
    });
    // No tier is ever less than 0.
    const value = Math.max(0, ...terms.map((term) => term.value));
    for (const { node, minus, plus } of terms)
      if (minus) lower[node] = Math.max(lower[node]!, plus - value);
      else upper[node] = Math.min(upper[node]!, value - plus);
  }
  const earliest = earliestTimes(order, lower);
  const latest = latestTimes(order, upper);
  if (earliest === null || latest === null) throw new Error('the times of a solution do not keep its own order');
  return { earliest, latest };
}
