/**
 * One question to the solver on request: documents looked up, the job started, stopped when asked to, and answers that the same
 * documents, seed and effort would give again remembered.
 */
import { createHash } from 'node:crypto';
import type { Fault, PlanRequest } from '../api.ts';
import { gatherSession } from '../documents/gather-session.ts';
import type { Library } from '../documents/library.ts';
import { DEFAULT_SEED, type PlanJob } from '../solving/job.ts';

interface Events<Progress, Result> {
  readonly onProgress: (progress: Progress) => void;
  readonly onDone: (result: Result) => void;
}

type NoAnswer =
  | { readonly kind: 'refused'; readonly faults: readonly Fault[] }
  | { readonly kind: 'unknown'; readonly reason: string };

export interface Question<Progress, Result> {
  /** What is done, to tell where it fails: `planning`. */
  readonly doing: string;
  /** Work units where the request names none. */
  readonly effort: number;
  /** Answers kept in memory; the one longest unused goes first. */
  readonly mostRemembered: number;
  readonly start: (job: PlanJob, events: Events<Progress, Result>) => { readonly stop: () => void };
  /** Whether the answer would be given again; what was stopped depends on the moment. */
  readonly lasts: (result: Result, stopped: boolean) => boolean;
}

/** Asks the question of requests over a library. */
export function asking<Progress, Result>(
  library: Library,
  { doing, effort, mostRemembered, start, lasts }: Question<Progress, Result | NoAnswer>,
): (request: PlanRequest, events: Events<Progress, Result | NoAnswer>) => { readonly stop: () => void } {
  const remembered = new Map<string, Result | NoAnswer>();
  const remember = (mark: string, result: Result | NoAnswer): void => {
    remembered.delete(mark);
    remembered.set(mark, result);
    const oldest = remembered.keys().next();
    if (remembered.size > mostRemembered && oldest.done !== true) remembered.delete(oldest.value);
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
        effort: request.effort ?? effort,
      };
      const mark = createHash('sha256').update(JSON.stringify(job)).digest('hex');
      const known = remembered.get(mark);
      if (known !== undefined) {
        remember(mark, known);
        return events.onDone(known);
      }
      stopJob = start(job, {
        onProgress: events.onProgress,
        onDone: (result) => {
          if (lasts(result, stopped)) remember(mark, result);
          events.onDone(result);
        },
      }).stop;
    };
    begin().catch((error: unknown) => events.onDone({ kind: 'unknown', reason: `${doing} failed: ${String(error)}` }));
    return {
      stop: () => {
        stopped = true;
        stopJob?.();
      },
    };
  };
}
