/** The question what would help, on request: documents looked up, the job started, answers already found remembered. */
import { createHash } from 'node:crypto';
import type { HelpResult, Host } from '../api.ts';
import { gatherSession } from '../documents/gather-session.ts';
import type { Library } from '../documents/library.ts';
import { DEFAULT_HELP_EFFORT, DEFAULT_SEED, type PlanJob } from '../solving/job.ts';
import type { SolverClient } from '../solving/solver-client.ts';

/** Answers kept in memory; the one asked first goes first. */
const MOST_REMEMBERED = 20;

/** `Host.startHelp` over a library and a solver. */
export function helping(library: Library, solver: SolverClient): Host['startHelp'] {
  const remembered = new Map<string, HelpResult>();
  const remember = (mark: string, result: HelpResult): void => {
    remembered.set(mark, result);
    const oldest = remembered.keys().next();
    if (remembered.size > MOST_REMEMBERED && oldest.done !== true) remembered.delete(oldest.value);
  };

  return (request, events) => {
    let stopped = false;
    let stopJob: (() => void) | null = null;
    const begin = async (): Promise<void> => {
      const gathered = await gatherSession(library, request);
      if (!gathered.ok) return events.onDone({ kind: 'refused', faults: gathered.faults });
      if (stopped) return events.onDone({ kind: 'unknown', reason: 'stopped before a plan was found' });
      const job: PlanJob = {
        ...gathered.value,
        ...(request.crew === undefined ? {} : { crew: request.crew }),
        seed: request.seed ?? DEFAULT_SEED,
        effort: request.effort ?? DEFAULT_HELP_EFFORT,
      };
      const mark = createHash('sha256').update(JSON.stringify(job)).digest('hex');
      const known = remembered.get(mark);
      if (known !== undefined) return events.onDone(known);
      stopJob = solver.startHelp(job, {
        onProgress: events.onProgress,
        onDone: (result) => {
          // What was stopped depends on the moment.
          if (!stopped && result.kind === 'answered') remember(mark, result);
          events.onDone(result);
        },
      }).stop;
    };
    begin().catch((error: unknown) => events.onDone({ kind: 'unknown', reason: `asking failed: ${String(error)}` }));
    return {
      stop: () => {
        stopped = true;
        stopJob?.();
      },
    };
  };
}
