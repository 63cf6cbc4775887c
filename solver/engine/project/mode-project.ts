/**
 * Recognises the multi-mode project: every task is there in one of its modes of fixed length, a choice of its own; shortest lags without a
 * cycle; resources with capacities; stocks that are only ever drawn from; least finish.
 *
 * The modes taken are written into a classical project, so that its schedule generation serves both.
 *
 * Source: Talbot (1982), Resource-constrained project scheduling with time-resource tradeoffs: the nonpreemptive case.
 */
import type { Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import {
  drawsOf,
  duesOf,
  lagsOf,
  modesOf,
  usesOf,
  type ModeDraws,
  type ModeDues,
  type ModeLags,
  type ModeList,
  type ModeUses,
} from './mode-parts.ts';
import type { PlainProject } from './plain-project.ts';

export class ModeProject {
  /** The project in the modes last taken: its lengths, amounts, lags and dues are rewritten with them. */
  readonly project: PlainProject;
  /** By resource: its largest capacity. */
  readonly most: Int32Array;

  constructor(
    problem: Problem,
    readonly modes: ModeList,
    readonly draws: ModeDraws,
    readonly lags: ModeLags,
    readonly dues: ModeDues,
    readonly use: ModeUses,
  ) {
    const { tasks, resources, horizon } = problem;
    const { release, after, before, topological } = lags;
    this.project = {
      count: tasks.length,
      horizon,
      length: new Int32Array(tasks.length),
      release,
      due: new Int32Array(tasks.length),
      after,
      afterLag: new Int32Array(after.items.length),
      before,
      beforeLag: new Int32Array(before.items.length),
      uses: use.uses,
      amount: new Int32Array(use.uses.items.length),
      resources: resources.length,
      capacity: capacities(problem),
      topological,
    };
    this.most = Int32Array.from(resources, ({ capacity, calendar = [] }) =>
      calendar.reduce((most, entry) => Math.max(most, entry.capacity), capacity),
    );
  }

  /** Writes the modes of all tasks into the project. */
  take(taken: Int32Array): void {
    const { project, lags, dues, use, modes } = this;
    const { count, length, due, amount, uses, after, afterLag, before, beforeLag } = project;
    for (let task = 0; task < count; task++) {
      const mode = taken[task] as number;
      const minutes = modes.length[mode] as number;
      const end = dues.dueOfEnd[task] as number;
      length[task] = minutes;
      due[task] = Math.max(dues.dueOfStart[task] as number, end < 0 ? -1 : end + minutes);
      const amounts = use.amounts[mode] as Int32Array;
      const first = uses.start[task] as number;
      for (let u = 0; u < amounts.length; u++) amount[first + u] = amounts[u] as number;
      for (let a = after.start[task] as number; a < (after.start[task + 1] as number); a++)
        afterLag[a] = (lags.least[a] as number) + (lags.fromEnd[a] === 1 ? minutes : 0);
    }
    for (let b = 0; b < before.items.length; b++) beforeLag[b] = afterLag[lags.entryOfBefore[b] as number] as number;
  }

  /** Minutes of a task's mode times what it uses of a resource. */
  work(task: number, mode: number, resource: number): number {
    const { uses, amounts } = this.use;
    for (let u = uses.start[task]!; u < uses.start[task + 1]!; u++)
      if (uses.items[u] === resource) return amounts[mode]![u - uses.start[task]!]! * this.modes.length[mode]!;
    return 0;
  }

  /** The plan of these modes and starts. */
  solution(taken: Int32Array, start: Int32Array): Solution {
    const { firstMode, length, choiceTask } = this.modes;
    return {
      choices: Array.from(choiceTask, (task) => taken[task]! - firstMode[task]!),
      tasks: Array.from(start, (at, task) => ({ start: at, end: at + length[taken[task]!]! })),
    };
  }
}

/** The problem as a multi-mode project, null when it is not one. */
export function asModeProject(problem: Problem): ModeProject | null {
  const { tasks, tiers, states, totals, forbidden } = problem;
  const [tier] = tiers;
  if (tier?.kind !== 'latest' || tiers.length > 1 || tasks.length === 0) return null;
  if (states.length > 0 || totals.length > 0 || forbidden.length > 0) return null;
  const modes = modesOf(problem);
  const draws = modes === null ? null : drawsOf(problem, modes);
  const lags = draws === null ? null : lagsOf(problem);
  const dues = lags === null ? null : duesOf(problem, tier);
  return dues === null ? null : new ModeProject(problem, modes!, draws!, lags!, dues, usesOf(problem));
}

/** Capacity of each resource at each minute, one resource after the other. */
function capacities({ resources, horizon }: Problem): Int32Array {
  const capacity = new Int32Array(resources.length * horizon);
  resources.forEach((resource, r) => {
    const own = capacity.subarray(r * horizon, (r + 1) * horizon).fill(resource.capacity);
    for (const { from, until, capacity: then } of resource.calendar ?? [])
      own.fill(then, Math.max(0, from), Math.max(0, Math.min(until, horizon)));
  });
  return capacity;
}
