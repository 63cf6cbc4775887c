/** The value of each objective tier in a solution, by the definitions of `problem.ts`. */
import type { Mode, Point, Problem, Tier } from './problem.ts';
import type { Solution } from './outcome.ts';

interface Placed {
  readonly id: string;
  readonly group: string;
  readonly mode: Mode;
  readonly start: number;
  readonly end: number;
}

/**
 * Evaluates every tier.
 *
 * @param problem a problem that `validateProblem` accepts
 * @param solution a solution that `verifySolution` accepts
 * @returns one integer a tier, in the order of `problem.tiers`; smaller is better
 */
export function tierValues(problem: Problem, solution: Solution): number[] {
  const optionOf = new Map(problem.choices.map((choice, index) => [choice.id, solution.choices[index] ?? 0]));
  const placed = new Map<string, Placed>();
  problem.tasks.forEach((task, index) => {
    const interval = solution.tasks[index] ?? null;
    if (interval === null) return;
    const mode = task.modes[task.choice === undefined ? 0 : (optionOf.get(task.choice) ?? 0)];
    if (mode === null || mode === undefined) return;
    placed.set(task.id, { id: task.id, group: task.group ?? '', mode, start: interval.start, end: interval.end });
  });
  return problem.tiers.map((tier) => tierValue(tier, placed));
}

function tierValue(tier: Tier, placed: ReadonlyMap<string, Placed>): number {
  const at = (point: Point): number | undefined => {
    if (point === 'origin') return 0;
    const task = placed.get(point.task);
    return task === undefined ? undefined : point.at === 'start' ? task.start : task.end;
  };
  let value = 0;
  switch (tier.kind) {
    case 'latest':
      for (const term of tier.terms) {
        const time = at(term.point);
        if (time !== undefined) value = Math.max(value, (term.plus ?? 0) + (term.minus === true ? -time : time));
      }
      return value;
    case 'waiting':
      for (const term of tier.terms) {
        const from = at(term.from);
        const to = at(term.to);
        if (from !== undefined && to !== undefined) value += term.weight * Math.max(0, to - from - term.free);
      }
      return value;
    case 'cost':
      for (const { mode, start, end } of placed.values())
        if (mode.cost !== undefined) value += mode.cost.fixed + mode.cost.perMinute * (end - start);
      return value;
    case 'changes':
      for (const resource of tier.resources) value += changesOn(resource, placed);
      return value;
  }
}

function changesOn(resource: string, placed: ReadonlyMap<string, Placed>): number {
  const users = [...placed.values()].filter((task) => task.mode.uses.some((use) => use.resource === resource));
  users.sort((a, b) => a.start - b.start || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
  let changes = 0;
  users.forEach((task, index) => {
    const before = users[index - 1];
    if (before !== undefined && before.group !== task.group) changes++;
  });
  return changes;
}

/** Whether one list of tier values is better than another: less in the first tier where they differ. */
export function less(a: readonly number[], b: readonly number[]): boolean {
  for (let k = 0; k < a.length; k++) if (a[k] !== b[k]) return a[k]! < b[k]!;
  return false;
}
