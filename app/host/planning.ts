/** Planning on request. */
import type { Host, PlanProgress, PlanResult } from '../api.ts';
import type { Library } from '../documents/library.ts';
import { DEFAULT_EFFORT } from '../solving/job.ts';
import type { SolverClient } from '../solving/solver-client.ts';
import { asking } from './asking.ts';

/** `Host.startPlan` over a library and a solver. */
export function planning(library: Library, solver: SolverClient): Host['startPlan'] {
  return asking<PlanProgress, PlanResult>(library, {
    doing: 'planning',
    effort: DEFAULT_EFFORT,
    mostRemembered: 40,
    start: solver.start,
    // A stopped plan depends on the moment, what is told of a clash too.
    lasts: ({ kind }, stopped) => kind === 'refused' || ((kind === 'planned' || kind === 'impossible') && !stopped),
  });
}
