/** The solver's thread: takes one job at a time, reports progress, and answers. */
import { parentPort } from 'node:worker_threads';
import type { JobOrder, JobReport } from './job.ts';
import { runHelpJob } from './run-help-job.ts';
import { runJob } from './run-job.ts';

if (parentPort === null) throw new Error('worker.ts runs only as a worker thread');
const port = parentPort;
const report = (message: JobReport): void => port.postMessage(message);

port.on('message', ({ ask, job, stop }: JobOrder) => {
  const shouldStop = (): boolean => Atomics.load(stop, 0) === 1;
  const result =
    ask === 'help'
      ? runHelpJob(job, { shouldStop, onProgress: (progress) => report({ kind: 'progress', progress }) })
      : runJob(job, {
          shouldStop,
          onProgress: (progress) => report({ kind: 'progress', progress }),
          now: () => performance.now(),
        });
  report({ kind: 'done', result });
});
