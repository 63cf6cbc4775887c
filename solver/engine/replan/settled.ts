/**
 * The problem of the rest: what is past is fixed, what lies ahead starts no earlier than now.
 *
 * Facts are taken as they are, whatever rule they break: what is wholly past takes no capacity and avoids nothing any more (it
 * still leaves soil, warms the oven and draws water), what is under way no longer avoids the soil that it has met, and a lag between two
 * facts that do not keep it is dropped and told.
 */
import type { Lag, Literal, Mode, Point, Problem, Task, Use } from '../problem.ts';
import { endNode, startNode } from '../explain/taken.ts';
import { modesTaken } from './changed-units.ts';
import { OPEN, type ReplanAsked } from './asked.ts';

export interface Settled {
  readonly problem: Problem;
  /** By choice: the option that facts decide, or null. */
  readonly decided: readonly (number | null)[];
  /** Lags of the asked problem that the facts break, by position. */
  readonly broken: readonly number[];
  /** Whether what has begun has met soil that it avoids. */
  readonly hasMetSoil: boolean;
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

interface PastUse {
  readonly task: number;
  readonly from: number;
  /** Infinity: under way. */
  readonly until: number;
  readonly use: Use;
}

/** Uses of what has begun that have to do with soil, by resource. */
function soilingUses(asked: Past, modes: readonly (number | null)[]): ReadonlyMap<string, readonly PastUse[]> {
  const on = new Map<string, PastUse[]>();
  for (const task of begun(asked)) {
    const mode = modes[task] ?? null;
    if (mode === null) continue;
    const [from, end] = [asked.facts[startNode(task)]!, asked.facts[endNode(task)]!];
    for (const use of asked.problem.tasks[task]!.modes[mode]!.uses) {
      if (use.leaves === undefined && use.avoids === undefined && use.cleans !== true) continue;
      const past = { task, from, until: end === OPEN ? Infinity : end, use };
      const list = on.get(use.resource);
      if (list === undefined) on.set(use.resource, [past]);
      else list.push(past);
    }
  }
  return on;
}

/** A task under way, that avoids no more what has been on its resources when it began or came there since: that cannot be undone. */
function spoiledTask(
  task: Task,
  index: number,
  mode: number | null,
  past: ReadonlyMap<string, readonly PastUse[]>,
): Task {
  const spoiled = (use: Use): Use => {
    const { avoids, ...rest } = use;
    const on = past.get(use.resource) ?? [];
    const own = on.find((each) => each.task === index);
    if (avoids === undefined || own === undefined) return use;
    const meets = (each: PastUse, mark: string): boolean =>
      each.task !== index &&
      each.from < own.until &&
      each.use.leaves?.includes(mark) === true &&
      !on.some((wash) => wash.use.cleans === true && wash.from >= each.until && wash.until <= own.from);
    const left = avoids.filter((mark) => !on.some((each) => meets(each, mark)));
    return left.length === avoids.length ? use : left.length === 0 ? rest : { ...rest, avoids: left };
  };
  if (mode === null) return task;
  const uses = task.modes[mode]!.uses;
  const free = uses.map(spoiled);
  if (free.every((use, k) => use === uses[k])) return task;
  return { ...task, modes: task.modes.map((each, option) => (option === mode ? { ...each!, uses: free } : each)) };
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
  const past = soilingUses(asked, modes);
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
  const spoiled = problem.tasks.map((task, index) => spoiledTask(task, index, modes[index]!, past));
  return {
    decided,
    broken,
    hasMetSoil: spoiled.some((task, index) => task !== problem.tasks[index]),
    factLags: lags.length,
    problem: {
      ...problem,
      tasks: spoiled.map((task, index) => settledTask(asked, task, index, modes[index]!)),
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
