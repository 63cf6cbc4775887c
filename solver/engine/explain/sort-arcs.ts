/** Arcs in the order of a plan's times, by counting: they are sorted again and again, and times and nodes are small numbers. */
import type { OrderArc } from './plan-order.ts';

/**
 * @param times minutes a node, ≥ 0 for every node of an arc
 * @returns the arcs by the times of `from`, then of `to`, then by the nodes themselves; those alike in all keep their order
 */
export function sortedByTimes(arcs: readonly OrderArc[], times: Int32Array): OrderArc[] {
  const latest = times.reduce((most, time) => Math.max(most, time), 0);
  const nodes = times.length;
  let order = Int32Array.from({ length: arcs.length }, (_, index) => index);
  const by = (range: number, key: (arc: OrderArc) => number): void => {
    const place = new Int32Array(range + 1);
    for (const arc of arcs) place[key(arc) + 1]!++;
    for (let at = 1; at <= range; at++) place[at]! += place[at - 1]!;
    const next = new Int32Array(order.length);
    for (const index of order) next[place[key(arcs[index]!)]!++] = index;
    order = next;
  };
  by(nodes, ({ to }) => to);
  by(nodes, ({ from }) => from);
  by(latest + 1, ({ to }) => times[to]!);
  by(latest + 1, ({ from }) => times[from]!);
  return Array.from(order, (index) => arcs[index]!);
}
