/**
 * The first answer of a replan: the old plan carried on, every choice and order kept, its times pushed right as far as the facts
 * ask and no farther. Of all ways to carry on it has the earliest finish, and of those its times are close to the old ones.
 */
import type { OrderArc } from '../explain/plan-order.ts';
import { endNode, startNode } from '../explain/taken.ts';
import { OPEN, type ReplanAsked } from './asked.ts';
import type { ArcTable } from './arc-table.ts';
import { pushLeft, pushRight } from './push-right.ts';

export type CarriedOn =
  | { readonly kind: 'times'; readonly times: Int32Array; readonly finish: number; readonly steps: number }
  | { readonly kind: 'cycle'; readonly arcs: readonly OrderArc[]; readonly steps: number };

/** The latest of the finish nodes that are present. */
export const finishOf = (finish: readonly number[], times: Int32Array): number =>
  finish.reduce((latest, node) => Math.max(latest, times[node]!), 0);

/** Earliest minute of each node by the facts alone; −1 where the task is absent under `present`. */
export function boundsByFacts(asked: ReplanAsked, present: (task: number) => boolean): Int32Array {
  const { problem, facts, now, old, frozenUntil } = asked;
  const lower = new Int32Array(1 + 2 * problem.tasks.length).fill(-1);
  lower[0] = 0;
  problem.tasks.forEach((_, task) => {
    if (!present(task)) return;
    const was = old.tasks[task] ?? null;
    for (const [node, planned] of [
      [startNode(task), was?.start ?? 0],
      [endNode(task), was?.end ?? 0],
    ] as const) {
      const fact = facts[node]!;
      // What is due soon is not pulled forward.
      const soon = planned >= now && planned < frozenUntil ? planned : now;
      lower[node] = fact === OPEN ? soon : fact;
    }
  });
  return lower;
}

/**
 * @param arcs of the order to be kept, lengths, lags and facts among them
 * @param lower earliest minute of each node, of `boundsByFacts`
 * @param limit a finish from which on the times are not asked for: they may then be earlier than they need be
 */
export function carryOn(asked: ReplanAsked, arcs: ArcTable, lower: Int32Array, limit: number = Infinity): CarriedOn {
  const { problem, old, finish } = asked;
  const nodes = lower.length;
  const most = 4 * problem.horizon;
  const earliest = pushRight(nodes, arcs, lower, most);
  if (earliest.kind === 'cycle') return earliest;
  const best = finishOf(finish, earliest.times);
  if (best >= limit) return { kind: 'times', times: earliest.times, finish: best, steps: earliest.steps };
  const upper = new Int32Array(nodes).fill(most);
  for (const node of finish) upper[node] = best;
  const latest = pushLeft(arcs, earliest.times, upper);
  if (latest === null) return { kind: 'times', times: earliest.times, finish: best, steps: earliest.steps };
  // As planned where that is not too late; then the least times from there.
  const near = lower.slice();
  old.tasks.forEach((was, task) => {
    if (was === null) return;
    for (const [node, planned] of [
      [startNode(task), was.start],
      [endNode(task), was.end],
    ] as const)
      if (near[node]! >= 0) near[node] = Math.max(near[node]!, Math.min(planned, latest[node]!));
  });
  const pushed = pushRight(nodes, arcs, near, most);
  const times = pushed.kind === 'times' && finishOf(finish, pushed.times) === best ? pushed.times : earliest.times;
  return { kind: 'times', times, finish: best, steps: earliest.steps + pushed.steps + arcs.count * 4 };
}
