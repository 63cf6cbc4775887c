/**
 * The whole question as one problem for the engine: of all ways to go on, the least `finish + penalty × changed`.
 *
 * Two kinds of tasks are added, whose costs are the only ones left: one that spans from a bound of the finish to the finish, at 1 a
 * minute; and one of no length for each unit, free where the unit is kept, at the penalty where it changes. Kept means, as in
 * `changed-units.ts`: the same modes and presence, and every pair of old neighbours that both still use their resource in the old
 * order, which are lags under a condition.
 */
import type { Solution } from '../outcome.ts';
import type { Lag, Literal, Mode, Point, Problem, Task } from '../problem.ts';
import type { ReplanAsked } from './asked.ts';
import { modesTaken, neighbourPairs, takes, unitOfTask } from './changed-units.ts';

/** Option of a unit's choice that says that it is kept. */
const KEPT = 0;

const FINISH = 'replan/finish';
const choiceOf = (unit: string): string => `replan/changed:${unit}`;
const pointOf = (problem: Problem, node: number): Point => ({
  task: problem.tasks[(node - 1) >> 1]!.id,
  at: node % 2 === 1 ? 'start' : 'end',
});

export interface Exact {
  readonly problem: Problem;
  /** A solution of the settled problem as one of this. */
  readonly extend: (solution: Solution, finish: number, changed: readonly number[]) => Solution;
  /** Back again. */
  readonly restrict: (solution: Solution) => Solution;
}

/** What contradicts "this unit is kept", task by task. */
function keptModes(
  optionsOf: ReadonlyMap<string, number>,
  task: Task,
  mode: number | null,
  kept: Literal,
): readonly (readonly Literal[])[] {
  const others = (choice: string, options: readonly number[]): Literal[] => {
    const rest = Array.from({ length: optionsOf.get(choice)! }, (_, option) => option).filter(
      (option) => !options.includes(option),
    );
    return rest.length === 0 ? [] : [{ choice, options: rest }];
  };
  if (mode === null) {
    const there = task.modes.flatMap((each, option) => (each === null ? [] : [option]));
    const sure = task.choice === undefined || there.length === task.modes.length;
    if (there.length === 0) return [];
    return [[kept, ...(task.when ?? []), ...(sure ? [] : [{ choice: task.choice, options: there }])]];
  }
  return [
    ...(task.when ?? []).flatMap((literal) => others(literal.choice, literal.options).map((other) => [kept, other])),
    ...(task.choice === undefined ? [] : others(task.choice, [mode]).map((other) => [kept, other])),
  ];
}

/**
 * @param problem settled
 * @param least no finish is earlier
 * @param most no finish later than this is of interest
 */
export function exactProblem(asked: ReplanAsked, problem: Problem, least: number, most: number): Exact {
  const { units, old, penalty, finish } = asked;
  const modes = modesTaken(asked.problem, old);
  const unitOf = unitOfTask(problem, units);
  const optionsOf = new Map(problem.choices.map(({ id, options }) => [id, options.length]));
  const kept = (unit: number): Literal => ({ choice: choiceOf(units[unit]!.id), options: [KEPT] });
  const free: Mode = { shortest: 0, longest: 0, uses: [] };
  const lags: Lag[] = [
    { from: 'origin', to: { task: FINISH, at: 'start' }, least },
    { from: { task: FINISH, at: 'start' }, to: 'origin', least: -least },
    ...finish.map((node): Lag => ({ from: pointOf(problem, node), to: { task: FINISH, at: 'end' }, least: 0 })),
  ];
  for (const { resource, first, second } of neighbourPairs(asked.problem, old, units)) {
    // Each of the two is kept on this resource only while the other, if it is still there, stands on its side.
    const [a, b] = [problem.tasks[first]!, problem.tasks[second]!];
    const staysOn = (task: Task, index: number): readonly Literal[] => {
      const on = task.modes.flatMap((_, option) => (takes(problem, index, option, resource) ? [option] : []));
      return task.choice === undefined || on.length === task.modes.length ? [] : [{ choice: task.choice, options: on }];
    };
    for (const unit of [unitOf[first]!, unitOf[second]!])
      if (unit >= 0)
        lags.push({
          from: { task: a.id, at: 'end' },
          to: { task: b.id, at: 'start' },
          least: 0,
          if: [kept(unit), ...staysOn(a, first), ...staysOn(b, second)],
        });
  }
  const tasks: Task[] = [
    ...problem.tasks.map((task): Task => ({
      ...task,
      modes: task.modes.map((mode) => {
        if (mode === null) return null;
        const { cost: _, ...costless } = mode;
        return costless;
      }),
    })),
    {
      id: FINISH,
      modes: [{ shortest: 0, longest: Math.max(0, most - least), uses: [], cost: { fixed: 0, perMinute: 1 } }],
    },
    ...units.map((unit): Task => ({
      id: choiceOf(unit.id),
      choice: choiceOf(unit.id),
      modes: [free, { ...free, cost: { fixed: penalty, perMinute: 0 } }],
    })),
  ];
  return {
    problem: {
      ...problem,
      choices: [...problem.choices, ...units.map((unit) => ({ id: choiceOf(unit.id), options: ['kept', 'changed'] }))],
      tasks,
      lags: [...problem.lags, ...lags],
      forbidden: [
        ...problem.forbidden,
        ...problem.tasks.flatMap((task, index) =>
          unitOf[index]! < 0 ? [] : keptModes(optionsOf, task, modes[index]!, kept(unitOf[index]!)),
        ),
      ],
      tiers: [{ kind: 'cost', id: 'replan' }],
    },
    extend: (solution, at, changed) => ({
      choices: [...solution.choices, ...units.map((_, unit) => (changed.includes(unit) ? 1 - KEPT : KEPT))],
      tasks: [
        ...solution.tasks,
        { start: least, end: Math.max(least, at) },
        ...units.map(() => ({ start: 0, end: 0 })),
      ],
    }),
    restrict: (solution) => ({
      choices: solution.choices.slice(0, problem.choices.length),
      tasks: solution.tasks.slice(0, problem.tasks.length),
    }),
  };
}
