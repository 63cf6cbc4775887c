/** The solver's thread: runs itself warm until it is asked something, then takes one job at a time, reports progress, and answers. */
import { parentPort, receiveMessageOnPort } from 'node:worker_threads';
import type { JobOrder, JobReport } from './job.ts';
import { runHelpJob } from './run-help-job.ts';
import { runJob } from './run-job.ts';
import { warmUp } from './warm-up.ts';

if (parentPort === null) throw new Error('worker.ts runs only as a worker thread');
const port = parentPort;
const report = (message: JobReport): void => port.postMessage(message);

function take({ ask, job, stop }: JobOrder): void {
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
}

// The port is looked into at every stop that the warm-up makes, so the first job waits some milliseconds for it, or for one small replan.
let first: { readonly message: JobOrder } | undefined;
warmUp(() => (first ??= receiveMessageOnPort(port) as typeof first) !== undefined);
if (first !== undefined) take(first.message);
port.on('message', take);
