/** What it costs to build the learner's model of a problem. */
import type { Task } from '../problem.ts';

/** Units for each pair of tasks on a resource, with their options. */
const BUILD_UNITS = 6;

/**
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
