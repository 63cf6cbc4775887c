/**
 * The binding chain: why the first latest tier of a plan cannot be less in the plan's order.
 *
 * A finish is decided by a path of arcs from the origin to the point that ends last, with no time to spare in any of them: the
 * critical path (Kelley & Walker 1959), here with resources, gaps and states as arcs too. A latest start is decided by such a
 * path from the point that starts first to a deadline, which is the origin again.
 */
import type { Problem } from '../problem.ts';
import { earliestTimes, latestTimes, type OrderArc, type PlanOrder } from './plan-order.ts';
import { endNode, ORIGIN, startNode } from './taken.ts';

export interface BindingChain {
  /** Position of the tier in the problem's list. */
  readonly tier: number;
  /** `finish`: from the origin to the last point; `start`: from the first point to a deadline. */
  readonly decides: 'finish' | 'start';
  /** Each begins where the one before ends; the sum of their leasts is what the order alone asks for. */
  readonly arcs: readonly OrderArc[];
  /** The times for which the arcs are tight, minutes a node: the solution's own where `idle` is 0. */
  readonly times: Int32Array;
  /** Minutes that the solution takes over what its order asks for; 0 for a plan without idle time. */
  readonly idle: number;
}

/** What an arc adds to the length of a telling, > 0; of several chains the one told in fewest words is given. */
export type ArcCost = (arc: OrderArc) => number;

/**
 * The chain of the first tier of kind `latest`.
 *
 * @param order of a solution of the problem
 * @returns null where there is no such tier, or nothing present in it
 */
export function bindingChain(problem: Problem, order: PlanOrder, costOf: ArcCost = () => 1): BindingChain | null {
  const tier = problem.tiers.findIndex((each) => each.kind === 'latest');
  const last = tier < 0 ? null : decidingPoint(problem, order, tier);
  if (last === null) return null;
  const { node, minus } = last;
  const own = minus
    ? tightPath(order, order.times, node, ORIGIN, costOf)
    : tightPath(order, order.times, ORIGIN, node, costOf);
  const decides = minus ? 'start' : 'finish';
  if (own !== null) return { tier, decides, arcs: own, times: order.times, idle: 0 };
  const times = minus ? latestTimes(order, new Int32Array(order.nodes).fill(problem.horizon)) : earliestTimes(order);
  if (times === null) throw new Error('the order of a solution has no times');
  const arcs = minus ? tightPath(order, times, node, ORIGIN, costOf) : tightPath(order, times, ORIGIN, node, costOf);
  if (arcs === null) return null;
  return { tier, decides, arcs, times, idle: Math.abs(order.times[node]! - times[node]!) };
}

/** The point with the largest value in a latest tier. */
export function decidingPoint(
  problem: Problem,
  order: PlanOrder,
  tier: number,
): { readonly node: number; readonly minus: boolean; readonly value: number } | null {
  const { kind, terms } = problem.tiers[tier] as Extract<Problem['tiers'][number], { kind: 'latest' }>;
  if (kind !== 'latest') return null;
  const taskIndex = new Map(problem.tasks.map((task, index) => [task.id, index]));
  let best: { node: number; minus: boolean; value: number } | null = null;
  for (const term of terms) {
    const index = taskIndex.get(term.point.task)!;
    const node = term.point.at === 'start' ? startNode(index) : endNode(index);
    const time = order.times[node]!;
    if (time < 0) continue;
    const minus = term.minus === true;
    const value = (term.plus ?? 0) + (minus ? -time : time);
    if (best === null || value > best.value) best = { node, minus, value };
  }
  return best;
}

/** The cheapest path of tight arcs (Dijkstra); null where there is none. */
function tightPath(
  order: PlanOrder,
  times: Int32Array,
  from: number,
  to: number,
  costOf: ArcCost,
): readonly OrderArc[] | null {
  const leaving: OrderArc[][] = Array.from({ length: order.nodes }, () => []);
  for (const arc of order.arcs) if (times[arc.to]! - times[arc.from]! === arc.least) leaving[arc.from]!.push(arc);
  const cost = new Float64Array(order.nodes).fill(Infinity);
  const reachedBy: (OrderArc | null)[] = Array.from({ length: order.nodes }, () => null);
  const settled = new Uint8Array(order.nodes);
  cost[from] = 0;
  for (;;) {
    let nearest = -1;
    for (let node = 0; node < order.nodes; node++)
      if (settled[node] === 0 && cost[node]! < (nearest < 0 ? Infinity : cost[nearest]!)) nearest = node;
    if (nearest < 0) return null;
    if (nearest === to) break;
    settled[nearest] = 1;
    for (const arc of leaving[nearest]!) {
      const reached = cost[nearest]! + costOf(arc);
      if (reached >= cost[arc.to]!) continue;
      cost[arc.to] = reached;
      reachedBy[arc.to] = arc;
    }
  }
  const path: OrderArc[] = [];
  for (let node = to; node !== from || path.length === 0;) {
    const arc = reachedBy[node];
    if (arc === null || arc === undefined) return null;
    path.push(arc);
    node = arc.from;
  }
  return path.reverse();
}
