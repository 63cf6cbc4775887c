/**
 * Times in a given order: the earliest that all arcs and lower bounds allow, and where none do, the arcs that stand against each
 * other.
 *
 * Longest paths from the origin by label correction (Bellman, Ford) with the arc that raised each node kept, so that a positive
 * cycle can be read off (Cherkassky, Goldberg 1999, "Negative-cycle detection algorithms").
 */
import type { OrderArc } from '../explain/plan-order.ts';
import type { ArcTable } from './arc-table.ts';

export type Pushed =
  | { readonly kind: 'times'; readonly times: Int32Array; readonly steps: number }
  /** Arcs along a cycle whose gaps sum to more than 0. */
  | { readonly kind: 'cycle'; readonly arcs: readonly OrderArc[]; readonly steps: number };

/**
 * @param nodes how many there are; 0 is the origin, whose time is 0
 * @param arcs `time[to] − time[from] ≥ least`; quick when they stand in the order of the times to be expected
 * @param lower minutes a node: each time is at least that; −1: the node is absent
 * @param most no time can be later than this without a cycle, minutes
 */
export function pushRight(nodes: number, arcs: ArcTable, lower: Int32Array, most: number): Pushed {
  const { count, from, to, least } = arcs;
  const times = lower.slice();
  times[0] = 0;
  const raisedBy = new Int32Array(nodes).fill(-1);
  let steps = 0;
  for (let round = 1; ; round++) {
    let changed = false;
    for (let index = 0; index < count; index++) {
      const reached = times[from[index]!]! + least[index]!;
      const node = to[index]!;
      if (reached <= times[node]!) continue;
      times[node] = reached;
      raisedBy[node] = index;
      changed = true;
      if (node === 0 || reached > most) {
        const cycle = cycleFrom(node, arcs, raisedBy, nodes);
        if (cycle !== null) return { kind: 'cycle', arcs: cycle, steps: steps + index };
      }
    }
    steps += count;
    if (changed && round % LOOK === 0) {
      const cycle = anyCycle(arcs, raisedBy, nodes);
      if (cycle !== null) return { kind: 'cycle', arcs: cycle, steps };
    }
    if (!changed) return { kind: 'times', times, steps };
  }
}

/**
 * The latest times that all arcs and upper bounds allow.
 *
 * @param present minutes by node; −1: the node is absent
 * @param upper minutes by node: each time is at most that
 * @returns minutes a node, −1 for absent ones; null where no times satisfy the arcs and the bounds
 */
export function pushLeft(arcs: ArcTable, present: Int32Array, upper: Int32Array): Int32Array | null {
  const { count, from, to, least } = arcs;
  const nodes = present.length;
  const times = new Int32Array(nodes);
  for (let node = 0; node < nodes; node++) times[node] = present[node]! < 0 ? -1 : upper[node]!;
  times[0] = 0;
  for (let round = 0; round <= nodes; round++) {
    let changed = false;
    for (let index = count - 1; index >= 0; index--) {
      const reached = times[to[index]!]! - least[index]!;
      const node = from[index]!;
      if (reached >= times[node]!) continue;
      if (node === 0) return null;
      times[node] = reached;
      changed = true;
    }
    if (!changed) return times;
  }
  return null;
}

/** Passes between looks for a cycle among the raising arcs, where times still rise. */
const LOOK = 2;

/** A cycle among the arcs that raised nodes last: it has been gone round, so its gaps sum to more than 0. */
function anyCycle(arcs: ArcTable, raisedBy: Int32Array, nodes: number): readonly OrderArc[] | null {
  const walk = new Int32Array(nodes);
  for (let start = 0; start < nodes; start++) {
    let at = start;
    while (walk[at] === 0 && raisedBy[at]! >= 0) {
      walk[at] = start + 1;
      at = arcs.from[raisedBy[at]!]!;
    }
    if (walk[at] === start + 1 && raisedBy[at]! >= 0) return cycleFrom(at, arcs, raisedBy, nodes);
    if (walk[at] === 0) walk[at] = start + 1;
  }
  return null;
}

/** Walks back over the raising arcs until a node comes twice; from the origin raised, the way to it closes over a lower bound. */
function cycleFrom(node: number, arcs: ArcTable, raisedBy: Int32Array, nodes: number): readonly OrderArc[] | null {
  const seen = new Int32Array(nodes).fill(-1);
  const way: OrderArc[] = [];
  for (let at = node; ;) {
    seen[at] = way.length;
    const index = raisedBy[at]!;
    // A lower bound began the way: a bound is an arc from the origin.
    if (index < 0) return node === 0 ? way : null;
    const arc = arcs.arc(index);
    way.push(arc);
    at = arc.from;
    if (seen[at]! >= 0) return way.slice(seen[at]);
  }
}
