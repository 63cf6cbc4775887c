/**
 * How often the group changes along exclusive resources, by adjacent pairs.
 *
 * The changes on a resource are the runs of one group, less one. A run begins at each task with no predecessor of its own group, and ends at
 * each with no such successor. Each pair (k, j) of one group has a literal for "k right before j" that forbids any third task of the resource
 * between them; a task that is in no pair as second begins a run.
 *
 * Example: groups a a b a are three runs and 2 changes; the pair a a makes the second task begin none.
 */
import { Sum } from './sums.ts';
import type { ChangesTier, Problem } from '../../problem.ts';
import type { Conditions } from './conditions.ts';
import type { Core } from '../core.ts';
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

/**
 * @returns sums, each at least the tier's value at its least, with the most it can be; null where a resource is not exclusive, a task on it may
 *   have no length (then the order of starts is not the order of the pairs), or there are too many pairs
 */
export function changesSum(
  tier: ChangesTier,
  problem: Problem,
  core: Core,
  conditions: Conditions,
  points: Points,
  orders: Orders,
  lengths: Lengths,
): { readonly sums: readonly Sum[]; readonly most: number } | null {
  const lists = tier.resources.map((resource) => usersOf(resource, problem, points));
  if (lists.some((list) => list === null)) return null;
  const users = lists.map((list) => list!);
  let clauses = 0;
  for (const list of users)
    for (const k of list) for (const j of list) if (k !== j && k.group === j.group) clauses += list.length;
  if (clauses > MOST_CLAUSES) return null;
  const { alwaysTrue, alwaysFalse } = core.trail;
  const ordered = (list: readonly User[]): boolean =>
    list.every((a, i) =>
      list.slice(i + 1).every((b) => conditions.exclude(a.literal, b.literal) || orders.inConflict(a.task, b.task)),
    );
  if (!users.every(ordered)) return null;
  const sums = [new Sum(), new Sum()] as const;
  let most = 0;
  const not = (literal: number): number => conditions.not(literal);
  for (const list of users) {
    if (list.length === 0) continue;
    most += list.length;
    const used = lengths.scaled(conditions.any(list.map((user) => user.literal)), 1);
    for (const sum of sums) lengths.addTo(sum, used, -1);
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
        for (const needed of [k.literal, j.literal, first]) core.clause(not(adjacent), needed);
        for (const i of list) {
          if (i === k || i === j) continue;
          const before = orders.known(i.task, k.task);
          const after = orders.known(j.task, i.task);
          if (before !== alwaysTrue && after !== alwaysTrue) core.clause(not(adjacent), not(i.literal), before, after);
        }
      }),
    );
    // A run of a group begins at each task that is second in no pair, and ends at each that is first in none: as many, counted twice.
    sums.forEach((sum, side) => {
      const runs = list.map((user, at) => {
        const run = conditions.boolean();
        core.clause(not(user.literal), run, ...pairs[side]![at]!);
        lengths.addTo(sum, lengths.scaled(run, 1), 1);
        return run;
      });
      list.forEach((user) => core.clause(not(user.literal), ...runs.filter((_, at) => list[at]!.group === user.group)));
    });
  }
  return { sums, most };
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
