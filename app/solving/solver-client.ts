/**
 * The solver off the main thread: starts jobs, follows them, stops them. Threads are kept warm between jobs; a job for which none
 * is free waits its turn.
 */
import { Worker } from 'node:worker_threads';
import type { HelpEvents, JobEvents } from '../api.ts';
import type { JobOrder, JobReport, PlanJob } from './job.ts';

export interface SolverClient {
  /** Starts a job, or puts it in the queue. `stop` ends it with its best so far; once it is done it does nothing. */
  readonly start: (job: PlanJob, events: JobEvents) => { readonly stop: () => void };
  /** As `start`, for the question what would help; `stop` ends it with what is known. */
  readonly startHelp: (job: PlanJob, events: HelpEvents) => { readonly stop: () => void };
  /** Ends every thread; jobs under way are answered with `unknown`. */
  readonly close: () => Promise<void>;
}

export interface SolverClientOptions {
  /** The built `worker.ts`. */
  readonly worker: URL;
  /** Most jobs at once; default 2. */
  readonly threads?: number;
  /** A thread that does not obey a stop within this time is ended, ms; default 2,000. */
  readonly patienceMs?: number;
}

interface Task {
  readonly order: Omit<JobOrder, 'stop'>;
  /** Those of the question asked; each end of the thread keeps to one question at a time. */
  readonly events: { readonly onProgress: (progress: never) => void; readonly onDone: (result: never) => void };
  readonly stop: Int32Array<SharedArrayBuffer>;
}

type Result = Extract<JobReport, { kind: 'done' }>['result'];
const unknown = (reason: string): Result & { readonly kind: 'unknown' } => ({ kind: 'unknown', reason });

/** One worker thread and the task that it has. */
class Thread {
  task: Task | null = null;
  readonly worker: Worker;

  constructor(url: URL, onFree: () => void, onGone: (thread: Thread) => void) {
    this.worker = new Worker(url);
    this.worker.on('message', (report: JobReport) => {
      if (report.kind === 'progress') return this.task?.events.onProgress(report.progress as never);
      this.finish(report.result);
      onFree();
    });
    // A thread that failed takes no more work, though its end is told only later.
    const end = (reason: string): void => {
      onGone(this);
      this.finish(unknown(reason));
    };
    this.worker.on('error', (error) => end(`the solver failed: ${error.message}`));
    this.worker.on('exit', () => end('the solver was ended before it had an answer'));
  }

  take(task: Task): void {
    this.task = task;
    this.worker.ref();
    const order: JobOrder = { ...task.order, stop: task.stop };
    this.worker.postMessage(order);
  }

  finish(result: Result): void {
    const { task } = this;
    this.task = null;
    // A thread that waits for work must not keep the program from ending.
    this.worker.unref();
    task?.events.onDone(result as never);
  }
}

/** A client of the solver; its opener calls `close`. The first thread starts at once, so that it is warm for the first job. */
export function createSolverClient({
  worker,
  threads: most = 2,
  patienceMs = 2000,
}: SolverClientOptions): SolverClient {
  const threads: Thread[] = [];
  const queue: Task[] = [];
  let closed = false;

  const add = (): Thread => {
    const thread = new Thread(worker, next, (gone) => {
      if (threads.includes(gone)) threads.splice(threads.indexOf(gone), 1);
      // The next job starts once the failed one has been answered.
      queueMicrotask(next);
    });
    thread.worker.unref();
    threads.push(thread);
    return thread;
  };
  function next(): void {
    while (queue.length > 0 && !closed) {
      const thread = threads.find(({ task }) => task === null) ?? (threads.length < most ? add() : null);
      if (thread === null) return;
      thread.take(queue.shift()!);
    }
  }
  add();

  const begin = (order: Task['order'], events: Task['events']): { readonly stop: () => void } => {
    const task: Task = { order, events, stop: new Int32Array(new SharedArrayBuffer(4)) };
    if (closed) queueMicrotask(() => events.onDone(unknown('the solver is closed') as never));
    else {
      queue.push(task);
      next();
    }
    return {
      stop: () => {
        Atomics.store(task.stop, 0, 1);
        const waiting = queue.indexOf(task);
        if (waiting >= 0) {
          queue.splice(waiting, 1);
          events.onDone(unknown('stopped before a plan was found') as never);
        }
        setTimeout(() => void threads.find((thread) => thread.task === task)?.worker.terminate(), patienceMs).unref();
      },
    };
  };

  return {
    start: (job, events) => begin({ job }, events),
    startHelp: (job, events) => begin({ ask: 'help', job }, events),
    close: async () => {
      closed = true;
      for (const { events } of queue.splice(0)) events.onDone(unknown('the solver was closed') as never);
      await Promise.all([...threads].map(({ worker }) => worker.terminate()));
    },
  };
}
