/** What it costs to get ready for a search: it is counted like the search itself. */
import type { Problem, Task } from '../problem.ts';

/** Units for each pair of tasks on a resource, with their options. */
const BUILD_UNITS = 6;

/**
 * What it costs to build the learner's model of a problem.
 *
 * @param tasks of the problem
 * @returns work units, those of the ensemble
 */
export function buildCost(tasks: readonly Task[]): number {
  const users = new Map<string, number>();
  for (const task of tasks)
    for (const mode of task.modes)
      for (const use of mode?.uses ?? []) users.set(use.resource, (users.get(use.resource) ?? 0) + 1);
  let pairs = 0;
  for (const count of users.values()) pairs += count * count;
  return BUILD_UNITS * pairs;
}

/** Units for each lag, and for each use of a resource in each mode, to read a problem into the parts of the ensemble. */
const READ_UNITS = 1;

/**
 * What it costs to read a problem before plans can be built in it.
 *
 * @returns work units, those of the ensemble
 */
export function readCost({ lags, tasks }: Problem): number {
  let uses = 0;
  for (const { modes } of tasks) for (const mode of modes) uses += mode?.uses.length ?? 0;
  return READ_UNITS * (lags.length + uses);
}
