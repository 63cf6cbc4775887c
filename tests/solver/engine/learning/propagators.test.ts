import { describe, expect, it } from 'vitest';
import { Core } from '../../../../solver/engine/learning/core.ts';
import { Explanation } from '../../../../solver/engine/learning/explanation.ts';
import { Disjunctive } from '../../../../solver/engine/learning/propagators/disjunctive.ts';
import { EnergyWindows } from '../../../../solver/engine/learning/propagators/energy-windows.ts';
import { Linear } from '../../../../solver/engine/learning/propagators/linear.ts';
import { Reservoir } from '../../../../solver/engine/learning/propagators/reservoir.ts';
import { Timetable } from '../../../../solver/engine/learning/propagators/timetable.ts';
import { BY_RECORD } from '../../../../solver/engine/learning/trail.ts';
import { seeded, type Seeded } from '../../../support/seeded.ts';

/** A propagator on a few small variables, with the meaning of its constraint written out. */
interface Bench {
  readonly core: Core;
  readonly variables: readonly number[];
  readonly allows: (values: readonly number[]) => boolean;
  /** How many of the variables are free; `complete` gives the rest, where they follow from those. */
  readonly free?: number;
  readonly complete?: (values: readonly number[]) => number[];
}

function everyAssignment(bench: Bench): number[][] {
  const { trail } = bench.core;
  let all: number[][] = [[]];
  for (const x of bench.variables.slice(0, bench.free)) {
    const values: number[] = [];
    for (let v = trail.initial[2 * x]!; v <= -trail.initial[2 * x + 1]!; v++) values.push(v);
    all = all.flatMap((head) => values.map((v) => [...head, v]));
  }
  return all.map(bench.complete ?? ((values) => values)).filter(bench.allows);
}

/**
 * Decides at random, propagates, and holds every change against complete enumeration: no solution within the bounds is lost, and for
 * each value that a change reached, and each weaker one, the reason was true before and implies it.
 * @returns the number of explanations checked
 */
function auditRandomly(bench: Bench, chance: Seeded): number {
  const { core, variables } = bench;
  const { trail } = core;
  const solutions = everyAssignment(bench);
  const place = new Map(variables.map((x, i) => [x, i]));
  const holds = (values: readonly number[], slot: number, value: number): boolean => {
    const i = place.get(slot >> 1);
    const v = i === undefined ? trail.bound[slot & ~1]! : values[i]!;
    return ((slot & 1) === 0 ? v : -v) >= value;
  };
  const within = (values: readonly number[]): boolean =>
    variables.every((x, i) => values[i]! >= trail.bound[2 * x]! && values[i]! <= -trail.bound[2 * x + 1]!);
  if (core.dead) {
    expect(solutions).toEqual([]);
    return 0;
  }
  for (const values of solutions) expect(within(values), `solution ${values.join()} lost at the root`).toBe(true);
  let checked = 0;
  const reason = new Explanation();
  const check = (code: number, position: number, slot: number, value: number): void => {
    if ((code & 3) !== BY_RECORD) return;
    const record = code >> 2;
    reason.clear();
    core.propagators[trail.records[record]!]!.explain(reason, position, slot, value, record);
    checked++;
    for (let k = 0; k < reason.size; k++)
      expect(trail.boundBefore(reason.slots[k]!, position)).toBeGreaterThanOrEqual(reason.values[k]!);
    for (const values of solutions) {
      let all = true;
      for (let k = 0; k < reason.size && all; k++) all = holds(values, reason.slots[k]!, reason.values[k]!);
      if (all && (slot < 0 || !holds(values, slot, value)))
        expect.fail(`solution ${values.join()} satisfies a reason for slot ${slot} ≥ ${value} and not that`);
    }
  };
  for (;;) {
    const open = variables.filter((x) => trail.bound[2 * x]! < -trail.bound[2 * x + 1]!);
    if (open.length === 0) {
      expect(bench.allows(variables.map((x) => trail.bound[2 * x]!))).toBe(true);
      break;
    }
    const x = chance.pick(open);
    const low = trail.bound[2 * x]!;
    const high = -trail.bound[2 * x + 1]!;
    const v = chance.int(low + 1, high);
    trail.newLevel();
    trail.setLiteral(chance.chance(0.5) ? trail.literal(2 * x, v) : trail.literal(2 * x + 1, 1 - v), 0);
    const from = trail.entries;
    const fine = core.propagate();
    for (let i = from; i < trail.entries; i++)
      for (let value = trail.entryOld[i]! + 1; value <= trail.entryNew[i]!; value++)
        check(trail.entryReason[i]!, i, trail.entrySlot[i]!, value);
    if (!fine) {
      check(trail.conflictReason, trail.entries, trail.conflictSlot, trail.conflictValue);
      expect(solutions.some(within), 'a conflict although a solution is within the bounds').toBe(false);
      break;
    }
  }
  core.backtrack(0);
  return checked;
}

const literalHolds = (core: Core, literal: number, of: (x: number) => number): boolean => {
  const slot = core.trail.slotOf(literal);
  const v = of(slot >> 1);
  return ((slot & 1) === 0 ? v : -v) >= core.trail.valueOf(literal);
};

function timetableBench(chance: Seeded): Bench {
  const core = new Core(30);
  const { trail } = core;
  const horizon = 6;
  const variables: number[] = [];
  const variable = (lo: number, hi: number): number => {
    variables.push(trail.variable(lo, hi));
    return variables.at(-1)!;
  };
  const tasks = Array.from({ length: chance.int(2, 3) }, (_, i) => {
    const length = chance.int(1, 3);
    const start = variable(0, horizon - length);
    const flexible = i === 0 && chance.chance(0.3);
    const end = flexible ? variable(0, horizon) : start;
    const layers = [{ amount: chance.int(1, 2), literal: trail.alwaysTrue }];
    if (chance.chance(0.4)) {
      const literal = trail.atLeast(variable(0, 1), 1);
      if (chance.chance(0.5)) layers[0] = { amount: chance.int(1, 2), literal };
      else layers.push({ amount: 1, literal });
    }
    return { start, startOffset: 0, end, endOffset: flexible ? 0 : length, layers };
  });
  const capacity = Int32Array.from({ length: horizon }, () => (chance.chance(0.15) ? chance.int(0, 1) : 2));
  core.post(new Timetable(trail, capacity, tasks));
  core.seal();
  const allows = (values: readonly number[]): boolean => {
    const of = (x: number): number => (x === 0 ? 1 : values[variables.indexOf(x)]!);
    for (let t = 0; t < horizon; t++) {
      let sum = 0;
      for (const task of tasks) {
        if (of(task.start) > t || of(task.end) + task.endOffset <= t) continue;
        for (const layer of task.layers) {
          if (!literalHolds(core, layer.literal, of)) break;
          sum += layer.amount;
        }
      }
      if (sum > capacity[t]!) return false;
    }
    return true;
  };
  return { core, variables, allows };
}

/** Tasks of fixed length under one capacity; the time-table beside it sees what no window does. */
function energyBench(chance: Seeded): Bench {
  const core = new Core(30);
  const { trail } = core;
  const horizon = 7;
  const capacity = chance.int(2, 4);
  const tasks = Array.from({ length: chance.int(3, 4) }, () => {
    const length = chance.int(1, 4);
    const start = trail.variable(0, horizon - length);
    return { start, startOffset: 0, length, weight: chance.int(1, Math.min(3, capacity)) };
  });
  const layered = tasks.map(({ start, length, weight }) => ({
    start,
    startOffset: 0,
    end: start,
    endOffset: length,
    layers: [{ amount: weight, literal: trail.alwaysTrue }],
  }));
  core.post(new Timetable(trail, new Int32Array(horizon).fill(capacity), layered));
  core.post(new EnergyWindows(trail, capacity, horizon, tasks));
  core.seal();
  const allows = (starts: readonly number[]): boolean =>
    Array.from({ length: horizon }, (_, t) =>
      tasks.reduce((sum, { length, weight }, i) => sum + (starts[i]! <= t && t < starts[i]! + length ? weight : 0), 0),
    ).every((used) => used <= capacity);
  return { core, variables: tasks.map(({ start }) => start), allows };
}

function disjunctiveBench(chance: Seeded): Bench {
  const core = new Core(60);
  const { trail } = core;
  const variables: number[] = [];
  const n = chance.int(3, 4);
  const tasks = Array.from({ length: n }, () => {
    const length = chance.int(1, 3);
    const lo = chance.int(0, 5);
    const start = trail.variable(lo, lo + chance.int(2, 7));
    variables.push(start);
    return { start, startOffset: 0, end: start, endOffset: length, length, literal: trail.alwaysTrue };
  });
  const order = new Int32Array(n * n).fill(trail.alwaysFalse);
  const pairs: { readonly a: number; readonly b: number; readonly x: number }[] = [];
  for (let a = 0; a < n; a++)
    for (let b = a + 1; b < n; b++) {
      const x = trail.variable(0, 1);
      variables.push(x);
      pairs.push({ a, b, x });
      order[a * n + b] = trail.atLeast(x, 1);
      order[b * n + a] = trail.atMost(x, 0);
    }
  core.post(new Disjunctive(trail, tasks, order));
  // The arcs under the order literals, as the model adds them.
  for (const { a, b, x } of pairs) {
    core.arcs.add(2 * tasks[a]!.start, 2 * tasks[b]!.start, tasks[a]!.length, trail.atLeast(x, 1));
    core.arcs.add(2 * tasks[b]!.start, 2 * tasks[a]!.start, tasks[b]!.length, trail.atMost(x, 0));
  }
  core.seal();
  const allows = (values: readonly number[]): boolean =>
    pairs.every(({ a, b, x }) => {
      const first = values[variables.indexOf(x)] === 1;
      const [i, j] = first ? [a, b] : [b, a];
      return values[i]! + tasks[i]!.length <= values[j]!;
    });
  // The order follows from the starts.
  const complete = (starts: readonly number[]): number[] => [
    ...starts,
    ...pairs.map(({ a, b }) => (starts[a]! + tasks[a]!.length <= starts[b]! ? 1 : 0)),
  ];
  return { core, variables, allows, free: n, complete };
}

function linearBench(chance: Seeded): Bench {
  const core = new Core(60);
  const { trail } = core;
  const variables = Array.from({ length: 4 }, () => trail.variable(chance.int(-2, 0), chance.int(1, 4)));
  const guardVariable = trail.variable(0, 1);
  const terms = variables.map((x) => ({ slot: 2 * x + chance.int(0, 1), coefficient: chance.int(1, 3) }));
  const limit = chance.int(-4, 8);
  core.post(new Linear(trail, terms, limit, trail.atLeast(guardVariable, 1)));
  core.seal();
  const allows = (values: readonly number[]): boolean =>
    values[4] === 0 ||
    terms.reduce(
      (sum, { slot, coefficient }, i) => sum + coefficient * ((slot & 1) === 0 ? values[i]! : -values[i]!),
      0,
    ) <= limit;
  return { core, variables: [...variables, guardVariable], allows };
}

function reservoirBench(chance: Seeded): Bench {
  const core = new Core(30);
  const { trail } = core;
  const variables: number[] = [];
  const events = Array.from({ length: chance.int(2, 4) }, () => {
    const variable = trail.variable(0, chance.int(2, 4));
    variables.push(variable);
    let active = trail.alwaysTrue;
    if (chance.chance(0.3)) {
      const x = trail.variable(0, 1);
      variables.push(x);
      active = trail.atLeast(x, 1);
    }
    const amount = chance.int(1, 3) * (chance.chance(0.5) ? 1 : -1);
    return { variable, offset: chance.int(0, 1), amount, active };
  });
  const initial = chance.int(0, 2);
  core.post(new Reservoir(trail, initial, events));
  core.seal();
  const allows = (values: readonly number[]): boolean => {
    const of = (x: number): number => (x === 0 ? 1 : values[variables.indexOf(x)]!);
    for (let t = 0; t <= 6; t++) {
      let level = initial;
      for (const event of events)
        if (of(event.variable) + event.offset <= t && literalHolds(core, event.active, of)) level += event.amount;
      if (level < 0) return false;
    }
    return true;
  };
  return { core, variables, allows };
}

describe('every change a propagator makes is right, and so is its reason for each weaker bound', () => {
  it.each([
    { name: 'time-table', make: timetableBench, seeds: 200 },
    { name: 'energy in windows', make: energyBench, seeds: 250 },
    { name: 'sets on an exclusive resource', make: disjunctiveBench, seeds: 300 },
    { name: 'linear inequality', make: linearBench, seeds: 150 },
    { name: 'reservoir', make: reservoirBench, seeds: 260 },
  ])('$name', ({ make, seeds }) => {
    let checked = 0;
    for (let seed = 0; seed < seeds; seed++) {
      const chance = seeded(seed);
      const bench = make(chance);
      for (let branch = 0; branch < 3; branch++) checked += auditRandomly(bench, chance);
    }
    expect(checked).toBeGreaterThan(300);
  });
});
