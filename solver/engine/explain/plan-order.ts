/**
 * The order inside a plan: a network of differences that leaves the times free and keeps every choice and every order.
 *
 * A solution says when; its **order** says what has to wait for what. An arc from node a to node b of `least` w means
 * `time[b] − time[a] ≥ w`. Times that satisfy all arcs of the order are a solution of the problem again, with the same choices:
 * lags and lengths are arcs of themselves; a capacity is kept by a chain of precedences (a partial-order schedule), so is a
 * level; of two uses that may not overlap the one that came first stays first; a cleaning that lay between two uses stays there.
 *
 * Example: two tasks of 3 and 4 minutes on one exclusive resource, the second begun at 3, give the arcs start 1 → end 1 of 3,
 * start 2 → end 2 of 4, and end 1 → start 2 of 0; a task elsewhere of 2 minutes has its own length only, and so has 5 to spare.
 *
 * Papers: Dechter, Meiri, Pearl 1991 (simple temporal networks); Bartusch, Möhring, Radermacher 1988 (least and greatest gaps).
 */
import type { Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import { lagArcs, lengthArcs, reservoirArcs, resourceArcs, soilArcs, stateArcs, totalArcs } from './order-arcs.ts';
import { Precedence } from './precedence.ts';
import { sortedByTimes } from './sort-arcs.ts';
import { endNode, startNode, takenBy } from './taken.ts';

/** Where an arc comes from. Ids are the problem's; numbers are positions in its lists. */
export type ArcReason =
  /** The shortest or longest length of the task's mode. */
  | { readonly kind: 'length'; readonly task: string }
  | { readonly kind: 'lag'; readonly lag: number; readonly requirement?: string }
  /** What one task used, another needs. */
  | { readonly kind: 'resource'; readonly resource: string }
  /** The resource has less capacity at fixed minutes. */
  | { readonly kind: 'calendar'; readonly resource: string }
  /** From a use in one class to a later one in another. */
  | { readonly kind: 'state'; readonly state: string; readonly from: number; readonly to: number }
  /** Clean before dirty (`cleaner` null), or with that task's cleaning between. */
  | { readonly kind: 'soil'; readonly resource: string; readonly cleaner: string | null }
  | { readonly kind: 'reservoir'; readonly reservoir: string }
  | { readonly kind: 'total'; readonly total: number }
  /** Nothing starts before minute 0 or ends after the horizon. */
  | { readonly kind: 'horizon' }
  /** Keeps a tier from getting worse; not in a plan's own order, but see `tier-arcs.ts`. */
  | { readonly kind: 'tier'; readonly tier: number };

/** `time[to] − time[from] ≥ least`, minutes. */
export interface OrderArc {
  readonly from: number;
  readonly to: number;
  readonly least: number;
  readonly why: ArcReason;
}

/** Node 0 is the origin; `1 + 2t` is the start and `2 + 2t` the end of the problem's task t. */
export interface PlanOrder {
  readonly nodes: number;
  /** By the solution's times of `from`, then `to`. Absent tasks have none. */
  readonly arcs: readonly OrderArc[];
  /** The solution's own times, minutes a node; −1 for absent tasks. */
  readonly times: Int32Array;
}

/**
 * The order that a solution takes.
 *
 * @param problem a problem that `validateProblem` accepts
 * @param solution a solution that `verifySolution` accepts
 */
export function planOrder(problem: Problem, solution: Solution): PlanOrder {
  const taken = takenBy(problem, solution);
  const nodes = 1 + 2 * problem.tasks.length;
  const times = new Int32Array(nodes).fill(-1);
  times[0] = 0;
  for (const task of taken.tasks) {
    times[startNode(task.index)] = task.start;
    times[endNode(task.index)] = task.end;
  }
  const known = new Precedence(nodes);
  const { precedes } = known;
  const arcs: OrderArc[] = [];
  const add = (more: readonly OrderArc[]): void => {
    for (const arc of more) arcs.push(arc);
  };
  let told = 0;
  const tell = (): void => {
    known.add(arcs.slice(told), times);
    told = arcs.length;
  };
  add(lengthArcs(problem, taken));
  add(lagArcs(problem, taken));
  add(totalArcs(problem, taken));
  tell();
  add(stateArcs(problem, taken));
  // Where only one user fits at a time there is but one chain; the shared resources after them then ask for fewer new arcs.
  for (const resource of problem.resources)
    if (resource.capacity <= 1) add(resourceArcs(resource, problem.horizon, taken, precedes));
  tell();
  for (const resource of problem.resources)
    if (resource.capacity > 1) add(resourceArcs(resource, problem.horizon, taken, precedes));
  for (const reservoir of problem.reservoirs) add(reservoirArcs(reservoir, taken, times, precedes));
  add(soilArcs(taken, precedes));
  return { nodes, arcs: sortedByTimes(arcs, times), times };
}

/** The solution with other times, in the same order; choices and absent tasks stay. */
export function withTimes(solution: Solution, times: Int32Array): Solution {
  return {
    choices: solution.choices,
    tasks: solution.tasks.map((interval, task) =>
      interval === null ? null : { start: times[startNode(task)]!, end: times[endNode(task)]! },
    ),
  };
}

/**
 * The earliest times that satisfy all arcs: longest paths from the origin (Bellman, Ford).
 *
 * @param lowerBounds minutes a node; each time is at least that. 0 where not given
 * @returns minutes a node, −1 for absent tasks; null where no times satisfy the arcs and the bounds
 */
export function earliestTimes(order: PlanOrder, lowerBounds?: Int32Array): Int32Array | null {
  const times = order.times.map((time, node) => (time < 0 ? -1 : Math.max(0, lowerBounds?.[node] ?? 0)));
  if (times[0] !== 0) return null;
  for (let round = 0; round <= order.nodes; round++) {
    let changed = false;
    for (const { from, to, least } of order.arcs) {
      const reached = times[from]! + least;
      if (reached <= times[to]!) continue;
      if (to === 0) return null;
      times[to] = reached;
      changed = true;
    }
    if (!changed) return times;
  }
  return null;
}

/**
 * The latest times that satisfy all arcs.
 *
 * @param upperBounds minutes a node; each time is at most that, and no present task ends after the horizon in any case
 * @returns minutes a node, −1 for absent tasks; null where no times satisfy the arcs and the bounds
 */
export function latestTimes(order: PlanOrder, upperBounds: Int32Array): Int32Array | null {
  const times = order.times.map((time, node) => (time < 0 ? -1 : upperBounds[node]!));
  if (times[0]! < 0) return null;
  times[0] = 0;
  for (let round = 0; round <= order.nodes; round++) {
    let changed = false;
    for (let at = order.arcs.length - 1; at >= 0; at--) {
      const { from, to, least } = order.arcs[at]!;
      const reached = times[to]! - least;
      if (reached >= times[from]!) continue;
      if (from === 0) return null;
      times[from] = reached;
      changed = true;
    }
    if (!changed) return times;
  }
  return null;
}
