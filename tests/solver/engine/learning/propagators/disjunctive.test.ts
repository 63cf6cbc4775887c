import { describe, expect, it } from 'vitest';
import { Core } from '../../../../../solver/engine/learning/core.ts';
import { Disjunctive } from '../../../../../solver/engine/learning/propagators/disjunctive.ts';
import { seeded, type Seeded } from '../../../../support/seeded.ts';

/** More runs than the propagator ever waits. */
const RUNS = 40;

/** A task on the resource as it stands, in time or in its mirror. */
interface Window {
  readonly name: number;
  readonly earliest: number;
  readonly latest: number;
  readonly length: number;
}

interface State {
  readonly windows: readonly Window[];
  readonly surely: (first: number, second: number) => boolean;
  readonly surelyNot: (first: number, second: number) => boolean;
}

const minutesOf = (set: readonly Window[]): number => set.reduce((sum, { length }) => sum + length, 0);

/** What the rules still have to say about a state, each by its definition, in sentences. */
function unsaid({ windows, surely, surelyNot }: State): string[] {
  const said: string[] = [];
  for (const b of new Set(windows.map(({ latest }) => latest))) {
    const within = windows.filter(({ latest }) => latest <= b);
    const sets = [...new Set(within.map(({ earliest }) => earliest))].map((a) => ({
      a,
      set: within.filter(({ earliest }) => earliest >= a),
    }));
    for (const { a, set } of sets) if (a + minutesOf(set) > b) said.push(`[${a}, ${b}) is overloaded`);
    for (const i of windows.filter(({ latest }) => latest > b)) {
      // The start of the set with i in it, and its minutes: of all sets that overflow, the one that overflows most.
      const fullest = sets
        .map(({ a, set }) => ({ set, over: Math.min(a, i.earliest) + minutesOf(set) + i.length - b }))
        .sort((x, y) => y.over - x.over || x.set.length - y.set.length)[0]!;
      if (fullest.over > 0 && fullest.set.some((j) => !surelyNot(i.name, j.name)))
        said.push(`${i.name} comes after all that must end by ${b}`);
    }
    for (const i of windows)
      for (const { earliest, length } of within) {
        const goal = earliest + length;
        const set = within.filter((k) => k !== i && k.earliest + k.length >= goal);
        if (goal > i.earliest && set.length > 0 && i.earliest + i.length + minutesOf(set) > b)
          said.push(`${i.name} is not the first of those that end at ${goal} or later`);
      }
  }
  for (const i of windows) {
    const before = windows.filter((k) => surely(k.name, i.name));
    for (const { earliest: a } of before)
      if (a + minutesOf(before.filter(({ earliest }) => earliest >= a)) > i.earliest)
        said.push(`${i.name} starts after what is before it`);
  }
  return said;
}

/** A resource with tasks in random windows, some with an end of their own, some that may be left out. */
function resource(chance: Seeded, n: number) {
  const core = new Core(400);
  const { trail } = core;
  const horizon = 4 * n;
  const tasks = Array.from({ length: n }, () => {
    const length = chance.int(1, 5);
    const lo = chance.int(0, horizon - length);
    const hi = chance.int(lo, horizon - length);
    const start = trail.variable(lo, hi);
    const literal = chance.chance(0.15) ? trail.atLeast(trail.variable(0, 1), 1) : trail.alwaysTrue;
    if (chance.chance(0.8)) return { start, startOffset: 0, end: start, endOffset: length, length, literal };
    const end = trail.variable(lo + length, Math.min(horizon, hi + length + 2));
    core.arcs.add(2 * start, 2 * end, length, trail.alwaysTrue);
    return { start, startOffset: 0, end, endOffset: 0, length, literal };
  });
  const order = new Int32Array(n * n).fill(trail.alwaysFalse);
  for (let a = 0; a < n; a++)
    for (let b = a + 1; b < n; b++) {
      const aFirst = trail.atLeast(trail.variable(0, 1), 1);
      const both = chance.chance(0.9);
      const bFirst = both ? aFirst ^ trail.negation : trail.atLeast(trail.variable(0, 1), 1);
      order[a * n + b] = aFirst;
      order[b * n + a] = bFirst;
      const not = (literal: number): number => literal ^ trail.negation;
      if (!both) {
        core.clause(not(aFirst), not(bFirst));
        core.clause(not(tasks[a]!.literal), not(tasks[b]!.literal), aFirst, bFirst);
      }
      for (const [first, second, literal] of [
        [tasks[a]!, tasks[b]!, aFirst],
        [tasks[b]!, tasks[a]!, bFirst],
      ] as const)
        core.arcs.add(2 * first.end, 2 * second.start, first.endOffset - second.startOffset, literal);
    }
  const disjunctive = new Disjunctive(trail, tasks, order);
  core.post(disjunctive);
  core.seal();
  const settled = (): boolean => {
    for (;;) {
      const before = trail.entries;
      if (!core.propagate()) return false;
      for (let run = 0; run < RUNS; run++) if (!disjunctive.propagate()) return false;
      if (trail.entries === before) return true;
    }
  };
  const state = (mirrored: boolean): State => {
    const literal = (k: number, l: number): number => (mirrored ? order[l * n + k]! : order[k * n + l]!);
    return {
      windows: tasks.flatMap((task, name) => {
        if (!trail.isTrue(task.literal)) return [];
        const start = trail.bound[2 * task.start]!;
        const end = task.endOffset - trail.bound[2 * task.end + 1]!;
        const { length } = task;
        return mirrored
          ? [{ name, earliest: -end, latest: -start, length }]
          : [{ name, earliest: start, latest: end, length }];
      }),
      surely: (k, l) => trail.isTrue(literal(k, l)),
      surelyNot: (k, l) => trail.isFalse(literal(k, l)),
    };
  };
  return { core, order, tasks, settled, state };
}

describe('an exclusive resource', () => {
  it.each([
    { name: 'a few tasks', least: 2, most: 9, seeds: 150 },
    { name: 'more tasks than a row of 32 bits has', least: 33, most: 45, seeds: 10 },
  ])('has said all that its rules say once nothing changes any more: $name', ({ least, most, seeds }) => {
    let states = 0;
    let conflicts = 0;
    for (let seed = 0; seed < seeds; seed++) {
      const chance = seeded(seed);
      const { core, order, tasks, settled, state } = resource(chance, chance.int(least, most));
      if (core.dead) continue;
      const { trail } = core;
      const booleans = order.filter((literal) => literal !== trail.alwaysFalse);
      for (let round = 0; round < 30; round++) {
        const open = booleans.filter((literal) => !trail.isTrue(literal) && !trail.isFalse(literal));
        trail.newLevel();
        if (open.length > 0 && chance.chance(0.6)) trail.setLiteral(chance.pick([...open]), 0);
        else {
          const slot = 2 * chance.pick(tasks).start + chance.int(0, 1);
          if (trail.bound[slot]! + trail.bound[slot ^ 1]! < 0) trail.set(slot, trail.bound[slot]! + 1, 0);
        }
        if (!settled()) {
          conflicts++;
          core.backtrack(chance.int(0, trail.level - 1));
          continue;
        }
        states++;
        for (const mirrored of [false, true]) expect(unsaid(state(mirrored)), `resource ${seed}`).toEqual([]);
      }
    }
    expect(states).toBeGreaterThan(50);
    expect(conflicts).toBeGreaterThan(3);
  });
});
