/**
 * The problem of the rest: what is past is fixed, what lies ahead starts no earlier than now.
 *
 * Facts are taken as they are, whatever rule they break: what is wholly past takes no capacity and avoids nothing any more (it
 * still leaves soil, warms the oven and draws water), and a lag between two facts that do not keep it is dropped and told.
 */
import type { Lag, Literal, Mode, Point, Problem, Task } from '../problem.ts';
import { endNode, startNode } from '../explain/taken.ts';
import { modesTaken } from './changed-units.ts';
import { OPEN, type ReplanAsked } from './asked.ts';

export interface Settled {
  readonly problem: Problem;
  /** By choice: the option that facts decide, or null. */
  readonly decided: readonly (number | null)[];
  /** Lags of the asked problem that the facts break, by position. */
  readonly broken: readonly number[];
  /** Lags of the settled problem from this position on tell facts. */
  readonly factLags: number;
}

type Past = Pick<ReplanAsked, 'problem' | 'old' | 'facts' | 'now'>;

/** Positions of tasks that have begun. */
export const begun = ({ facts, problem }: Past): readonly number[] =>
  problem.tasks.flatMap((_, task) => (facts[startNode(task)] === OPEN ? [] : [task]));

function pastMode(mode: Mode, length: number): Mode {
  return {
    ...mode,
    shortest: length,
    longest: length,
    uses: mode.uses.map(({ avoids: _, ...use }) => ({ ...use, amount: 0 })),
  };
}

/** A task with its length as it was or is known to be, so far as facts tell. */
function settledTask(asked: Past, task: Task, index: number, mode: number | null): Task {
  const [start, end] = [asked.facts[startNode(index)]!, asked.facts[endNode(index)]!];
  if (mode === null || start === OPEN || end === OPEN) return task;
  return {
    ...task,
    modes: task.modes.map((each, option) =>
      option !== mode || each === null
        ? each
        : end <= asked.now
          ? pastMode(each, end - start)
          : { ...each, shortest: end - start, longest: end - start },
    ),
  };
}

/** Literals for the options that are not taken, of each choice that facts decide. */
function decide(asked: Past): (number | null)[] {
  const { problem, old } = asked;
  const position = new Map(problem.choices.map((choice, index) => [choice.id, index]));
  const decided: (number | null)[] = problem.choices.map(() => null);
  for (const task of begun(asked)) {
    const { choice, when } = problem.tasks[task]!;
    for (const id of [...(choice === undefined ? [] : [choice]), ...(when ?? []).map((literal) => literal.choice)]) {
      const index = position.get(id)!;
      decided[index] = old.choices[index]!;
    }
  }
  return decided;
}

/** The problem with its past fixed; a solution of it is a way to go on. */
export function settle(asked: Past): Settled {
  const { problem, facts, now, old } = asked;
  const position = new Map(problem.tasks.map((task, index) => [task.id, index]));
  const known = (point: Point): number => {
    if (point === 'origin') return 0;
    const task = position.get(point.task)!;
    return facts[point.at === 'start' ? startNode(task) : endNode(task)]!;
  };
  const decided = decide(asked);
  const options = new Map(problem.choices.map((choice, index) => [choice.id, decided[index] ?? null]));
  const mayHold = (literals: readonly Literal[] | undefined): boolean =>
    (literals ?? []).every((literal) => {
      const option = options.get(literal.choice) ?? null;
      return option === null || literal.options.includes(option);
    });
  const broken: number[] = [];
  const lags = problem.lags.filter((lag, index) => {
    const [from, to] = [known(lag.from), known(lag.to)];
    if (from === OPEN || to === OPEN || to - from >= lag.least || !mayHold(lag.if)) return true;
    broken.push(index);
    return false;
  });
  const modes = modesTaken(problem, old);
  const fixed: Lag[] = problem.tasks.flatMap((task) =>
    (['start', 'end'] as const).flatMap((at): Lag[] => {
      const point = { task: task.id, at };
      const fact = known(point);
      if (fact === OPEN) return [{ from: 'origin', to: point, least: now }];
      return [
        { from: 'origin', to: point, least: fact },
        { from: point, to: 'origin', least: -fact },
      ];
    }),
  );
  return {
    decided,
    broken,
    factLags: lags.length,
    problem: {
      ...problem,
      tasks: problem.tasks.map((task, index) => settledTask(asked, task, index, modes[index]!)),
      lags: [...lags, ...fixed],
      forbidden: [
        ...problem.forbidden,
        ...problem.choices.flatMap(({ id, options: all }, index): (readonly Literal[])[] => {
          const option = decided[index];
          const others = all.map((_, other) => other).filter((other) => other !== option);
          return option == null || others.length === 0 ? [] : [[{ choice: id, options: others }]];
        }),
      ],
    },
  };
}
