/** Which nodes come no later than which, whatever the times, by arcs of least 0 or more. */
import type { OrderArc } from './plan-order.ts';
import { sortedByTimes } from './sort-arcs.ts';

/** The closure of precedence, as one row of bits a node, which grows with the arcs told. */
export class Precedence {
  private readonly words: number;
  /** By node: those before it, and itself. */
  private readonly rows: Int32Array;
  private forward: readonly OrderArc[] = [];

  /** @param nodes how many nodes there are */
  constructor(private readonly nodes: number) {
    this.words = (nodes + 31) >>> 5;
    this.rows = new Int32Array(nodes * this.words);
    for (let node = 0; node < nodes; node++) this.rows[node * this.words + (node >>> 5)] = 1 << (node & 31);
  }

  /**
   * Takes further arcs; only those of least ≥ 0 count.
   *
   * @param times of the solution, minutes a node; they only say in which order to work, so that few passes are needed
   */
  add(arcs: readonly OrderArc[], times: Int32Array): void {
    const { rows, words } = this;
    const forward = sortedByTimes([...this.forward, ...arcs.filter((arc) => arc.least >= 0)], times);
    this.forward = forward;
    /** By node: arcs from it up to this position are done in this pass. */
    const done = new Int32Array(this.nodes);
    for (let pass = 1, again = true; again; pass++) {
      again = false;
      for (const { from, to } of forward) {
        done[from] = pass;
        const source = from * words;
        const target = to * words;
        let changed = false;
        for (let word = 0; word < words; word++) {
          const before = rows[target + word]!;
          const after = before | rows[source + word]!;
          if (after === before) continue;
          rows[target + word] = after;
          changed = true;
        }
        if (changed && done[to] === pass) again = true;
      }
    }
  }

  /** True where a path of arcs leads from the first node to the second, another one. */
  readonly precedes = (before: number, after: number): boolean =>
    ((this.rows[after * this.words + (before >>> 5)]! >>> (before & 31)) & 1) === 1;
}
