/** Classical projects so large that their proof is seldom found: there good plans come first. */
import type { Problem } from '../problem.ts';

/** Tasks beyond which the learner seldom proves (measured at 120 tasks). */
export const LARGE = 80;

/**
 * Whether a problem is a large classical project, with shortest lags alone and nothing to see to but its finish, on resources that several
 * tasks share at once. Shops are none: they are often proved.
 */
export function isLargeProject(problem: Problem): boolean {
  const { tasks, tiers, resources, lags } = problem;
  const nothingElse = [problem.choices, problem.states, problem.reservoirs, problem.forbidden, problem.totals].every(
    ({ length }) => length === 0,
  );
  return (
    nothingElse &&
    tiers.length === 1 &&
    tasks.length > LARGE &&
    resources.some(({ capacity }) => capacity > 1) &&
    lags.every(({ least }) => least >= 0) &&
    tasks.every(({ modes }) => modes.length === 1 && modes[0]?.shortest === modes[0]?.longest)
  );
}
