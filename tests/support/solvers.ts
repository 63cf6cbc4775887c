/** Solvers that stand in for the one with threads. */
import type { HelpEvents, JobEvents, PlanResult } from '../../app/api.ts';
import type { PlanJob } from '../../app/solving/job.ts';
import { runHelpJob } from '../../app/solving/run-help-job.ts';
import { runJob } from '../../app/solving/run-job.ts';
import type { SolverClient } from '../../app/solving/solver-client.ts';

/** Solves in this thread, at once. */
export const inThreadSolver = (): SolverClient => ({
  start: (job, events) => {
    queueMicrotask(() =>
      events.onDone(
        runJob(job, { shouldStop: () => false, onProgress: events.onProgress, now: () => performance.now() }),
      ),
    );
    return { stop: () => {} };
  },
  startHelp: (job, { onProgress, onDone }) => {
    queueMicrotask(() => onDone(runHelpJob(job, { shouldStop: () => false, onProgress })));
    return { stop: () => {} };
  },
  close: () => Promise.resolve(),
});

/** A solver that does what the test says, and notes what it was asked. */
export interface HeldSolver extends SolverClient {
  readonly asked: { readonly job: PlanJob; readonly events: JobEvents; stopped: boolean }[];
  readonly helps: { readonly job: PlanJob; readonly events: HelpEvents; stopped: boolean }[];
}

export function heldSolver(): HeldSolver {
  const asked: HeldSolver['asked'] = [];
  const helps: HeldSolver['helps'] = [];
  return {
    asked,
    helps,
    startHelp: (job, events) => {
      const entry = { job, events, stopped: false };
      helps.push(entry);
      return {
        stop: () => {
          entry.stopped = true;
        },
      };
    },
    start: (job, events) => {
      const entry = { job, events, stopped: false };
      asked.push(entry);
      return {
        stop: () => {
          entry.stopped = true;
        },
      };
    },
    close: () => Promise.resolve(),
  };
}

/** The result of one job. */
export const resultOf = (start: (events: JobEvents) => unknown): Promise<PlanResult> =>
  new Promise((resolve) => {
    start({ onProgress: () => {}, onDone: resolve });
  });
