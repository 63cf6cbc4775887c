/** Whether a problem has any plan at all. */
import type { Solution } from '../engine/outcome.ts';
import type { Problem } from '../engine/problem.ts';
import { solveTogether } from '../engine/together.ts';
import { verifySolution } from '../engine/verify-solution.ts';

export interface FitsOptions {
  readonly seed: number;
  /** Most work units. */
  readonly effort: number;
  readonly shouldStop?: () => boolean;
}

export type Fits =
  | { readonly kind: 'fits'; readonly solution: Solution; readonly work: number }
  | { readonly kind: 'clash' | 'unknown'; readonly work: number };

/**
 * Looks for any plan; how good it is does not matter.
 *
 * @returns `fits` with a plan that keeps every rule, `clash` after proof, `unknown` when neither was reached in the effort given
 */
export function fits(problem: Problem, { seed, effort, shouldStop }: FitsOptions): Fits {
  let found: Solution | null = null;
  const outcome = solveTogether(
    { ...problem, tiers: [] },
    {
      seed,
      effort,
      shouldStop: () => found !== null || shouldStop?.() === true,
      onProgress: (_, solution) => {
        found ??= solution;
      },
    },
  );
  // The callback assigns `found`, which the compiler does not follow.
  const solution = 'solution' in outcome ? outcome.solution : (found as Solution | null);
  const { work } = outcome;
  if (solution !== null && verifySolution(problem, solution).length === 0) return { kind: 'fits', solution, work };
  return { kind: outcome.kind === 'impossible' ? 'clash' : 'unknown', work };
}
