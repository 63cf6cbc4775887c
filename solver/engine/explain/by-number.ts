/** A problem by number: positions of its ids, and what follows from it alone, read once and remembered as long as the problem is. */
import type { Literal, Point, Problem } from '../problem.ts';
import type { OrderArc } from './plan-order.ts';
import { whole } from '../whole.ts';

/** Node of the origin. */
export const ORIGIN = 0;
/** Node of the start of a problem's task, by the task's position in the problem. */
export const startNode = (task: number): number => 1 + 2 * task;
/** Node of the end of a problem's task, by the task's position in the problem. */
export const endNode = (task: number): number => 2 + 2 * task;

/** A literal with its choice by position; −1 where there is no such choice. */
export interface NumberedLiteral {
  readonly choice: number;
  readonly options: readonly number[];
}

/** A lag as an arc between nodes, whenever its tasks are there and its literals hold; null: from a point to itself, which says nothing. */
interface NumberedLag {
  readonly arc: OrderArc;
  readonly if: readonly NumberedLiteral[] | null;
}

export interface ByNumber {
  readonly choices: ReadonlyMap<string, number>;
  readonly tasks: ReadonlyMap<string, number>;
  /** Positions of the tasks whose modes follow a choice, by choice. */
  readonly tasksOf: readonly (readonly number[])[];
  readonly lags: readonly (NumberedLag | null)[];
  /** Arcs of the lengths of a task in each of its modes, by task; filled as they are asked for. */
  readonly lengths: (readonly OrderArc[] | undefined)[][];
}

const known = new WeakMap<Problem, ByNumber>();

/** @param problem a problem that `validateProblem` accepts, and that does not change */
export function byNumber(problem: Problem): ByNumber {
  const before = known.get(problem);
  if (before !== undefined) return before;
  const choices = positions(problem.choices);
  const tasks = positions(problem.tasks);
  const tasksOf: number[][] = problem.choices.map(() => []);
  problem.tasks.forEach(({ choice }, task) => {
    if (choice !== undefined) tasksOf[choices.get(choice) ?? -1]?.push(task);
  });
  const node = (point: Point): number => nodeOf(tasks, point);
  const literals = (list: readonly Literal[]): readonly NumberedLiteral[] =>
    list.map(({ choice, options }) => ({ choice: choices.get(choice) ?? -1, options }));
  const read: ByNumber = {
    choices,
    tasks,
    tasksOf,
    lags: problem.lags.map((lag, index): NumberedLag | null => {
      const from = node(lag.from);
      const to = node(lag.to);
      if (from === to) return null;
      const { requirement, least } = lag;
      const why =
        requirement === undefined
          ? ({ kind: 'lag', lag: index } as const)
          : ({ kind: 'lag', lag: index, requirement } as const);
      return { arc: { from, to, least: whole(least), why }, if: lag.if === undefined ? null : literals(lag.if) };
    }),
    lengths: problem.tasks.map(() => []),
  };
  known.set(problem, read);
  return read;
}

/** Node of a point, by positions of tasks; −1 where there is no such task. */
export function nodeOf(tasks: ReadonlyMap<string, number>, point: Point): number {
  if (point === 'origin') return ORIGIN;
  const task = tasks.get(point.task);
  return task === undefined ? -1 : point.at === 'start' ? startNode(task) : endNode(task);
}

/** Whether every literal holds. @param choices the option taken, by choice */
export function allHold(literals: readonly NumberedLiteral[] | null, choices: readonly number[]): boolean {
  if (literals !== null)
    for (const { choice, options } of literals) if (!options.includes(choices[choice] ?? -1)) return false;
  return true;
}

const positions = (list: readonly { readonly id: string }[]): ReadonlyMap<string, number> => {
  const map = new Map<string, number>();
  for (let index = 0; index < list.length; index++) map.set(list[index]!.id, index);
  return map;
};
