/**
 * Points that can only move together. Around a cycle of arcs none of which has time to spare, every distance is settled: such
 * points are one group, and the arcs between two groups are one arc. What is left of an order is a fraction of it.
 */
import { componentLeaders } from './components.ts';
import { earliestTimes, latestTimes, type OrderArc, type PlanOrder } from './plan-order.ts';

/** `shift[to] − shift[from] ≥ least`, where a group's shift is added to the times of its nodes. */
export interface GroupArc {
  readonly from: number;
  readonly to: number;
  readonly least: number;
}

export interface RigidGroups {
  /** Group 0 is the origin's and never moves. */
  readonly count: number;
  /** Group of each node; −1 for absent tasks. */
  readonly groupOf: Int32Array;
  /** By how much each group may move from the times given, earlier (≤ 0) and later (≥ 0). */
  readonly earliest: Int32Array;
  readonly latest: Int32Array;
  /** One for each pair of groups that can come to matter within those bounds; none from or to the origin. */
  readonly arcs: readonly GroupArc[];
  /** The least room of a group before each group it binds (0: the origin): all arcs, with those that bounds already imply. */
  readonly leaving: readonly ReadonlyMap<number, number>[];
}

/** @param order whose times satisfy all its arcs */
export function rigidGroups(order: PlanOrder): RigidGroups {
  const { nodes, arcs, times } = order;
  const earliestOf = earliestTimes(order);
  const latestOf = latestTimes(order, new Int32Array(nodes).fill(2 ** 30));
  if (earliestOf === null || latestOf === null) throw new Error('the times given do not satisfy the order');

  const tight = arcs
    .filter(({ from, to, least }) => times[to]! - times[from]! === least)
    .map(({ from, to }) => [from, to] as const);
  const leaders = componentLeaders(nodes, tight);

  const groupOf = new Int32Array(nodes).fill(-1);
  let count = 0;
  for (let node = 0; node < nodes; node++) {
    if (times[node]! < 0) continue;
    const leader = leaders[node]!;
    groupOf[node] = leader === node ? count++ : groupOf[leader]!;
  }
  const earliest = new Int32Array(count).fill(-(2 ** 30));
  const latest = new Int32Array(count).fill(2 ** 30);
  for (let node = 0; node < nodes; node++) {
    const group = groupOf[node]!;
    if (group < 0) continue;
    earliest[group] = Math.max(earliest[group]!, earliestOf[node]! - times[node]!);
    latest[group] = Math.min(latest[group]!, latestOf[node]! - times[node]!);
  }
  const leaving = leavingGroups(arcs, times, groupOf, count);
  const between: GroupArc[] = [];
  leaving.forEach((room, from) =>
    room.forEach((minutes, to) => {
      // `shift[to] − shift[from]` is at least the difference of their bounds in any case.
      if (from !== 0 && to !== 0 && earliest[to]! - latest[from]! < -minutes)
        between.push({ from, to, least: -minutes });
    }),
  );
  return { count, groupOf, earliest, latest, arcs: between, leaving };
}

function leavingGroups(
  arcs: readonly OrderArc[],
  times: Int32Array,
  groupOf: Int32Array,
  count: number,
): readonly ReadonlyMap<number, number>[] {
  const leaving = Array.from({ length: count }, () => new Map<number, number>());
  for (const { from, to, least } of arcs) {
    const [before, after] = [groupOf[from]!, groupOf[to]!];
    if (before === after) continue;
    const room = times[to]! - times[from]! - least;
    const known = leaving[before]!.get(after);
    if (known === undefined || room < known) leaving[before]!.set(after, room);
  }
  return leaving;
}
