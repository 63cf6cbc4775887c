/**
 * Last touches to a solution that no higher tier can see: what nobody needs washed stays unwashed, an oven is switched on no
 * earlier and off no later than its uses ask, and a pool's heat goes off with its last use. Kept only where the problem's own rules still hold and no tier gets worse.
 */
import type { Problem } from '../engine/problem.ts';
import type { Solution } from '../engine/outcome.ts';
import { tierValues } from '../engine/tier-values.ts';
import { verifySolution } from '../engine/verify-solution.ts';
import type { Translated, WashLegend } from './legend.ts';

/** @returns the solution with its ovens' and pools' spans as short as they can be, or the same where nothing can be gained */
export function tightened({ problem, translation }: Translated, solution: Solution): Solution {
  const spans = [
    ...translation.ovens.map((oven) => oven.fire),
    ...translation.pools.flatMap((pool) => pool.boils.map((boil) => boil.heat)),
  ];
  let best = translation.washes.toReversed().reduce((less, wash) => withoutWash(problem, less, wash), solution);
  for (const span of spans) best = shortened(problem, best, span);
  return best;
}

/** The solution without one wash, where every rule still holds. Later washes of a thing are tried first. */
function withoutWash(problem: Problem, solution: Solution, wash: WashLegend): Solution {
  const choice = problem.choices.findIndex((each) => each.id === wash.choice);
  if (solution.choices[choice] === 0) return solution;
  const task = problem.tasks.findIndex((each) => each.id === wash.task);
  const candidate = { choices: solution.choices.with(choice, 0), tasks: solution.tasks.with(task, null) };
  return kept(problem, candidate, solution);
}

/** The candidate, if it keeps every rule and makes no tier worse; else the solution. */
function kept(problem: Problem, candidate: Solution, solution: Solution): Solution {
  const sound =
    verifySolution(problem, candidate).length === 0 &&
    !isWorse(tierValues(problem, candidate), tierValues(problem, solution));
  return sound ? candidate : solution;
}

/** The span with its start moved later, then its end earlier, minute by minute as far as every rule allows. */
function shortened(problem: Problem, solution: Solution, span: string): Solution {
  const index = problem.tasks.findIndex((task) => task.id === span);
  let best = solution;
  for (const [from, to] of [
    [1, 0],
    [0, -1],
  ] as const) {
    for (;;) {
      const interval = best.tasks[index];
      if (interval === null || interval === undefined || interval.end - interval.start < 2) break;
      const tasks = best.tasks.with(index, { start: interval.start + from, end: interval.end + to });
      const shorter = kept(problem, { ...best, tasks }, best);
      if (shorter === best) break;
      best = shorter;
    }
  }
  return best;
}

const isWorse = (values: readonly number[], than: readonly number[]): boolean =>
  values.some((value, index) => value > than[index]!);
