/**
 * The solver off the main thread: starts jobs, follows them, stops them. Threads are kept warm between jobs; a job for which none
 * is free waits its turn.
 */
import { Worker } from 'node:worker_threads';
import type { HelpEvents, JobEvents } from '../api.ts';
import { bestSoFar, type BestSoFar } from './best-so-far.ts';
import type { JobOrder, JobReport, PlanJob } from './job.ts';

export interface SolverClient {
  /**
   * Starts a job, or puts it in the queue. `stop` ends it with its best so far, at once: where the thread is not at a place to answer
   * from, the best plan that it has told of is the answer. Once the job is done it does nothing.
   */
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
  /** A stopped job is answered with what it has told of where the thread has no answer within this time, ms; default 15. */
  readonly graceMs?: number;
}

interface Task {
  readonly order: Omit<JobOrder, 'stop'>;
  /** Those of the question asked; each end of the thread keeps to one question at a time. */
  readonly events: { readonly onProgress: (progress: never) => void; readonly onDone: (result: never) => void };
  readonly stop: Int32Array<SharedArrayBuffer>;
  readonly best: BestSoFar;
  /** When the thread took it, ms; until then 0. */
  began: number;
}

type Result = Extract<JobReport, { kind: 'done' }>['result'];
const stoppedTooSoon = 'stopped before a plan was found';
const unknown = (reason: string): Result & { readonly kind: 'unknown' } => ({ kind: 'unknown', reason });

/** One worker thread and the task that it has. */
class Thread {
  task: Task | null = null;
  /** A task that it is still at, though it was answered without it. */
  leaving: Task | null = null;
  readonly worker: Worker;

  constructor(url: URL, onFree: (thread: Thread) => void, onGone: (thread: Thread) => void) {
    this.worker = new Worker(url);
    this.worker.on('message', (report: JobReport) => {
      if (report.kind === 'progress') {
        if (this.leaving !== null) return;
        this.task?.best.heard(report.progress, performance.now() - this.task.began);
        return this.task?.events.onProgress(report.progress as never);
      }
      if (this.leaving !== null) this.leaving = null;
      else this.finish(report.result);
      onFree(this);
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
    task.began = performance.now();
    this.worker.ref();
    const order: JobOrder = { ...task.order, stop: task.stop };
    this.worker.postMessage(order);
  }

  /** Answers with what the task has told of, and leaves the thread to come to its end. */
  leave(): void {
    const { task } = this;
    if (task === null) return;
    this.leaving = task;
    this.finish(task.best.answer(performance.now() - task.began) ?? unknown(stoppedTooSoon));
  }

  finish(result: Result): void {
    const { task } = this;
    this.task = null;
    // A thread that waits for work must not keep the program from ending.
    this.worker.unref();
    task?.events.onDone(result as never);
  }
}

/** A client of the solver; its opener calls `close`. The first thread starts at once and runs itself warm for the first job. */
export function createSolverClient({
  worker,
  threads: most = 2,
  patienceMs = 2000,
  graceMs = 15,
}: SolverClientOptions): SolverClient {
  const threads: Thread[] = [];
  const queue: Task[] = [];
  let closed = false;

  const add = (): Thread => {
    const onGone = (gone: Thread): void => {
      if (threads.includes(gone)) threads.splice(threads.indexOf(gone), 1);
      // The next job starts once the failed one has been answered.
      queueMicrotask(next);
    };
    const thread = new Thread(worker, onFree, onGone);
    thread.worker.unref();
    threads.push(thread);
    return thread;
  };
  /** A thread that was replaced while it was leaving is one too many. */
  function onFree(thread: Thread): void {
    if (threads.length > most) {
      threads.splice(threads.indexOf(thread), 1);
      void thread.worker.terminate();
    }
    next();
  }
  function next(): void {
    while (queue.length > 0 && !closed) {
      const free = threads.find(({ task, leaving }) => task === null && leaving === null);
      // At most as many again while those that are leaving come to their end.
      const working = threads.filter(({ leaving }) => leaving === null).length;
      const thread = free ?? (working < most && threads.length < 2 * most ? add() : null);
      if (thread === null) return;
      thread.take(queue.shift()!);
    }
  }
  add();

  const begin = (order: Task['order'], events: Task['events']): { readonly stop: () => void } => {
    const stop = new Int32Array(new SharedArrayBuffer(4));
    const task: Task = { order, events, stop, best: bestSoFar(), began: 0 };
    if (closed) queueMicrotask(() => events.onDone(unknown('the solver is closed') as never));
    else {
      queue.push(task);
      next();
    }
    let stopped = false;
    return {
      stop: () => {
        Atomics.store(task.stop, 0, 1);
        const waiting = queue.indexOf(task);
        if (waiting >= 0) {
          queue.splice(waiting, 1);
          events.onDone(unknown(stoppedTooSoon) as never);
        }
        const thread = threads.find((each) => each.task === task);
        if (thread === undefined || stopped) return;
        stopped = true;
        setTimeout(() => {
          if (thread.task !== task) return;
          thread.leave();
          next();
          setTimeout(() => {
            if (thread.leaving === task) void thread.worker.terminate();
          }, patienceMs).unref();
        }, graceMs);
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
