/**
 * The first tier of a scheduling problem as a time-indexed integer program, solved by HiGHS: a reference that shares
 * neither code nor method with the engine.
 *
 * Notation: for mode m of task i, `A[t]` is 1 when it has started by minute t and `B[t]` is 1 when it has ended by then;
 * both stay 0 where the mode is not taken. So it runs at t when `A[t] − B[t]` is 1, its start is the number of minutes with
 * `A[t] = 0`, and "v no sooner than w minutes after u" is `v[t] ≤ u[t − w]` at every t. (These are the running sums of the
 * pulse columns of Pritsker, Watters & Wolfe 1969; the step form keeps rows short, as in Artigues 2017.)
 */
import highsLoader from 'highs';
import type { Literal, Point, Problem, Tier } from '../../solver/engine/problem.ts';
import type { Solution } from '../../solver/engine/outcome.ts';
import { LinearProgram, add, combine, constant, zero, type Sum } from './linear-program.ts';

export type Reference =
  | {
      readonly kind: 'optimal';
      readonly value: number;
      readonly solution: Solution;
      /** Seconds in HiGHS; writing the program and reading the answer are not in it. */
      readonly seconds: number;
    }
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'timeout' };

interface ModeColumns {
  readonly task: number;
  readonly option: number;
  readonly taken: Sum;
  /** Whether it has started, ended by minute t; any integer t. */
  readonly startedBy: (t: number) => Sum;
  readonly endedBy: (t: number) => Sum;
}

interface Columns {
  readonly problem: Problem;
  readonly program: LinearProgram;
  readonly options: ReadonlyMap<string, readonly Sum[]>;
  readonly modes: readonly ModeColumns[];
  readonly modesOf: readonly (readonly ModeColumns[])[];
}

/**
 * The least value of the problem's first tier.
 *
 * @param problem at most about 12 tasks within 60 minutes; only the first tier is looked at
 * @param seconds most seconds for the integer program
 * @param atMost the value of a plan known: only plans at least as good are asked for
 * @returns the value with a solution that has it, `infeasible` by proof, or `timeout`
 */
export async function timeIndexedOptimum(problem: Problem, seconds: number, atMost?: number): Promise<Reference> {
  const program = timeIndexedProgram(problem);
  if (atMost !== undefined) program.columns.program.atMost(program.objective, constant(atMost));
  return optimumOf(program, seconds);
}

async function optimumOf(
  { columns, objective }: { readonly columns: Columns; readonly objective: Sum },
  seconds: number,
): Promise<Reference> {
  if (columns.program.isBroken) return { kind: 'infeasible' };
  const highs = await highsLoader();
  const text = columns.program.text(objective);
  const began = performance.now();
  const result = highs.solve(text, {
    time_limit: seconds,
    output_flag: false,
    mip_rel_gap: 0,
    // Values are whole numbers, so a bound less than one below is a proof.
    mip_abs_gap: 0.9,
  });
  const taken = (performance.now() - began) / 1000;
  if (result.Status === 'Infeasible') return { kind: 'infeasible' };
  if (result.Status === 'Time limit reached') return { kind: 'timeout' };
  if (result.Status !== 'Optimal') throw new Error(`the integer program ended as "${result.Status}"`);
  const valueOf = (sum: Sum): number => {
    let value = sum.constant;
    for (const [column, coefficient] of sum.terms) value += coefficient * (result.Columns[column]?.Primal ?? 0);
    return Math.round(value);
  };
  return {
    kind: 'optimal',
    value: valueOf(objective),
    solution: readSolution(columns, valueOf),
    seconds: taken,
  };
}

/**
 * The least values of the problem's tiers in order of rank, each under the ones before it.
 *
 * @param problem at most about 10 tasks within 40 minutes
 * @param seconds most seconds for each tier
 * @returns the values of the first tiers, as many as were proved in time (perhaps none), with a solution that has them; or `infeasible`
 */
export async function timeIndexedTiers(
  problem: Problem,
  seconds: number,
): Promise<
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'optimal'; readonly values: readonly number[]; readonly solution: Solution | null }
> {
  const values: number[] = [];
  let solution: Solution | null = null;
  for (const _ of problem.tiers) {
    const found = await optimumOf(timeIndexedProgram(problem, values), seconds);
    if (found.kind === 'timeout') break;
    if (found.kind === 'infeasible') {
      if (values.length > 0) throw new Error('the integer program lost its own plan');
      return { kind: 'infeasible' };
    }
    values.push(found.value);
    ({ solution } = found);
  }
  return { kind: 'optimal', values, solution };
}

/** About how many columns of 0 or 1 the integer program has, from which one can tell that it would be too large. */
export function timeIndexedColumns({ horizon, tasks }: Problem): number {
  return tasks
    .flatMap(({ modes }) => modes.filter((mode) => mode !== null))
    .reduce((sum, mode) => sum + Math.max(0, horizon - mode.shortest) * (mode.shortest === mode.longest ? 1 : 2), 0);
}

/** The integer program as text in the CPLEX LP format, for any solver that reads it. */
export function timeIndexedText(problem: Problem): string {
  const { columns, objective } = timeIndexedProgram(problem);
  return columns.program.text(objective);
}

/** @param above values of the first tiers that must be kept; the next tier is the objective */
function timeIndexedProgram(
  problem: Problem,
  above: readonly number[] = [],
): { readonly columns: Columns; readonly objective: Sum } {
  const program = new LinearProgram();
  const options = new Map(
    problem.choices.map((choice) => [choice.id, choice.options.map(() => program.binary())] as const),
  );
  for (const taken of options.values()) program.equal(add(...taken), constant(1));
  const modesOf = problem.tasks.map((task, index): ModeColumns[] =>
    task.modes.flatMap((mode, option) => {
      if (mode === null) return [];
      const literals = [
        ...(task.when ?? []),
        ...(task.choice === undefined ? [] : [{ choice: task.choice, options: [option] }]),
      ];
      const taken = conjunction(program, options, literals);
      return [{ task: index, option, taken, ...intervalColumns(program, problem.horizon, taken, mode) }];
    }),
  );
  const columns: Columns = { problem, program, options, modesOf, modes: modesOf.flat() };
  lagRows(columns);
  capacityRows(columns);
  stateRows(columns);
  soilRows(columns);
  reservoirRows(columns);
  totalRows(columns);
  for (const literals of problem.forbidden) program.equal(conjunction(program, options, literals), zero);
  above.forEach((value, index) => program.atMost(tierSum(columns, problem.tiers[index]!), constant(value)));
  const next = problem.tiers[above.length];
  return { columns, objective: next ? tierSum(columns, next) : zero };
}

/** 1 exactly when every literal holds. */
function conjunction(
  program: LinearProgram,
  options: ReadonlyMap<string, readonly Sum[]>,
  literals: readonly Literal[] | undefined,
): Sum {
  const allowed = new Map<string, readonly number[]>();
  for (const { choice, options: wanted } of literals ?? []) {
    allowed.set(choice, allowed.get(choice)?.filter((option) => wanted.includes(option)) ?? [...new Set(wanted)]);
  }
  const parts = [...allowed].map(([choice, wanted]) =>
    add(...wanted.map((option) => options.get(choice)?.[option] ?? zero)),
  );
  const [only] = parts;
  if (!only) return constant(1);
  if (parts.length === 1) return only;
  return both(program, parts);
}

/** A column that is 1 exactly when all of several 0–1 expressions are. */
function both(program: LinearProgram, parts: readonly Sum[]): Sum {
  const all = program.real(1);
  for (const part of parts) program.atMost(all, part);
  program.atMost(add(...parts, constant(1 - parts.length)), all);
  return all;
}

function intervalColumns(
  program: LinearProgram,
  horizon: number,
  taken: Sum,
  { shortest, longest }: { readonly shortest: number; readonly longest: number },
): { readonly startedBy: (t: number) => Sum; readonly endedBy: (t: number) => Sum } {
  if (shortest > horizon) {
    program.equal(taken, zero);
    return { startedBy: () => zero, endedBy: () => zero };
  }
  const steps = (first: number, last: number): ((t: number) => Sum) => {
    const made: Sum[] = [];
    for (let t = first; t < last; t += 1) made.push(program.binary());
    for (let t = first; t < last; t += 1) program.atMost(made[t - first] ?? zero, made[t - first + 1] ?? taken);
    return (t) => (t < first ? zero : t >= last ? taken : (made[t - first] as Sum));
  };
  const startedBy = steps(0, horizon - shortest);
  if (shortest === longest) return { startedBy, endedBy: (t) => startedBy(t - shortest) };
  const endedBy = steps(shortest, horizon);
  for (let t = shortest; t <= horizon; t += 1) {
    program.atMost(endedBy(t), startedBy(t - shortest));
    program.atMost(startedBy(t - longest), endedBy(t));
  }
  return { startedBy, endedBy };
}

const present = (columns: Columns, task: number): Sum =>
  add(...(columns.modesOf[task] ?? []).map((mode) => mode.taken));

/** Whether a task's start or end has come by minute t. */
const happenedBy = (columns: Columns, task: number, at: 'start' | 'end', t: number): Sum =>
  add(...(columns.modesOf[task] ?? []).map((mode) => (at === 'start' ? mode.startedBy(t) : mode.endedBy(t))));

/** The minute of a mode's start or end, 0 where the mode is not taken. */
function modeTime(columns: Columns, mode: ModeColumns, at: 'start' | 'end'): Sum {
  const parts: (readonly [number, Sum])[] = [];
  for (let t = 0; t < columns.problem.horizon; t += 1) {
    parts.push([1, mode.taken], [-1, at === 'start' ? mode.startedBy(t) : mode.endedBy(t)]);
  }
  return combine(...parts);
}

const taskNumber = (columns: Columns, id: string): number => columns.problem.tasks.findIndex((task) => task.id === id);

/** The minute of a point, 0 where its task is absent, and whether it is present. */
function pointTime(columns: Columns, point: Point): { readonly time: Sum; readonly here: Sum } {
  if (point === 'origin') return { time: zero, here: constant(1) };
  const task = taskNumber(columns, point.task);
  const times = (columns.modesOf[task] ?? []).map((mode) => modeTime(columns, mode, point.at));
  return { time: add(...times), here: present(columns, task) };
}

/** For every t: `later` by t asks `earlier` by t − least, unless one of the 0–1 expressions in `conditions` is 0. */
function apart(
  columns: Columns,
  earlier: (t: number) => Sum,
  later: (t: number) => Sum,
  least: number,
  conditions: readonly Sum[],
): void {
  const excuse = combine([1, constant(conditions.length)], ...conditions.map((sum) => [-1, sum] as const));
  const last = Math.min(columns.problem.horizon, columns.problem.horizon + least);
  for (let t = 0; t <= Math.max(0, last); t += 1) {
    columns.program.atMost(later(t), add(earlier(t - least), excuse));
  }
}

function lagRows(columns: Columns): void {
  const { problem, program, options } = columns;
  const by = (point: Point): ((t: number) => Sum) => {
    if (point === 'origin') return (t) => (t < 0 ? zero : constant(1));
    const task = taskNumber(columns, point.task);
    return (t) => happenedBy(columns, task, point.at, t);
  };
  for (const lag of problem.lags) {
    const conditions = [conjunction(program, options, lag.if)];
    for (const point of [lag.from, lag.to]) {
      if (point !== 'origin') conditions.push(present(columns, taskNumber(columns, point.task)));
    }
    apart(columns, by(lag.from), by(lag.to), lag.least, conditions);
  }
}

function capacityRows(columns: Columns): void {
  const { problem, program } = columns;
  for (const resource of problem.resources) {
    for (let t = 0; t < problem.horizon; t += 1) {
      const entry = resource.calendar?.find(({ from, until }) => from <= t && t < until);
      const inUse: (readonly [number, Sum])[] = [];
      for (const mode of columns.modes) {
        for (const use of problem.tasks[mode.task]?.modes[mode.option]?.uses ?? []) {
          if (use.resource !== resource.id) continue;
          inUse.push([use.amount, mode.startedBy(t)], [-use.amount, mode.endedBy(t)]);
        }
      }
      program.atMost(combine(...inUse), constant(entry?.capacity ?? resource.capacity));
    }
  }
}

function stateRows(columns: Columns): void {
  const { problem, program } = columns;
  for (const first of columns.modes) {
    for (const second of columns.modes) {
      if (second.task <= first.task) continue;
      const a = problem.tasks[first.task]?.modes[first.option]?.state;
      const b = problem.tasks[second.task]?.modes[second.option]?.state;
      if (!a || !b || a.state !== b.state) continue;
      const gap = problem.states.find(({ id }) => id === a.state)?.gap ?? [];
      const forth = gap[a.class]?.[b.class] ?? null;
      const back = gap[b.class]?.[a.class] ?? null;
      if (forth === null || back === null) continue;
      const firstBefore = program.binary();
      const secondBefore = combine([1, constant(1)], [-1, firstBefore]);
      apart(columns, first.endedBy, second.startedBy, forth, [firstBefore, first.taken]);
      apart(columns, second.endedBy, first.startedBy, back, [secondBefore, second.taken]);
    }
  }
}

function soilRows(columns: Columns): void {
  const { problem, program } = columns;
  const usesOf = (mode: ModeColumns) => problem.tasks[mode.task]?.modes[mode.option]?.uses ?? [];
  for (const resource of problem.resources) {
    const cleaners = columns.modes.filter((mode) =>
      usesOf(mode).some((use) => use.resource === resource.id && use.cleans === true),
    );
    for (const before of columns.modes) {
      const left = usesOf(before).flatMap((use) => (use.resource === resource.id ? (use.leaves ?? []) : []));
      for (const after of columns.modes) {
        if (before.task === after.task) continue;
        const avoided = usesOf(after).flatMap((use) => (use.resource === resource.id ? (use.avoids ?? []) : []));
        if (!left.some((soil) => avoided.includes(soil))) continue;
        const reversed = program.binary();
        apart(columns, after.endedBy, before.startedBy, 0, [reversed, after.taken]);
        const ways = cleaners.map((cleaner) => {
          const between = program.binary();
          program.atMost(between, cleaner.taken);
          apart(columns, before.endedBy, cleaner.startedBy, 0, [between, before.taken]);
          apart(columns, cleaner.endedBy, after.startedBy, 0, [between]);
          return between;
        });
        program.atMost(add(before.taken, after.taken, constant(-1)), add(reversed, ...ways));
      }
    }
  }
}

function reservoirRows(columns: Columns): void {
  const { problem, program, options } = columns;
  for (const reservoir of problem.reservoirs) {
    const gates = reservoir.events.map((event) => (event.if ? conjunction(program, options, event.if) : null));
    for (let t = 0; t <= problem.horizon; t += 1) {
      const level = combine(
        [1, constant(reservoir.initial)],
        ...reservoir.events.map(({ point, amount }, index) => {
          const at = point.at as 'start' | 'end';
          const happened = happenedBy(columns, taskNumber(columns, point.task), at, t);
          const gate = gates[index] ?? null;
          const empty =
            [...happened.terms.values()].every((coefficient) => coefficient === 0) && happened.constant === 0;
          return [amount, gate && !empty ? both(program, [happened, gate]) : happened] as const;
        }),
      );
      program.atMost(zero, level);
      if (reservoir.capacity !== undefined) program.atMost(level, constant(reservoir.capacity));
    }
  }
}

function totalRows(columns: Columns): void {
  const { problem, program, options } = columns;
  for (const { tasks, total, if: literals } of problem.totals) {
    const asked = conjunction(program, options, literals);
    const sum = add(
      ...tasks.flatMap((id) =>
        (columns.modesOf[taskNumber(columns, id)] ?? []).map((mode) => modeLength(columns, mode)),
      ),
    );
    const most = total + tasks.length * problem.horizon;
    const excuse = combine([most, constant(1)], [-most, asked]);
    program.atMost(sum, add(constant(total), excuse));
    program.atMost(constant(total), add(sum, excuse));
  }
}

function modeLength(columns: Columns, mode: ModeColumns): Sum {
  return combine([1, modeTime(columns, mode, 'end')], [-1, modeTime(columns, mode, 'start')]);
}

/** An expression whose least value is the tier's. */
function tierSum(columns: Columns, tier: Tier): Sum {
  const { problem, program } = columns;
  const { horizon } = problem;
  switch (tier.kind) {
    case 'latest': {
      const most = horizon + Math.max(0, ...tier.terms.map((term) => term.plus ?? 0));
      // `open[t]` is 1 while some term that counts forwards has not come by t; their sum is the largest of them.
      const open = Array.from({ length: most }, () => program.real(1));
      const value = program.real(most);
      for (const { point, plus = 0, minus } of tier.terms) {
        const task = taskNumber(columns, point.task);
        const here = present(columns, task);
        if (minus === true) {
          program.atMost(combine([plus, here], [-1, pointTime(columns, point).time]), value);
          continue;
        }
        const at = point.at as 'start' | 'end';
        open.forEach((column, t) =>
          program.atMost(combine([1, here], [-1, happenedBy(columns, task, at, t - plus)]), column),
        );
      }
      program.atMost(add(...open), value);
      return value;
    }
    case 'waiting':
      return combine(
        ...tier.terms.map(({ weight, from, to, free }) => {
          const wait = program.real(horizon + Math.max(0, -free));
          const a = pointTime(columns, from);
          const b = pointTime(columns, to);
          const most = Math.max(0, horizon - free);
          const excuse = combine([2 * most, constant(1)], [-most, a.here], [-most, b.here]);
          program.atMost(combine([1, b.time], [-1, a.time], [1, constant(-free)], [-1, excuse]), wait);
          return [weight, wait] as const;
        }),
      );
    case 'cost':
      return combine(
        ...columns.modes.flatMap((mode) => {
          const cost = problem.tasks[mode.task]?.modes[mode.option]?.cost;
          if (!cost) return [];
          return [[cost.fixed, mode.taken] as const, [cost.perMinute, modeLength(columns, mode)] as const];
        }),
      );
    case 'changes':
      return add(...tier.resources.map((resource) => changesOn(columns, resource)));
  }
}

/** How often the group changes on a resource: for each pair of different groups, 1 where the first comes just before the second. */
function changesOn(columns: Columns, resource: string): Sum {
  const { problem, program } = columns;
  const users = problem.tasks
    .map((task, index) => {
      const using = (columns.modesOf[index] ?? []).filter((mode) =>
        task.modes[mode.option]?.uses.some((use) => use.resource === resource),
      );
      return { task, index, using: add(...using.map((mode) => mode.taken)), modes: using };
    })
    .filter(({ modes }) => modes.length > 0);
  // `before[u][v]` is 1 when both are there and u starts first (ties by id).
  const before = users.map((u) =>
    users.map((v) => {
      if (u === v) return zero;
      const column = program.binary();
      program.atMost(column, u.using);
      program.atMost(column, v.using);
      const by = (user: typeof u) => (t: number) => happenedBy(columns, user.index, 'start', t);
      apart(columns, by(u), by(v), u.task.id < v.task.id ? 0 : 1, [column]);
      return column;
    }),
  );
  const changes: Sum[] = [];
  users.forEach((u, i) => {
    users.forEach((v, j) => {
      if (j > i) {
        program.atMost(add(u.using, v.using, constant(-1)), add(before[i]?.[j] ?? zero, before[j]?.[i] ?? zero));
        program.atMost(add(before[i]?.[j] ?? zero, before[j]?.[i] ?? zero), constant(1));
      }
      if (i === j || u.task.group === v.task.group) return;
      const between = users.flatMap((_, k) => {
        if (k === i || k === j) return [];
        const column = program.real(1);
        program.atMost(column, before[i]?.[k] ?? zero);
        program.atMost(column, before[k]?.[j] ?? zero);
        return [column];
      });
      const change = program.real(1);
      program.atMost(combine([1, before[i]?.[j] ?? zero], ...between.map((sum) => [-1, sum] as const)), change);
      changes.push(change);
    });
  });
  return add(...changes);
}

function readSolution(columns: Columns, valueOf: (sum: Sum) => number): Solution {
  const { problem } = columns;
  const choices = problem.choices.map((choice) =>
    (columns.options.get(choice.id) ?? []).findIndex((taken) => valueOf(taken) === 1),
  );
  const tasks = problem.tasks.map((_, index) => {
    const mode = (columns.modesOf[index] ?? []).find(({ taken }) => valueOf(taken) === 1);
    if (!mode) return null;
    return { start: valueOf(modeTime(columns, mode, 'start')), end: valueOf(modeTime(columns, mode, 'end')) };
  });
  return { choices, tasks };
}
