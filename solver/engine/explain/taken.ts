/** What a solution takes of a problem: the tasks that are present, each with its mode and times, and the conditions that hold. */
import type { Literal, Mode, Point, Problem } from '../problem.ts';
import type { Solution } from '../outcome.ts';

export interface TakenTask {
  /** Position in the problem's list. */
  readonly index: number;
  readonly id: string;
  readonly mode: Mode;
  readonly start: number;
  readonly end: number;
}

export interface Taken {
  /** Present tasks in the order of the problem. */
  readonly tasks: readonly TakenTask[];
  /** True when every literal holds under the options taken. */
  readonly holds: (literals: readonly Literal[] | undefined) => boolean;
  /** The present task of this id. */
  readonly task: (id: string) => TakenTask | undefined;
  /** Node of a point in a plan's order, or −1 where its task is absent. */
  readonly node: (point: Point) => number;
}

/** Node of the origin. */
export const ORIGIN = 0;
/** Node of the start of a problem's task, by the task's position in the problem. */
export const startNode = (task: number): number => 1 + 2 * task;
/** Node of the end of a problem's task, by the task's position in the problem. */
export const endNode = (task: number): number => 2 + 2 * task;

/**
 * Reads what a solution takes.
 *
 * @param problem a problem that `validateProblem` accepts
 * @param solution a solution that `verifySolution` accepts
 */
export function takenBy(problem: Problem, solution: Solution): Taken {
  const optionOf = new Map(problem.choices.map((choice, index) => [choice.id, solution.choices[index] ?? 0]));
  const byId = new Map<string, TakenTask>();
  problem.tasks.forEach((task, index) => {
    const interval = solution.tasks[index] ?? null;
    const mode = task.modes[task.choice === undefined ? 0 : (optionOf.get(task.choice) ?? 0)] ?? null;
    if (interval !== null && mode !== null)
      byId.set(task.id, { index, id: task.id, mode, start: interval.start, end: interval.end });
  });
  return {
    tasks: [...byId.values()],
    holds: (literals) =>
      (literals ?? []).every((literal) => literal.options.includes(optionOf.get(literal.choice) ?? -1)),
    task: (id) => byId.get(id),
    node: (point) => {
      if (point === 'origin') return ORIGIN;
      const task = byId.get(point.task);
      if (task === undefined) return -1;
      return point.at === 'start' ? startNode(task.index) : endNode(task.index);
    },
  };
}
