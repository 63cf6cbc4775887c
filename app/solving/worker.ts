/** The solver's thread: takes one job at a time, reports progress, and answers. */
import { parentPort } from 'node:worker_threads';
import type { JobOrder, JobReport } from './job.ts';
import { runJob } from './run-job.ts';

if (parentPort === null) throw new Error('worker.ts runs only as a worker thread');
const port = parentPort;
const report = (message: JobReport): void => port.postMessage(message);

port.on('message', ({ job, stop }: JobOrder) => {
  const result = runJob(job, {
    shouldStop: () => Atomics.load(stop, 0) === 1,
    onProgress: (progress) => report({ kind: 'progress', progress }),
    now: () => performance.now(),
  });
  report({ kind: 'done', result });
});
