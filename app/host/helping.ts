/** The question what would help, on request. */
import type { HelpProgress, HelpResult, Host } from '../api.ts';
import type { Library } from '../documents/library.ts';
import { DEFAULT_HELP_EFFORT } from '../solving/job.ts';
import type { SolverClient } from '../solving/solver-client.ts';
import { asking } from './asking.ts';

/** `Host.startHelp` over a library and a solver. The intent does not matter to the answer. */
export function helping(library: Library, solver: SolverClient): Host['startHelp'] {
  const ask = asking<HelpProgress, HelpResult>(library, {
    doing: 'asking',
    effort: DEFAULT_HELP_EFFORT,
    mostRemembered: 20,
    start: solver.startHelp,
    lasts: ({ kind }, stopped) => kind === 'answered' && !stopped,
  });
  return ({ intent: _, ...request }, events) => ask(request, events);
}
