/** Arcs in the order of a plan's times, by counting: they are sorted again and again, and times and nodes are small numbers. */
import type { OrderArc } from './plan-order.ts';

/**
 * @param times minutes a node, ≥ 0 for every node of an arc
 * @returns the arcs by the times of `from`, then of `to`, then by the nodes themselves; those alike in all keep their order
 */
export function sortedByTimes(arcs: readonly OrderArc[], times: Int32Array): OrderArc[] {
  const count = arcs.length;
  const nodes = times.length;
  let latest = 0;
  for (let node = 0; node < nodes; node++) latest = Math.max(latest, times[node]!);
  const [from, to] = [new Int32Array(count), new Int32Array(count)];
  const [fromAt, toAt] = [new Int32Array(count), new Int32Array(count)];
  let order = new Int32Array(count);
  for (let index = 0; index < count; index++) {
    const arc = arcs[index]!;
    from[index] = arc.from;
    to[index] = arc.to;
    fromAt[index] = times[arc.from]!;
    toAt[index] = times[arc.to]!;
    order[index] = index;
  }
  let next = new Int32Array(count);
  const by = (range: number, keys: Int32Array): void => {
    const place = new Int32Array(range + 1);
    for (let index = 0; index < count; index++) place[keys[index]! + 1]!++;
    for (let at = 1; at <= range; at++) place[at]! += place[at - 1]!;
    for (let at = 0; at < count; at++) {
      const index = order[at]!;
      next[place[keys[index]!]!++] = index;
    }
    [order, next] = [next, order];
  };
  by(nodes, to);
  by(nodes, from);
  by(latest + 1, toAt);
  by(latest + 1, fromAt);
  return Array.from(order, (index) => arcs[index]!);
}
