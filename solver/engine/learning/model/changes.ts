/**
 * How often the group changes along exclusive resources, by adjacent pairs.
 *
 * The changes on a resource are the runs of one group, less one. A run begins at each task with no predecessor of its own group, and ends at
 * each with no such successor. Each pair (k, j) of one group has a literal for "k right before j" that forbids any third task of the resource
 * between them; a task that is in no pair as second begins a run. Two tasks that must stand apart leave their resource idle when nothing
 * comes between them, and idle minutes are few (see `energy.ts`).
 *
 * Example: groups a a b a are three runs and 2 changes; the pair a a makes the second task begin none.
 */
import { Sum } from './sums.ts';
import type { ChangesTier, Problem } from '../../problem.ts';
import type { Conditions } from './conditions.ts';
import type { Core } from '../core.ts';
import type { Differences } from './differences.ts';
import type { Lengths } from './lengths.ts';
import type { Orders } from './orders.ts';
import type { Points } from './points.ts';

/** Above this many clauses the tier is left unmodelled. */
const MOST_CLAUSES = 400_000;

interface User {
  readonly task: number;
  readonly literal: number;
  readonly group: string;
}

/** Nothing comes between two tasks on a resource while the literal holds: then it is idle for at least `gap` minutes. */
export interface Idle {
  readonly resource: string;
  readonly first: number;
  readonly second: number;
  readonly gap: number;
  readonly literal: number;
}

export interface Changes {
  /** Variables that together are at least the tier's value, `shift` added: the runs of each group, and a 1 for each resource unused. */
  readonly summands: readonly number[];
  readonly shift: number;
  /** No group has more runs than this. */
  readonly most: number;
  readonly idle: readonly Idle[];
}

interface Context {
  readonly problem: Problem;
  readonly core: Core;
  readonly conditions: Conditions;
  readonly points: Points;
  readonly orders: Orders;
  readonly lengths: Lengths;
  readonly differences: Differences;
}

/**
 * Models a tier's changes.
 *
 * @returns null where a resource is not exclusive, a task on it may have no length (then the order of starts is not the order of the pairs),
 *   or there are too many pairs
 */
export function modelChanges(tier: ChangesTier, context: Context): Changes | null {
  const { core, conditions, points, orders, problem } = context;
  const lists = tier.resources.map((resource) => usersOf(resource, problem, points));
  if (lists.some((list) => list === null)) return null;
  const users = lists.map((list) => list!);
  let clauses = 0;
  for (const list of users)
    for (const k of list) for (const j of list) if (k !== j && k.group === j.group) clauses += list.length;
  if (clauses > MOST_CLAUSES) return null;
  const ordered = (list: readonly User[]): boolean =>
    list.every((a, i) =>
      list.slice(i + 1).every((b) => conditions.exclude(a.literal, b.literal) || orders.inConflict(a.task, b.task)),
    );
  if (!users.every(ordered)) return null;
  const most = users.reduce((sum, list) => sum + list.length, 0);
  const idle: Idle[] = [];
  const summands: number[] = [];
  const runs = new Map<string, readonly [Sum, Sum]>();
  users.forEach((list, r) => {
    if (list.length === 0) return;
    const unused = core.trail.variable(0, 1);
    core.clause(conditions.any(list.map((user) => user.literal)), core.trail.atLeast(unused, 1));
    summands.push(unused);
    addRuns(list, tier.resources[r]!, context, runs, idle);
  });
  const shift = -summands.length;
  for (const both of runs.values()) {
    const x = core.trail.variable(0, most);
    for (const sum of both) sum.add(x, -1).atMost(core, 0, core.trail.alwaysTrue);
    summands.push(x);
  }
  return { summands, shift, most, idle };
}

/** Adds the runs of each group on one resource, counted by where they begin and by where they end. */
function addRuns(
  list: readonly User[],
  resource: string,
  { core, conditions, points, orders, lengths, differences }: Context,
  runs: Map<string, readonly [Sum, Sum]>,
  idle: Idle[],
): void {
  const { alwaysTrue, alwaysFalse } = core.trail;
  const not = (literal: number): number => conditions.not(literal);
  // By task: literals of the pairs in which it comes second, and first.
  const pairs = [list.map((): number[] => []), list.map((): number[] => [])] as const;
  list.forEach((k, at) =>
    list.forEach((j, to) => {
      if (k === j || k.group !== j.group) return;
      const first = orders.known(k.task, j.task);
      if (first === alwaysFalse || conditions.exclude(k.literal, j.literal)) return;
      const adjacent = conditions.boolean();
      pairs[0][to]!.push(adjacent);
      pairs[1][at]!.push(adjacent);
      const gap = differences.longest(points.ends[k.task]!, points.starts[j.task]!);
      if (gap > 0) idle.push({ resource, first: k.task, second: j.task, gap, literal: adjacent });
      for (const needed of [k.literal, j.literal, first]) core.clause(not(adjacent), needed);
      for (const i of list) {
        if (i === k || i === j) continue;
        const before = orders.known(i.task, k.task);
        const after = orders.known(j.task, i.task);
        if (before !== alwaysTrue && after !== alwaysTrue) core.clause(not(adjacent), not(i.literal), before, after);
      }
    }),
  );
  for (const side of [0, 1] as const) {
    const begun = list.map((user, at) => {
      const run = conditions.boolean();
      core.clause(not(user.literal), run, ...pairs[side][at]!);
      const sums = runs.get(user.group) ?? [new Sum(), new Sum()];
      runs.set(user.group, sums);
      lengths.addTo(sums[side], lengths.scaled(run, 1), 1);
      return run;
    });
    list.forEach((user) => core.clause(not(user.literal), ...begun.filter((_, at) => list[at]!.group === user.group)));
  }
}

/** The uses of a resource, by task; null where one may have no length. */
function usersOf(resource: string, problem: Problem, points: Points): User[] | null {
  const list: User[] = [];
  for (const [t, task] of problem.tasks.entries()) {
    const modes = task.modes.flatMap((mode, m) => (mode?.uses.some((use) => use.resource === resource) ? [m] : []));
    if (modes.length === 0) continue;
    if (modes.some((m) => task.modes[m]!.shortest === 0)) return null;
    list.push({ task: t, literal: points.inModes(t, modes), group: task.group ?? '' });
  }
  return list;
}
