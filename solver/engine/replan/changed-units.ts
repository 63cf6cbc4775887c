/**
 * Which units change between two plans.
 *
 * A unit changes when one of its tasks is present in one plan and not in the other; or takes another mode (another person, another
 * place); or when, on an exclusive resource that both tasks still use, it no longer stands on the same side of a neighbour. The
 * neighbours of a task on a resource are the tasks of other units that came right before and right after it in the old plan. So
 * two neighbours that trade places are two changed units, and a unit counts once however much of it changes.
 *
 * Example: a b c in this order on one resource; c a b changes b and c, since only the pair (b, c) were neighbours and are reversed.
 */
import { byNumber } from '../explain/by-number.ts';
import type { Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import type { Unit } from './asked.ts';

/** The task of one unit right before the task of another on an exclusive resource. */
export interface NeighbourPair {
  readonly resource: string;
  readonly first: number;
  readonly second: number;
}

/** Modes that a solution takes, by task; null: absent. */
export function modesTaken(problem: Problem, solution: Solution): readonly (number | null)[] {
  const { choices } = byNumber(problem);
  return problem.tasks.map((task, index) =>
    (solution.tasks[index] ?? null) === null
      ? null
      : task.choice === undefined
        ? 0
        : solution.choices[choices.get(task.choice)!]!,
  );
}

/** Whether a mode of a task takes an exclusive resource. */
export const takes = (problem: Problem, task: number, mode: number | null, resource: string): boolean =>
  mode !== null &&
  (problem.tasks[task]!.modes[mode]?.uses.some((use) => use.resource === resource && use.amount > 0) ?? false);

/** Tasks on each exclusive resource in the order of a solution's times, those of no length apart. */
export function sequences(problem: Problem, solution: Solution): ReadonlyMap<string, readonly number[]> {
  const exclusive = new Set(
    problem.resources
      .filter((resource) => resource.capacity === 1 && (resource.calendar ?? []).every((entry) => entry.capacity <= 1))
      .map((resource) => resource.id),
  );
  const lists = new Map<string, number[]>();
  modesTaken(problem, solution).forEach((mode, task) => {
    if (mode === null) return;
    const { start, end } = solution.tasks[task]!;
    if (start === end) return;
    for (const use of problem.tasks[task]!.modes[mode]!.uses)
      if (use.amount > 0 && exclusive.has(use.resource)) pushTo(lists, use.resource, task);
  });
  for (const list of lists.values()) list.sort((a, b) => solution.tasks[a]!.start - solution.tasks[b]!.start || a - b);
  return lists;
}

function pushTo(lists: Map<string, number[]>, resource: string, task: number): void {
  const list = lists.get(resource);
  if (list === undefined) lists.set(resource, [task]);
  else list.push(task);
}

/** By task: the unit that it is in, or −1. */
export function unitOfTask(problem: Problem, units: readonly Unit[]): Int32Array {
  const unitOf = new Int32Array(problem.tasks.length).fill(-1);
  units.forEach((unit, index) => {
    for (const task of unit.tasks) unitOf[task] = index;
  });
  return unitOf;
}

/** Neighbours of different units in the old plan. */
export function neighbourPairs(problem: Problem, old: Solution, units: readonly Unit[]): readonly NeighbourPair[] {
  const unitOf = unitOfTask(problem, units);
  const pairs: NeighbourPair[] = [];
  for (const [resource, list] of sequences(problem, old)) {
    for (let at = 1; at < list.length; at++) {
      const [first, second] = [list[at - 1]!, list[at]!];
      if (unitOf[first] !== unitOf[second]) pairs.push({ resource, first, second });
    }
  }
  return pairs;
}

/**
 * @param pairs of `neighbourPairs` of the old plan
 * @returns positions of the units that change from the old plan to the new, in order
 */
export function changedUnits(
  problem: Problem,
  units: readonly Unit[],
  old: Solution,
  pairs: readonly NeighbourPair[],
  now: Solution,
): readonly number[] {
  const before = modesTaken(problem, old);
  const after = modesTaken(problem, now);
  const unitOf = unitOfTask(problem, units);
  const changed = new Set<number>();
  after.forEach((mode, task) => {
    if (mode !== before[task]) changed.add(unitOf[task]!);
  });
  for (const { resource, first, second } of pairs) {
    if (!takes(problem, first, after[first]!, resource) || !takes(problem, second, after[second]!, resource)) continue;
    if (now.tasks[first]!.end <= now.tasks[second]!.start) continue;
    changed.add(unitOf[first]!);
    changed.add(unitOf[second]!);
  }
  changed.delete(-1);
  return [...changed].sort((a, b) => a - b);
}
