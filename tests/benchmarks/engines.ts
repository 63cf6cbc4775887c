import { solveByLearning } from '../../solver/engine/learning/prove.ts';
import { Learner } from '../../solver/engine/learning/learner.ts';
import type { Solve } from '../../solver/engine/outcome.ts';
import type { Problem } from '../../solver/engine/problem.ts';
import { solve } from '../../solver/engine/solve.ts';
import { solveTogether } from '../../solver/engine/together.ts';

/** The engines that can be measured, by the name given to `--engine`; the first is taken where none is named. */
export const engines: Readonly<Record<string, Solve>> = {
  together: solveTogether,
  ensemble: solve,
  learning: solveByLearning,
};

/**
 * What an engine always does before it searches, by name, where that can be done by itself. The engines that take turns make the learner's
 * model only when its turn comes, so nothing is told apart there.
 */
export const postings: Readonly<Partial<Record<string, (problem: Problem, seed: number) => unknown>>> = {
  learning: (problem, seed) => new Learner(problem, seed),
};
