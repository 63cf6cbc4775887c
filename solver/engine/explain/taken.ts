/** What a solution takes of a problem: the tasks that are present, each with its mode and times, and the conditions that hold. */
import type { Literal, Mode, Point, Problem } from '../problem.ts';
import type { Solution } from '../outcome.ts';
import { byNumber, endNode, ORIGIN, startNode } from './by-number.ts';

export { endNode, ORIGIN, startNode };

export interface TakenTask {
  /** Position in the problem's list. */
  readonly index: number;
  readonly id: string;
  readonly mode: Mode;
  /** Position of the mode in the task's list. */
  readonly option: number;
  readonly start: number;
  readonly end: number;
}

/** An amount of a resource that a task uses, all its uses together. */
export interface TakenAmount {
  readonly task: TakenTask;
  amount: number;
}

export interface Taken {
  /** Present tasks in the order of the problem. */
  readonly tasks: readonly TakenTask[];
  /** The option taken, by choice. */
  readonly choices: readonly number[];
  /** True when every literal holds under the options taken. */
  readonly holds: (literals: readonly Literal[] | undefined) => boolean;
  /** The present task of this id. */
  readonly task: (id: string) => TakenTask | undefined;
  /** Whether a node is the origin or a point of a present task. */
  readonly isThere: (node: number) => boolean;
  /** Node of a point in a plan's order, or −1 where its task is absent. */
  readonly node: (point: Point) => number;
  /** Present tasks that use a resource, in the order of the problem, those with amount 0 left out. */
  readonly users: (resource: string) => readonly TakenAmount[];
}

/**
 * Reads what a solution takes.
 *
 * @param problem a problem that `validateProblem` accepts
 * @param solution a solution that `verifySolution` accepts
 */
export function takenBy(problem: Problem, solution: Solution): Taken {
  const numbers = byNumber(problem);
  const { choices } = solution;
  const tasks: TakenTask[] = [];
  const there: (TakenTask | undefined)[] = [];
  for (let index = 0; index < problem.tasks.length; index++) {
    const task = problem.tasks[index]!;
    const interval = solution.tasks[index] ?? null;
    const option = task.choice === undefined ? 0 : (choices[numbers.choices.get(task.choice) ?? -1] ?? 0);
    const mode = interval === null ? null : (task.modes[option] ?? null);
    if (interval === null || mode === null) {
      there.push(undefined);
      continue;
    }
    const taken = { index, id: task.id, mode, option, start: interval.start, end: interval.end };
    tasks.push(taken);
    there.push(taken);
  }
  const task = (id: string): TakenTask | undefined => there[numbers.tasks.get(id) ?? -1];
  let users: ReadonlyMap<string, readonly TakenAmount[]> | undefined;
  return {
    tasks,
    choices,
    holds: (literals) =>
      (literals ?? []).every((literal) =>
        literal.options.includes(choices[numbers.choices.get(literal.choice) ?? -1] ?? -1),
      ),
    task,
    isThere: (node) => node === ORIGIN || there[(node - 1) >> 1] !== undefined,
    node: (point) => {
      if (point === 'origin') return ORIGIN;
      const at = task(point.task);
      if (at === undefined) return -1;
      return point.at === 'start' ? startNode(at.index) : endNode(at.index);
    },
    users: (resource) => (users ??= usersOf(tasks)).get(resource) ?? [],
  };
}

function usersOf(tasks: readonly TakenTask[]): ReadonlyMap<string, readonly TakenAmount[]> {
  const users = new Map<string, TakenAmount[]>();
  for (const task of tasks)
    for (const { resource, amount } of task.mode.uses) {
      if (amount === 0) continue;
      const list = users.get(resource);
      const last = list?.at(-1);
      if (list === undefined) users.set(resource, [{ task, amount }]);
      else if (last?.task === task) last.amount += amount;
      else list.push({ task, amount });
    }
  return users;
}
