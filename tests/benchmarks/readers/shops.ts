import type { Lag, Problem, Task } from '../../../solver/engine/problem.ts';
import { after, problemOf, resourcesOf } from './parts.ts';

/** A job shop: `ops[j]` is job j as machine and duration of each operation, in the order they must be done. */
export interface JobShop {
  readonly name: string;
  readonly jobs: number;
  readonly machines: number;
  readonly ops: readonly (readonly (readonly [number, number])[])[];
}

/** An open shop: `durations[j][m]` is what job j needs on machine m; operations of a job come in any order. */
export interface OpenShop {
  readonly name: string;
  readonly jobs: number;
  readonly machines: number;
  readonly durations: readonly (readonly number[])[];
}

const operation = (job: number, index: number): string => `j${job}-${index}`;

/**
 * A job shop as a problem: exclusive machines, a chain of operations a job.
 *
 * @param shop the data; all machines are free at minute 0
 * @param blocking whether a job keeps its machine until its next machine takes it (a hand-over takes no time)
 */
export function jobShopProblem(shop: JobShop, blocking = false): Problem {
  const horizon = shop.ops.flat().reduce((sum, [, duration]) => sum + duration, 0);
  const tasks: Task[] = [];
  const lags: Lag[] = [];
  shop.ops.forEach((ops, job) => {
    ops.forEach(([machine, duration], index) => {
      const held = blocking && index < ops.length - 1;
      const uses = [{ resource: `r${machine}`, amount: 1 }];
      tasks.push({
        id: operation(job, index),
        group: `j${job}`,
        modes: [{ shortest: duration, longest: held ? horizon : duration, uses }],
      });
      if (index === 0) return;
      const [before, here] = [operation(job, index - 1), operation(job, index)];
      lags.push(after(before, here));
      if (blocking) lags.push({ from: { task: here, at: 'start' }, to: { task: before, at: 'end' }, least: 0 });
    });
  });
  const resources = resourcesOf(Array.from({ length: shop.machines }, () => 1));
  return problemOf(blocking ? `${shop.name} blocking` : shop.name, { horizon, tasks, resources, lags });
}

/** An open shop as a problem: each operation holds its machine and its job. */
export function openShopProblem(shop: OpenShop): Problem {
  const horizon = shop.durations.flat().reduce((sum, duration) => sum + duration, 0);
  const tasks = shop.durations.flatMap((row, job) =>
    row.map((duration, machine): Task => ({
      id: operation(job, machine),
      group: `j${job}`,
      modes: [
        {
          shortest: duration,
          longest: duration,
          uses: [
            { resource: `r${machine}`, amount: 1 },
            { resource: `r${shop.machines + job}`, amount: 1 },
          ],
        },
      ],
    })),
  );
  const resources = resourcesOf(Array.from({ length: shop.machines + shop.jobs }, () => 1));
  return problemOf(shop.name, { horizon, tasks, resources, lags: [] });
}
