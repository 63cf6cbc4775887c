/**
 * Other forms of a problem whose optimum is known from the first one's: the same under other names and in another order, with time running
 * backwards, with room that nobody needs, with every minute cut into k, with work split into pieces that follow at once.
 *
 * A form that a problem does not have is null: what counts changes goes by the order of starts and of ids, which only renaming in order
 * keeps, and sums of lengths may gain by finer minutes.
 */
import type { Lag, Literal, Mode, Point, Problem, Task, Tier } from '../../solver/engine/problem.ts';
import { seeded } from './seeded.ts';

export interface OtherForm {
  readonly name: string;
  readonly problem: Problem;
  /** Every tier's value is the first problem's times this. */
  readonly factor: number;
}

interface TaskPoint {
  readonly task: string;
  readonly at: 'start' | 'end';
}

/** The point changed, unless it is the session's first minute. */
const changed = <P extends Point>(p: P, change: (point: TaskPoint) => TaskPoint): P =>
  (p === 'origin' ? p : change(p)) as P;

/** Every other form that the problem has. */
export function otherForms(problem: Problem, seed: number): readonly OtherForm[] {
  const factor = 2 + (seed % 3);
  return [
    { name: 'renamed', problem: renamed(problem, seed), factor: 1 },
    { name: 'mirrored', problem: mirrored(problem), factor: 1 },
    { name: 'roomier', problem: roomier(problem), factor: 1 },
    { name: `scaled by ${factor}`, problem: scaled(problem, factor), factor },
    { name: 'split', problem: split(problem), factor: 1 },
  ].flatMap((form) => (form.problem === null ? [] : [{ ...form, problem: form.problem }]));
}

const countsChanges = ({ tiers }: Problem): boolean => tiers.some(({ kind }) => kind === 'changes');

/** Every list in another order and every id another one; ids sort as before, since ties of starts go by id. */
export function renamed(problem: Problem, seed: number): Problem {
  const chance = seeded(seed);
  const ids = [...problem.tasks].map(({ id }) => id).sort();
  const task = new Map(ids.map((id, rank) => [id, `w${String(rank).padStart(3, '0')}`]));
  const point = <P extends Point>(p: P): P => changed(p, ({ at, ...of }) => ({ at, task: task.get(of.task)! }));
  const other = (id: string): string => `other ${id}`;
  const literal = (l: Literal): Literal => ({ choice: other(l.choice), options: chance.shuffle(l.options) });
  const guarded = <T extends { readonly if?: readonly Literal[] }>(of: T): T =>
    of.if === undefined ? of : { ...of, if: chance.shuffle(of.if).map(literal) };
  const mode = (m: Mode): Mode => ({
    ...m,
    uses: chance.shuffle(m.uses).map((use) => ({ ...use, resource: other(use.resource) })),
    ...(m.state === undefined ? {} : { state: { ...m.state, state: other(m.state.state) } }),
  });
  return {
    ...problem,
    choices: chance.shuffle(problem.choices).map((choice) => ({ ...choice, id: other(choice.id) })),
    tasks: chance.shuffle(problem.tasks).map((t): Task => ({
      ...t,
      id: task.get(t.id)!,
      ...(t.when === undefined ? {} : { when: t.when.map(literal) }),
      ...(t.choice === undefined ? {} : { choice: other(t.choice) }),
      modes: t.modes.map((m) => (m === null ? null : mode(m))),
    })),
    resources: chance.shuffle(problem.resources).map((resource) => ({ ...resource, id: other(resource.id) })),
    states: problem.states.map((state) => ({ ...state, id: other(state.id) })),
    reservoirs: problem.reservoirs.map((reservoir) => ({
      ...reservoir,
      id: other(reservoir.id),
      events: chance.shuffle(reservoir.events).map((event) => guarded({ ...event, point: point(event.point) })),
    })),
    lags: chance.shuffle(problem.lags).map((lag) => guarded({ ...lag, from: point(lag.from), to: point(lag.to) })),
    forbidden: chance.shuffle(problem.forbidden).map((conjunction) => conjunction.map(literal)),
    totals: problem.totals.map((total) => guarded({ ...total, tasks: total.tasks.map((id) => task.get(id)!) })),
    tiers: problem.tiers.map((tier): Tier => {
      if (tier.kind === 'cost') return tier;
      if (tier.kind === 'changes') return { ...tier, resources: tier.resources.map(other) };
      if (tier.kind === 'latest')
        return { ...tier, terms: chance.shuffle(tier.terms).map((term) => ({ ...term, point: point(term.point) })) };
      return {
        ...tier,
        terms: chance.shuffle(tier.terms).map((term) => ({ ...term, from: point(term.from), to: point(term.to) })),
      };
    }),
  };
}

/**
 * Minute t becomes horizon − t: starts are ends, what leaves soil avoids it, a transition goes the other way, a pool that is drawn is filled.
 * Null where changes are counted, or where a pool's last level is not the same in every plan, or is none that a pool may begin with.
 */
export function mirrored(problem: Problem): Problem | null {
  const { horizon } = problem;
  const sure = new Set(
    problem.tasks.filter((task) => task.when === undefined && !task.modes.includes(null)).map(({ id }) => id),
  );
  if (countsChanges(problem)) return null;
  const lastLevels = problem.reservoirs.map(({ initial, events }) =>
    events.reduce((sum, { amount }) => sum + amount, initial),
  );
  const keeps = problem.reservoirs.every(
    ({ events, initial, capacity = Infinity }, index) =>
      events.every((event) => event.if === undefined && sure.has(event.point.task)) &&
      [initial, lastLevels[index]!].every((level) => 0 <= level && level <= capacity),
  );
  if (!keeps) return null;
  const flip = <P extends Point>(p: P): P => changed(p, (of) => ({ ...of, at: of.at === 'start' ? 'end' : 'start' }));
  /** The session's first minute stays where it is, so a gap from or to it is counted from the horizon. */
  const moved = (from: Point, to: Point): number =>
    (from === 'origin' ? -horizon : 0) + (to === 'origin' ? horizon : 0);
  return {
    ...problem,
    tasks: problem.tasks.map((task) => ({
      ...task,
      modes: task.modes.map(
        (mode) =>
          mode && {
            ...mode,
            uses: mode.uses.map(({ leaves, avoids, ...use }) => ({
              ...use,
              ...(avoids === undefined ? {} : { leaves: avoids }),
              ...(leaves === undefined ? {} : { avoids: leaves }),
            })),
          },
      ),
    })),
    resources: problem.resources.map((resource) => ({
      ...resource,
      ...(resource.calendar === undefined
        ? {}
        : {
            calendar: [...resource.calendar]
              .reverse()
              .map((entry) => ({ ...entry, from: horizon - entry.until, until: horizon - entry.from })),
          }),
    })),
    states: problem.states.map((state) => ({
      ...state,
      gap: state.classes.map((_, a) => state.classes.map((__, b) => state.gap[b]![a]!)),
    })),
    reservoirs: problem.reservoirs.map((reservoir, index) => ({
      ...reservoir,
      initial: lastLevels[index]!,
      events: reservoir.events.map((event) => ({ ...event, point: flip(event.point), amount: -event.amount })),
    })),
    lags: problem.lags.map((lag): Lag => ({
      ...lag,
      from: flip(lag.to),
      to: flip(lag.from),
      least: lag.least + moved(lag.from, lag.to),
    })),
    tiers: problem.tiers.map((tier): Tier => {
      if (tier.kind === 'latest')
        return {
          ...tier,
          terms: tier.terms.map(({ point, plus = 0, minus = false }) => ({
            point: flip(point),
            plus: minus ? plus - horizon : plus + horizon,
            minus: !minus,
          })),
        };
      if (tier.kind === 'waiting')
        return {
          ...tier,
          terms: tier.terms.map((term) => ({
            ...term,
            from: flip(term.to),
            to: flip(term.from),
            free: term.free + moved(term.from, term.to),
          })),
        };
      return tier;
    }),
  };
}

/** One more resource that every task uses and that has room for all of them at once. */
export function roomier(problem: Problem): Problem {
  const id = 'room for all';
  return {
    ...problem,
    resources: [{ id, capacity: 3 * problem.tasks.length }, ...problem.resources],
    tasks: problem.tasks.map((task, index) => ({
      ...task,
      modes: task.modes.map(
        (mode) => mode && { ...mode, uses: [...mode.uses, { resource: id, amount: 1 + (index % 3) }] },
      ),
    })),
  };
}

/**
 * Every minute becomes k; so does what a mode costs. Under any order the rules left are differences of times, whose least sums lie on whole
 * minutes of the old kind. Null where changes are counted or lengths summed.
 */
export function scaled(problem: Problem, k: number): Problem | null {
  if (countsChanges(problem) || problem.totals.length > 0) return null;
  return {
    ...problem,
    horizon: problem.horizon * k,
    tasks: problem.tasks.map((task) => ({
      ...task,
      modes: task.modes.map(
        (mode) =>
          mode && {
            ...mode,
            shortest: mode.shortest * k,
            longest: mode.longest * k,
            ...(mode.cost === undefined ? {} : { cost: { ...mode.cost, fixed: mode.cost.fixed * k } }),
          },
      ),
    })),
    resources: problem.resources.map((resource) => ({
      ...resource,
      ...(resource.calendar === undefined
        ? {}
        : { calendar: resource.calendar.map((entry) => ({ ...entry, from: entry.from * k, until: entry.until * k })) }),
    })),
    states: problem.states.map((state) => ({
      ...state,
      gap: state.gap.map((row) => row.map((gap) => (gap === null ? null : gap * k))),
    })),
    lags: problem.lags.map((lag) => ({ ...lag, least: lag.least * k })),
    tiers: problem.tiers.map((tier): Tier => {
      if (tier.kind === 'latest')
        return { ...tier, terms: tier.terms.map((term) => ({ ...term, plus: (term.plus ?? 0) * k })) };
      if (tier.kind === 'waiting')
        return { ...tier, terms: tier.terms.map((term) => ({ ...term, free: term.free * k })) };
      return tier;
    }),
  };
}

/**
 * Every task of one fixed mode, two minutes or longer, in two pieces, the second as the first ends. Left whole is what leaves, avoids or
 * takes away soil and what costs. Null where nothing is split.
 */
export function split(problem: Problem): Problem | null {
  if (countsChanges(problem) || problem.totals.length > 0) return null;
  const cut = new Set(
    problem.tasks
      .filter(({ choice, modes: [mode] }) => {
        const plain = mode?.uses.every((use) => !use.leaves && !use.avoids && use.cleans !== true) === true;
        return (
          choice === undefined &&
          plain &&
          mode.cost === undefined &&
          mode.shortest === mode.longest &&
          mode.shortest >= 2
        );
      })
      .map(({ id }) => id),
  );
  if (cut.size === 0) return null;
  const late = (id: string): string => `${id} after`;
  const point = <P extends Point>(p: P): P =>
    changed(p, (of) => (of.at === 'end' && cut.has(of.task) ? { ...of, task: late(of.task) } : of));
  return {
    ...problem,
    tasks: problem.tasks.flatMap((task): Task[] => {
      const mode = task.modes[0];
      if (!cut.has(task.id) || mode === undefined || mode === null) return [task];
      const first = Math.floor(mode.shortest / 2);
      const piece = (length: number): Mode[] => [{ ...mode, shortest: length, longest: length }];
      return [
        { ...task, modes: piece(first) },
        { ...task, id: late(task.id), modes: piece(mode.shortest - first) },
      ];
    }),
    reservoirs: problem.reservoirs.map((reservoir) => ({
      ...reservoir,
      events: reservoir.events.map((event) => ({ ...event, point: point(event.point) })),
    })),
    lags: [
      ...problem.lags.map((lag) => ({ ...lag, from: point(lag.from), to: point(lag.to) })),
      ...[...cut].flatMap((id): Lag[] => [
        { from: { task: id, at: 'end' }, to: { task: late(id), at: 'start' }, least: 0 },
        { from: { task: late(id), at: 'start' }, to: { task: id, at: 'end' }, least: 0 },
      ]),
    ],
    tiers: problem.tiers.map((tier): Tier => {
      if (tier.kind === 'latest')
        return { ...tier, terms: tier.terms.map((term) => ({ ...term, point: point(term.point) })) };
      if (tier.kind === 'waiting')
        return { ...tier, terms: tier.terms.map((term) => ({ ...term, from: point(term.from), to: point(term.to) })) };
      return tier;
    }),
  };
}
