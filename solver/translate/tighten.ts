/**
 * Last touches to a solution that no higher tier can see: an oven is switched on no earlier and off no later than its uses ask,
 * and a pool's heat goes off with its last use. Kept only where the problem's own rules still hold and no tier gets worse.
 */
import type { Problem } from '../engine/problem.ts';
import type { Solution } from '../engine/outcome.ts';
import { tierValues } from '../engine/tier-values.ts';
import { verifySolution } from '../engine/verify-solution.ts';
import type { Translated } from './legend.ts';

type Intervals = Solution['tasks'][number][];

/** @returns the solution with its ovens' and pools' spans as short as they can be, or the same where nothing can be gained */
export function tightened({ problem, translation }: Translated, solution: Solution): Solution {
  const spans = [
    ...translation.ovens.map((oven) => oven.fire),
    ...translation.pools.flatMap((pool) => pool.boils.map((boil) => boil.heat)),
  ];
  let best = solution;
  for (const span of spans) best = shortened(problem, best, span);
  return best;
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
      const tasks: Intervals = [...best.tasks];
      tasks[index] = { start: interval.start + from, end: interval.end + to };
      const candidate = { ...best, tasks };
      if (
        verifySolution(problem, candidate).length > 0 ||
        isWorse(tierValues(problem, candidate), tierValues(problem, best))
      )
        break;
      best = candidate;
    }
  }
  return best;
}

const isWorse = (values: readonly number[], than: readonly number[]): boolean =>
  values.some((value, index) => value > than[index]!);
