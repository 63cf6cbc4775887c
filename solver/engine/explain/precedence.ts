/** Which nodes come no later than which, whatever the times, by arcs of least 0 or more. */
import type { OrderArc } from './plan-order.ts';

/**
 * The closure of precedence, as one row of bits a node.
 *
 * @param nodes how many nodes there are
 * @param arcs in any order; only those of least ≥ 0 count
 * @param times of the solution, minutes a node; they only say in which order to work, so that few passes are needed
 * @returns true where a path of arcs leads from the first node to the second
 */
export function precedenceOf(
  nodes: number,
  arcs: readonly OrderArc[],
  times: Int32Array,
): (before: number, after: number) => boolean {
  const words = (nodes + 31) >>> 5;
  const earlier = new Int32Array(nodes * words);
  const forward = arcs
    .filter((arc) => arc.least >= 0)
    .sort((a, b) => times[a.from]! - times[b.from]! || times[a.to]! - times[b.to]!);
  for (let changed = true; changed;) {
    changed = false;
    for (const { from, to } of forward) {
      const source = from * words;
      const target = to * words;
      for (let word = 0; word < words; word++) {
        const own = word === from >>> 5 ? 1 << (from & 31) : 0;
        const before = earlier[target + word]!;
        const after = before | earlier[source + word]! | own;
        if (after === before) continue;
        earlier[target + word] = after;
        changed = true;
      }
    }
  }
  return (before, after) => ((earlier[after * words + (before >>> 5)]! >>> (before & 31)) & 1) === 1;
}
