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
  const things = [...new Set(translation.washes.map((wash) => wash.thing))];
  let best = things.reduce(
    (less, thing) =>
      withFewWashes(
        problem,
        less,
        translation.washes.filter((wash) => wash.thing === thing),
      ),
    solution,
  );
  for (const span of spans) best = shortened(problem, best, span);
  return best;
}

/** The solution with as few washes of one thing as every rule allows. The washes of a thing are interchangeable, first to last. */
function withFewWashes(problem: Problem, solution: Solution, washes: readonly WashLegend[]): Solution {
  const choices = washes.map((wash) => problem.choices.findIndex((each) => each.id === wash.choice));
  const tasks = washes.map((wash) => problem.tasks.findIndex((each) => each.id === wash.task));
  let best = solution;
  for (let dropped = washes.length - 1; dropped >= 0; dropped--) {
    if (best.choices[choices[dropped]!] === 0) continue;
    // Those after it move up one number, and the last is none.
    let candidate = best;
    for (let number = dropped; number < washes.length; number++) {
      const next = number + 1 < washes.length ? number + 1 : null;
      candidate = {
        choices: candidate.choices.with(choices[number]!, next === null ? 0 : best.choices[choices[next]!]!),
        tasks: candidate.tasks.with(tasks[number]!, next === null ? null : best.tasks[tasks[next]!]!),
      };
    }
    best = kept(problem, candidate, best);
  }
  return best;
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
