/** A plan drawn together: the first latest tier as small as the plan's order allows, by longest paths. */
import type { Problem } from '../problem.ts';
import { earliestTimes, latestTimes, type PlanOrder } from './plan-order.ts';

/**
 * The earliest times for a tier that wants its points early, the latest for one that wants them late.
 *
 * @param tier position of a tier of kind `latest` in the problem's list
 * @param order with the arcs that keep the other tiers
 * @returns minutes a node; null where the tier wants some points early and some late
 */
export function drawnTogether(problem: Problem, tier: number, order: PlanOrder): Int32Array | null {
  const latest = problem.tiers[tier];
  if (latest?.kind !== 'latest' || latest.terms.length === 0) return null;
  const late = latest.terms.filter((term) => term.minus === true).length;
  if (late === 0) return earliestTimes(order);
  return late < latest.terms.length ? null : latestTimes(order, new Int32Array(order.nodes).fill(problem.horizon));
}
