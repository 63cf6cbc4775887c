/**
 * Where the slack goes: inside the order of a plan, with no tier worse, first what time there is to give away is given back (that
 * alone may cost a tier below the first), then the least waiting, then slack behind the work whose length is least sure. What comes
 * out is checked in full; where anything fails, the plan stays as it is.
 */
import { bindingChain } from '../engine/explain/binding-chain.ts';
import { drawnTogether } from '../engine/explain/drawn-together.ts';
import { planOrder, withTimes, type PlanOrder } from '../engine/explain/plan-order.ts';
import { leastWaiting, mostSlack, type Unsure } from '../engine/explain/slack-program.ts';
import { endNode, startNode } from '../engine/explain/taken.ts';
import { tierArcs } from '../engine/explain/tier-arcs.ts';
import type { Solution } from '../engine/outcome.ts';
import type { Point, Problem } from '../engine/problem.ts';
import { less, tierValues } from '../engine/tier-values.ts';
import { verifySolution } from '../engine/verify-solution.ts';
import type { SpreadKind } from '../kitchen/session.ts';
import type { Translated } from '../translate/legend.ts';
import { kindOfWaiting, spreadOf } from './spread.ts';

/**
 * Moves the slack of a plan to where it is needed.
 *
 * @param solution a solution of the translated problem
 * @returns a solution with the same choices and order, no tier of it worse unless an earlier one is better; perhaps the same
 */
export function placeSlack(translated: Translated, solution: Solution): Solution {
  return slackPlaced(translated.problem, solution, unsureMoments(translated));
}

/** As `placeSlack`, for any problem and whatever work is not sure. */
export function slackPlaced(problem: Problem, solution: Solution, unsure: readonly Unsure[]): Solution {
  const order = planOrder(problem, solution);
  let best = solution;
  /** The order at the best times so far. */
  const now = (): PlanOrder => ({ ...order, times: timesOf(order, best) });
  /** The same, with the arcs that keep the tiers asked for. */
  const keeping = (tierIsKept: (tier: number) => boolean): PlanOrder => {
    const reached = now();
    const tiers = tierArcs(problem, best, reached).filter(({ why }) => why.kind !== 'tier' || tierIsKept(why.tier));
    return { ...reached, arcs: [...order.arcs, ...tiers] };
  };
  const move = (times: Int32Array | null): void => {
    if (times !== null) best = kept(problem, withTimes(best, times), best);
  };
  const first = problem.tiers.findIndex((tier) => tier.kind === 'latest');
  const isIdle = (): boolean => bindingChain(problem, now())?.idle !== 0;
  // A plan of a search that was stopped early may have time to give away: if need be, at the cost of the tiers below.
  if (isIdle())
    move(
      drawnTogether(
        problem,
        first,
        keeping((tier) => tier !== first),
      ),
    );
  if (isIdle())
    move(
      drawnTogether(
        problem,
        first,
        keeping((tier) => tier < first),
      ),
    );
  move(
    leastWaiting(
      problem,
      keeping((tier) => problem.tiers[tier]!.kind !== 'waiting'),
    ),
  );
  move(
    mostSlack(
      keeping(() => true),
      unsure,
    ),
  );
  return best;
}

function timesOf(order: PlanOrder, solution: Solution): Int32Array {
  const times = order.times.slice();
  solution.tasks.forEach((interval, task) => {
    if (interval === null) return;
    times[startNode(task)] = interval.start;
    times[endNode(task)] = interval.end;
  });
  return times;
}

/** The candidate, if it keeps every rule and no tier is worse, unless one above it is better. */
function kept(problem: Problem, candidate: Solution, solution: Solution): Solution {
  const before = tierValues(problem, solution);
  const sound = !less(before, tierValues(problem, candidate)) && verifySolution(problem, candidate).length === 0;
  return sound ? candidate : solution;
}

/** What may last longer than planned: all hands-on work of steps, and what goes by itself, by the session's spreads. */
function unsureMoments({ problem, translation: t }: Translated): readonly Unsure[] {
  const taskIndex = new Map(problem.tasks.map((task, index) => [task.id, index]));
  const unsure: Unsure[] = [];
  const add = (point: Point, minutes: number, kind: SpreadKind): void => {
    const { late } = spreadOf(t.session, kind);
    if (point === 'origin' || minutes === 0 || late === 0) return;
    const task = taskIndex.get(point.task)!;
    const node = point.at === 'start' ? startNode(task) : endNode(task);
    // Worth a hundred times the minutes by which it may be late; more slack than those is worth nothing.
    unsure.push({ node, weight: Math.ceil(minutes * late), most: Math.ceil((minutes * late) / 100) });
  };
  for (const step of t.steps) {
    for (const { task, minutes } of step.pieces) add({ task, at: 'end' }, minutes, 'work');
    for (const { parts, operations, boundaries, ways } of step.shapes) {
      const needs = step.needs.filter((need) => need.ways.some((way) => ways.includes(way))).map(({ need }) => need);
      parts.forEach((part, index) => {
        for (const { task, minutes } of operations[index]!) add({ task, at: 'end' }, minutes, 'work');
        if (part.hands === 'off')
          add(boundaries[index + 1]!, part.shortest, kindOfWaiting(needs, part.boilMl > 0 && part.shortest === 0));
      });
    }
  }
  return unsure;
}
