import { describe, expect, it } from 'vitest';
import { compileProblem } from '../../../../solver/engine/compile-problem.ts';
import { Energy } from '../../../../solver/engine/bounds/energy.ts';
import type { Solution } from '../../../../solver/engine/outcome.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';
import { Propagation } from '../../../../solver/engine/propagation/propagation.ts';
import { Store } from '../../../../solver/engine/propagation/store.ts';
import { readStructure } from '../../../../solver/engine/structure.ts';
import { bruteForce } from '../../../support/brute-force.ts';
import { randomProblem, tinyShape } from '../../../support/random-problem.ts';
import { seeded, type Seeded } from '../../../support/seeded.ts';
import { endOf, mode, problemWith, startOf, task, use } from '../build-problem.ts';

function open(problem: Problem): { store: Store; propagation: Propagation } {
  const compiled = compileProblem(problem);
  const { block } = readStructure(compiled);
  const store = new Store(compiled);
  const propagation = new Propagation(store, block);
  propagation.timetable.scope = problem.horizon;
  return { store, propagation };
}

/** One decision of a known solution, made in the store: an option, or part of a task's times. */
function follow(store: Store, problem: Problem, solution: Solution, chance: Seeded): boolean {
  if (problem.choices.length > 0 && chance.chance(0.4)) {
    const choice = chance.int(0, problem.choices.length - 1);
    return store.assign(choice, solution.choices[choice] as number);
  }
  const index = chance.int(0, problem.tasks.length - 1);
  const interval = solution.tasks[index];
  if (interval === null || interval === undefined) return true;
  const slack = chance.int(0, 2);
  const value = [interval.start - slack, -interval.start - slack, interval.end - slack, -interval.end - slack];
  const side = chance.int(0, 3);
  return store.raise(4 * index + side, value[side] as number);
}

/** True when the solution is still within everything the store knows. */
function admits(store: Store, solution: Solution): boolean {
  return (
    solution.choices.every((option, choice) => store.isAlive(choice, option)) &&
    solution.tasks.every(
      (interval, task) =>
        interval === null ||
        (store.earliestStart(task) <= interval.start &&
          store.latestStart(task) >= interval.start &&
          store.earliestEnd(task) <= interval.end &&
          store.latestEnd(task) >= interval.end),
    )
  );
}

describe('propagation', () => {
  it('never loses a known solution, whatever of it is decided and in whatever order', () => {
    let watched = 0;
    for (let seed = 0; seed < 600; seed++) {
      const problem = randomProblem(seed, tinyShape);
      const known = bruteForce(problem, 200_000);
      if (known.kind !== 'optimal') continue;
      watched++;
      const { store, propagation } = open(problem);
      const chance = seeded(seed);
      expect(propagation.start(), `problem ${seed} at the root`).toBe(true);
      expect(new Energy(store, propagation.timetable).overloaded(), `energy of problem ${seed}`).toBe(-1);
      for (let step = 0; step < 25; step++) {
        const kept = follow(store, problem, known.solution, chance) && propagation.propagate();
        expect(kept, `problem ${seed}, decision ${step}`).toBe(true);
        expect(admits(store, known.solution), `problem ${seed} after decision ${step}`).toBe(true);
      }
    }
    expect(watched).toBeGreaterThan(200);
  });

  it('is at its end when it ends: to look at every task once more tells nothing', () => {
    let looked = 0;
    for (let seed = 0; seed < 400; seed++) {
      const problem = randomProblem(seed, { tasks: [5, 12], horizon: [20, 45], length: 10 });
      const { store, propagation } = open(problem);
      if (!propagation.start()) continue;
      const chance = seeded(seed);
      for (let step = 0; step < 40; step++) {
        const mark = store.trail.mark();
        const choice = chance.int(0, problem.choices.length);
        const slot = 4 * chance.int(0, problem.tasks.length - 1) + chance.int(0, 3);
        const done =
          choice < problem.choices.length
            ? store.openOptions(choice) === 1 || store.removeOption(choice, store.firstOption(choice))
            : store.raise(slot, store.cells[slot]! + chance.int(1, 5));
        if (!done || !propagation.propagate()) {
          propagation.clear();
          store.trail.undo(mark);
          continue;
        }
        const known = store.cells.slice();
        for (let index = 0; index < problem.tasks.length; index++) store.enqueueTask(index);
        expect(propagation.propagate(), `problem ${seed}, step ${step}`).toBe(true);
        expect(store.cells, `problem ${seed}, step ${step}`).toEqual(known);
        looked++;
      }
    }
    expect(looked).toBeGreaterThan(5000);
  });

  it('is undone exactly', () => {
    for (let seed = 0; seed < 200; seed++) {
      const problem = randomProblem(seed, tinyShape);
      const { store, propagation } = open(problem);
      if (!propagation.start()) continue;
      const before = store.cells.slice();
      const mark = store.trail.mark();
      const chance = seeded(seed);
      for (let step = 0; step < 6; step++) {
        const index = chance.int(0, problem.tasks.length - 1);
        const slot = 4 * index + chance.int(0, 3);
        if (store.raise(slot, (store.cells[slot] as number) + 1) && propagation.propagate()) continue;
        propagation.clear();
        break;
      }
      store.trail.undo(mark);
      expect(store.cells, `problem ${seed}`).toEqual(before);
    }
  });

  it.each<{
    name: string;
    given: Problem;
    decide?: (store: Store) => boolean;
    expected: Record<string, [number, number]>;
  }>([
    {
      name: 'a task is pushed behind the part in which another surely runs',
      given: problemWith({
        horizon: 20,
        resources: [{ id: 'r', capacity: 1 }],
        tasks: [task('a', 4, [use('r')]), task('b', 4, [use('r')])],
      }),
      decide: (store) => store.raise(0, 2) && store.raise(1, -3),
      expected: { a: [2, 3], b: [6, 16] },
    },
    {
      name: 'of two incompatible states the order that is left is drawn',
      given: problemWith({
        horizon: 20,
        states: [
          {
            id: 's',
            classes: ['x', 'y'],
            gap: [
              [null, 3],
              [1, null],
            ],
          },
        ],
        tasks: ['a', 'b'].map((id, index) => ({ id, modes: [mode(5, [], { state: { state: 's', class: index } })] })),
      }),
      decide: (store) => store.raise(1, -4) && store.raise(4, 2),
      expected: { a: [0, 4], b: [8, 15] },
    },
    {
      name: 'a draw is pushed to the first filling',
      given: problemWith({
        horizon: 20,
        tasks: [task('fill', 6), task('draw', 2)],
        reservoirs: [
          {
            id: 'w',
            initial: 1,
            events: [
              { point: endOf('fill'), amount: 3 },
              { point: startOf('draw'), amount: -2 },
            ],
          },
        ],
      }),
      expected: { fill: [0, 12], draw: [6, 18] },
    },
  ])('$name', ({ given, decide, expected }) => {
    const { store, propagation } = open(given);
    expect(propagation.start() && (decide?.(store) ?? true) && propagation.propagate()).toBe(true);
    for (const [id, [earliest, latest]] of Object.entries(expected)) {
      const index = given.tasks.findIndex((each) => each.id === id);
      if (id === 'fill') expect(store.earliestStart(index)).toBe(earliest);
      else expect([store.earliestStart(index), store.latestStart(index)], id).toEqual([earliest, latest]);
    }
  });
});
