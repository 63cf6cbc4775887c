/** The worth of ways to go on, reckoned the same way for every one of them. */
import { endNode, startNode } from '../explain/taken.ts';
import type { Solution } from '../outcome.ts';
import type { ReplanAsked, Worth } from './asked.ts';
import { changedUnits, neighbourPairs } from './changed-units.ts';

/** Times by node of a solution; −1 for absent tasks. */
export function timesOf(solution: Solution): Int32Array {
  const times = new Int32Array(1 + 2 * solution.tasks.length).fill(-1);
  times[0] = 0;
  solution.tasks.forEach((interval, task) => {
    if (interval === null) return;
    times[startNode(task)] = interval.start;
    times[endNode(task)] = interval.end;
  });
  return times;
}

/** @returns a function that values a solution of the settled problem */
export function worthOf(asked: ReplanAsked): (solution: Solution) => Worth {
  const { problem, old, units, finish: nodes, penalty } = asked;
  const pairs = neighbourPairs(problem, old, units);
  return (solution) => {
    const times = timesOf(solution);
    const finish = nodes.reduce((latest, node) => Math.max(latest, times[node]!), 0);
    const changed = changedUnits(problem, units, old, pairs, solution);
    return { finish, changed, total: finish + penalty * changed.length };
  };
}
