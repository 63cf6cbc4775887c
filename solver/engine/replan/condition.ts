/**
 * A problem under decisions already taken: choices with one option left are gone, and with them the tasks, modes, lags and
 * conditions that they rule out. What is left is smaller and says the same.
 */
import type { Solution } from '../outcome.ts';
import type { Lag, Literal, Problem, Task } from '../problem.ts';

export interface Conditioned {
  readonly problem: Problem;
  /** A solution of the smaller problem as one of the larger. */
  readonly widen: (solution: Solution) => Solution;
  /** A solution of the larger problem that takes the decided options, as one of the smaller. */
  readonly narrow: (solution: Solution) => Solution;
}

/** Literals that are still open; null where one is false. */
type Left = readonly Literal[] | null;

/**
 * @param problem a problem that `validateProblem` accepts
 * @param decided by position of the choice: the option taken, or null where it stays open
 * @returns the smaller problem and the ways between the two
 */
export function condition(problem: Problem, decided: readonly (number | null)[]): Conditioned {
  const { left, tasks: kept } = under(problem, decided);
  const keptTasks = kept.map(({ index }) => index);
  const tasks = kept.map(({ task }) => task);
  const there = new Set(tasks.map((task) => task.id));
  const isThere = (point: Lag['from']): boolean => point === 'origin' || there.has(point.task);
  const conditional = <T extends { readonly if?: readonly Literal[] }>(item: T): T[] => {
    const literals = left(item.if);
    if (literals === null) return [];
    const { if: _if, ...common } = item;
    return [{ ...common, ...(literals.length === 0 ? {} : { if: literals }) } as T];
  };
  const keptChoices = problem.choices.flatMap((_, index) => (decided[index] == null ? [index] : []));
  const smaller: Problem = {
    ...problem,
    choices: keptChoices.map((index) => problem.choices[index]!),
    tasks,
    reservoirs: problem.reservoirs.map((reservoir) => ({
      ...reservoir,
      events: reservoir.events.filter(({ point }) => there.has(point.task)).flatMap(conditional),
    })),
    lags: problem.lags.filter((lag) => isThere(lag.from) && isThere(lag.to)).flatMap(conditional),
    forbidden: forbiddenLeft(problem, left),
    totals: problem.totals
      .map((total) => ({ ...total, tasks: total.tasks.filter((id) => there.has(id)) }))
      .filter((total) => total.tasks.length > 0)
      .flatMap(conditional),
    tiers: problem.tiers.map((tier) => {
      switch (tier.kind) {
        case 'latest':
          return { ...tier, terms: tier.terms.filter(({ point }) => there.has(point.task)) };
        case 'waiting':
          return { ...tier, terms: tier.terms.filter(({ from, to }) => isThere(from) && isThere(to)) };
        case 'cost':
        case 'changes':
          return tier;
      }
    }),
  };
  return {
    problem: smaller,
    widen: (solution) => {
      const choices = problem.choices.map((_, index) => decided[index] ?? 0);
      keptChoices.forEach((index, at) => (choices[index] = solution.choices[at]!));
      const intervals: Solution['tasks'][number][] = problem.tasks.map(() => null);
      keptTasks.forEach((index, at) => (intervals[index] = solution.tasks[at]!));
      return { choices, tasks: intervals };
    },
    narrow: (solution) => ({
      choices: keptChoices.map((index) => solution.choices[index]!),
      tasks: keptTasks.map((index) => solution.tasks[index]!),
    }),
  };
}

/** The tasks alone of the smaller problem. */
export const tasksLeft = (problem: Problem, decided: readonly (number | null)[]): readonly Task[] =>
  under(problem, decided).tasks.map(({ task }) => task);

interface Under {
  readonly left: (literals: readonly Literal[] | undefined) => Left;
  /** Tasks that can still be there, with their positions. */
  readonly tasks: readonly { readonly index: number; readonly task: Task }[];
}

function under(problem: Problem, decided: readonly (number | null)[]): Under {
  const taken = new Map<string, number>();
  problem.choices.forEach((choice, index) => {
    const option = decided[index] ?? null;
    if (option !== null) taken.set(choice.id, option);
  });
  const left = (literals: readonly Literal[] | undefined): Left => {
    const open: Literal[] = [];
    for (const literal of literals ?? []) {
      const option = taken.get(literal.choice);
      if (option === undefined) open.push(literal);
      else if (!literal.options.includes(option)) return null;
    }
    return open;
  };
  const tasks = problem.tasks.flatMap((task, index): Under['tasks'] => {
    const when = left(task.when);
    const option = task.choice === undefined ? undefined : taken.get(task.choice);
    const modes = option === undefined ? task.modes : [task.modes[option] ?? null];
    if (when === null || modes.every((mode) => mode === null)) return [];
    const { when: _when, choice, ...common } = task;
    return [
      {
        index,
        task: {
          ...common,
          modes,
          ...(when.length === 0 ? {} : { when }),
          ...(choice === undefined || option !== undefined ? {} : { choice }),
        },
      },
    ];
  });
  return { left, tasks };
}

/** Conjunctions that can still hold. */
const forbiddenLeft = (
  problem: Problem,
  left: (literals: readonly Literal[]) => Left,
): readonly (readonly Literal[])[] =>
  problem.forbidden.flatMap((literals) => {
    const open = left(literals);
    return open === null ? [] : [open];
  });
