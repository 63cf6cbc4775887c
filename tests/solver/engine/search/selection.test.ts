/** Which task a dive takes next, held to a plain look at all tasks while plans of invented and of the demo's problems are built and undone. */
import { describe, expect, it } from 'vitest';
import { Budget } from '../../../../solver/engine/budget.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';
import type { DiveOrders } from '../../../../solver/engine/search/dive.ts';
import { Selection } from '../../../../solver/engine/search/selection.ts';
import { prepare, type Parts } from '../../../../solver/engine/search/workshop.ts';
import { sessionToProblem } from '../../../../solver/translate/session-to-problem.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../../support/demo-documents.ts';
import { randomProblem } from '../../../support/random-problem.ts';
import { seeded } from '../../../support/seeded.ts';

/** As `selection.ts` says, by looking at every task and every lag. */
function plainPick({ propagation, structure }: Parts, orders: DiveOrders, promoted: readonly number[]): number {
  const { store } = propagation;
  const { backward, parallel, key } = orders;
  const tasks = Array.from({ length: store.compiled.taskCount }, (_, task) => task);
  const slot = (task: number): number => 4 * task + (backward ? 2 : 0);
  const width = (task: number): number => -store.cells[slot(task)]! - store.cells[slot(task) + 1]!;
  const isAnchored = (task: number): boolean => width(task) === 0;
  const present = tasks.filter((task) => store.isPresent(task));
  const loose = present.filter(
    (task) => isAnchored(task) && !store.isPlaced(task) && (store.mode(task) < 0 || propagation.totals.has(task)),
  );
  if (loose.length > 0) return loose[0]!;
  const open = present.filter((task) => !isAnchored(task) && structure.isContainer[task] === 0);
  const listed = ({ start, items }: { start: Int32Array; items: Int32Array }, task: number): number[] => [
    ...items.slice(start[task], start[task + 1]),
  ];
  const holding = (lists: { start: Int32Array; items: Int32Array }, conditions: Int32Array, task: number): number[] =>
    listed(lists, task).filter((_, k) => store.isTrue(conditions[lists.start[task]! + k]!));
  const predecessor = (task: number): number | undefined =>
    (backward
      ? holding(structure.after, structure.afterCondition, task)
      : holding(structure.before, structure.beforeCondition, task)
    ).find((other) => !isAnchored(other));
  const isUrgent = (task: number): boolean =>
    listed(backward ? structure.opens : structure.closes, task).some(
      (container) => store.isPresent(container) && isAnchored(container),
    ) ||
    (width(task) <= 20 &&
      (backward
        ? holding(structure.raisers, structure.raiserCondition, task)
        : holding(structure.bounders, structure.bounderCondition, task)
      ).some(isAnchored));
  /** The one with the least of these, the earlier number differing first. */
  const least = (of: readonly number[], ...by: ((task: number) => number)[]): number =>
    [...of].sort((a, b) => by.map((value) => value(a) - value(b)).find((difference) => difference !== 0) ?? a - b)[0] ??
    -1;
  const near = (task: number): number => store.cells[4 * task + (backward ? 3 : 0)]!;
  const far = (task: number): number => -store.cells[4 * task + (backward ? 2 : 1)]!;
  const place = (task: number): number => promoted.indexOf(structure.block[task]!);
  let urgent = least(open.filter(isUrgent), far);
  if (urgent < 0)
    urgent = least(
      open.filter((task) => place(task) >= 0),
      place,
    );
  if (urgent >= 0) {
    for (let steps = 0; steps < 20; steps++) urgent = predecessor(urgent) ?? urgent;
    return urgent;
  }
  const ready = open.filter((task) => predecessor(task) === undefined);
  const best = least(ready, ...(parallel ? [near] : []), (task) => key[task]!);
  return best >= 0 ? best : least(open, near);
}

/** Builds and undoes at random, and asks for the next task all the while. @returns how often */
function hold(problem: Problem, seed: number, steps: number): number {
  const chance = seeded(seed);
  const parts = prepare(problem, new Budget(1e9, undefined))!;
  const { propagation, structure, compiled } = parts;
  const { store } = propagation;
  if (!propagation.start()) return 0;
  const selection = new Selection(propagation, structure);
  let asked = 0;
  for (let dive = 0; dive < 4; dive++) {
    const orders: DiveOrders = {
      backward: dive % 2 === 1,
      parallel: dive < 2,
      key: Float64Array.from({ length: compiled.taskCount }, () => chance.int(0, 9)),
      guide: new Int32Array(compiled.optionCount.length).fill(-1),
      whim: 0,
      shapeWhim: 0,
      failLimit: 1,
    };
    const base = store.trail.mark();
    selection.begin(orders);
    const promoted: number[] = [];
    const marks: number[] = [];
    for (let step = 0; step < steps; step++) {
      const task = selection.pick();
      expect(task, `${problem.name}, dive ${dive}, step ${step}`).toBe(plainPick(parts, orders, promoted));
      asked++;
      if (chance.int(1, 12) === 1) {
        const block = structure.block[chance.int(0, compiled.taskCount - 1)]!;
        selection.promote(block);
        if (!promoted.includes(block)) promoted.push(block);
      }
      if (marks.length > 0 && chance.int(1, 6) === 1) {
        const back = chance.int(0, marks.length - 1);
        store.trail.undo(marks[back]!);
        marks.length = back;
        continue;
      }
      const open = [...compiled.optionCount.keys()].filter((choice) => store.openOptions(choice) > 1);
      if (task < 0 && open.length === 0) break;
      marks.push(store.trail.mark());
      const low = 4 * task + (orders.backward ? 3 : 0);
      const choice = open[chance.int(0, Math.max(0, open.length - 1))] ?? -1;
      const isChoice = task < 0 || (choice >= 0 && chance.int(1, 3) === 1);
      const done = isChoice
        ? store.removeOption(choice, store.firstOption(choice))
        : store.raise(low ^ 1, -store.cells[low]!);
      if (done && propagation.propagate()) continue;
      propagation.clear();
      store.trail.undo(marks.pop()!);
    }
    store.trail.undo(base);
  }
  return asked;
}

describe('the task placed next', () => {
  it('is the one that a look at all tasks finds, on invented problems', () => {
    let asked = 0;
    for (let seed = 0; seed < 120; seed++)
      asked += hold(randomProblem(seed, { tasks: [6, 16], horizon: [30, 90], length: 8 }), seed, 30);
    expect(asked).toBeGreaterThan(3000);
  });

  it('is the one that a look at all tasks finds, in the demo’s kitchens', () => {
    const components = demoComponents();
    let asked = 0;
    for (const session of demoSessions().slice(0, 2)) {
      const kitchen = byId(demoKitchens(), session.kitchens[0]!);
      const translated = sessionToProblem({ session, kitchen, components });
      if (!translated.ok) throw new Error(JSON.stringify(translated.faults));
      asked += hold(translated.problem, 1, 250);
    }
    expect(asked).toBeGreaterThan(300);
  });
});
