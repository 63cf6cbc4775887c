import { solveByLearning } from '../../solver/engine/learning/prove.ts';
import type { Solve } from '../../solver/engine/outcome.ts';
import { solve } from '../../solver/engine/solve.ts';
import { solveTogether } from '../../solver/engine/together.ts';

/** The engines that can be measured, by the name given to `--engine`; the first is taken where none is named. */
export const engines: Readonly<Record<string, Solve>> = {
  together: solveTogether,
  ensemble: solve,
  learning: solveByLearning,
};
