/**
 * Where the slack goes: inside the order of a plan, with every tier kept, the least waiting first, then slack behind the work
 * whose length is least sure. What comes out is checked in full; where anything fails, the plan stays as it is.
 */
import { planOrder, withTimes, type PlanOrder } from '../engine/explain/plan-order.ts';
import { leastWaiting, mostSlack, type Unsure } from '../engine/explain/slack-program.ts';
import { tierArcs } from '../engine/explain/tier-arcs.ts';
import type { Solution } from '../engine/outcome.ts';
import type { Problem } from '../engine/problem.ts';
import { tierValues } from '../engine/tier-values.ts';
import { verifySolution } from '../engine/verify-solution.ts';
import type { Operation, Translated } from '../translate/legend.ts';

/**
 * Moves the slack of a plan to where it is needed.
 *
 * @param solution a solution of the translated problem
 * @returns a solution with the same choices and order, no tier of it worse; perhaps the same
 */
export function placeSlack(translated: Translated, solution: Solution): Solution {
  return slackPlaced(translated.problem, solution, unsureWork(translated));
}

/** As `placeSlack`, for any problem and whatever work is not sure. */
export function slackPlaced(problem: Problem, solution: Solution, unsure: readonly Unsure[]): Solution {
  let best = solution;
  const order = planOrder(problem, best);
  const waiting = leastWaiting(problem, within(problem, best, order, false));
  if (waiting !== null) best = kept(problem, withTimes(best, waiting), best);
  const times = best === solution ? order.times : waiting!;
  const slack = mostSlack(within(problem, best, { ...order, times }, true), unsure);
  return slack === null ? best : kept(problem, withTimes(best, slack), best);
}

/** The order with arcs that keep the tiers; those of waiting only where asked. */
function within(problem: Problem, solution: Solution, order: PlanOrder, waiting: boolean): PlanOrder {
  const tiers = tierArcs(problem, solution, order).filter(
    ({ why }) => waiting || why.kind !== 'tier' || problem.tiers[why.tier]!.kind !== 'waiting',
  );
  return { ...order, arcs: [...order.arcs, ...tiers] };
}

/** The candidate, if it keeps every rule and no tier is worse. */
function kept(problem: Problem, candidate: Solution, solution: Solution): Solution {
  const before = tierValues(problem, solution);
  const sound =
    tierValues(problem, candidate).every((value, index) => value <= before[index]!) &&
    verifySolution(problem, candidate).length === 0;
  return sound ? candidate : solution;
}

/** Share of hands-on minutes by which work may run over; slack beyond twice that is worth nothing. */
const SPREAD = 0.2;

/** All hands-on work of steps; the longer it is, the less sure it is. */
function unsureWork({ problem, translation: t }: Translated): readonly Unsure[] {
  const operations: readonly Operation[] = t.steps.flatMap((step) => [
    ...step.pieces,
    ...step.shapes.flatMap((shape) => shape.operations.flat()),
  ]);
  const taskIndex = new Map(problem.tasks.map((task, index) => [task.id, index]));
  return operations.map(({ task, minutes }) => ({
    task: taskIndex.get(task)!,
    weight: Math.max(1, minutes),
    most: Math.max(1, Math.ceil(2 * SPREAD * minutes)),
  }));
}
