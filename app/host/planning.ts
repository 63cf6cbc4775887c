/** Planning on request: documents looked up, the job started, plans already found remembered. */
import { createHash } from 'node:crypto';
import type { Host, PlanResult } from '../api.ts';
import { gatherSession } from '../documents/gather-session.ts';
import type { Library } from '../documents/library.ts';
import { DEFAULT_EFFORT, DEFAULT_SEED, type PlanJob } from '../solving/job.ts';
import type { SolverClient } from '../solving/solver-client.ts';

/** Results kept in memory; the one longest unused goes first. */
const MOST_REMEMBERED = 40;

/** Mark of all that decides a plan. */
const markOf = (job: PlanJob): string => createHash('sha256').update(JSON.stringify(job)).digest('hex');

/** A result that the same documents, seed and effort would give again. A stopped one depends on the moment, what is told of a clash too. */
function lasting(result: PlanResult, stopped: boolean): boolean {
  if (result.kind === 'planned' || result.kind === 'impossible') return !stopped;
  return result.kind === 'refused';
}

/** `Host.startPlan` over a library and a solver. */
export function planning(library: Library, solver: SolverClient): Host['startPlan'] {
  const remembered = new Map<string, PlanResult>();
  const remember = (mark: string, result: PlanResult): void => {
    remembered.delete(mark);
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
        ...(request.intent === undefined ? {} : { intent: request.intent }),
        seed: request.seed ?? DEFAULT_SEED,
        effort: request.effort ?? DEFAULT_EFFORT,
      };
      const mark = markOf(job);
      const known = remembered.get(mark);
      if (known !== undefined) {
        remember(mark, known);
        return events.onDone(known);
      }
      stopJob = solver.start(job, {
        onProgress: events.onProgress,
        onDone: (result) => {
          if (lasting(result, stopped)) remember(mark, result);
          events.onDone(result);
        },
      }).stop;
    };
    begin().catch((error: unknown) => events.onDone({ kind: 'unknown', reason: `planning failed: ${String(error)}` }));
    return {
      stop: () => {
        stopped = true;
        stopJob?.();
      },
    };
  };
}
