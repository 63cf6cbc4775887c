/** Which nodes come no later than which, whatever the times, by arcs of least 0 or more. */
import type { OrderArc } from './plan-order.ts';

/** The closure of precedence, as one row of bits a node, which grows with the arcs told. */
export class Precedence {
  private readonly words: number;
  /** By node: those before it, and itself. */
  private readonly rows: Int32Array;
  private readonly forward: OrderArc[] = [];

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
    const { nodes } = this;
    /** By node: its row has grown since what follows it was told. */
    const open = new Uint8Array(nodes);
    for (const arc of arcs) {
      if (arc.least < 0 || this.precedes(arc.from, arc.to)) continue;
      this.forward.push(arc);
      open[arc.from] = 1;
    }
    const { first, to } = this.byFrom();
    const order = byTime(times, nodes);
    for (let again = true; again;) {
      again = false;
      for (let at = 0; at < nodes; at++) {
        const from = order[at]!;
        if (open[from] === 0) continue;
        open[from] = 0;
        for (let index = first[from]!; index < first[from + 1]!; index++) {
          const after = to[index]!;
          if (!this.tell(from, after)) continue;
          open[after] = 1;
          // It may stand earlier in the order, at the same minute.
          again = true;
        }
      }
    }
  }

  /** The arcs as columns: those from a node are at `first[node]` up to `first[node + 1]`. */
  private byFrom(): { readonly first: Int32Array; readonly to: Int32Array } {
    const first = new Int32Array(this.nodes + 1);
    for (const { from } of this.forward) first[from + 1]!++;
    for (let node = 0; node < this.nodes; node++) first[node + 1]! += first[node]!;
    const next = first.slice();
    const to = new Int32Array(this.forward.length);
    for (const arc of this.forward) to[next[arc.from]!++] = arc.to;
    return { first, to };
  }

  /** All that is before one node is before the other. @returns whether that was news */
  private tell(from: number, to: number): boolean {
    const { rows, words } = this;
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
    return changed;
  }

  /** True where a path of arcs leads from the first node to the second, another one. */
  readonly precedes = (before: number, after: number): boolean =>
    ((this.rows[after * this.words + (before >>> 5)]! >>> (before & 31)) & 1) === 1;
}

/** Nodes by their times, those of the same minute by number; absent ones, whose time is −1, among the first. */
function byTime(times: Int32Array, nodes: number): Int32Array {
  let latest = 0;
  for (let node = 0; node < nodes; node++) latest = Math.max(latest, times[node]!);
  const place = new Int32Array(latest + 3);
  for (let node = 0; node < nodes; node++) place[times[node]! + 2]!++;
  for (let at = 1; at < place.length; at++) place[at]! += place[at - 1]!;
  const order = new Int32Array(nodes);
  for (let node = 0; node < nodes; node++) order[place[times[node]! + 1]!++] = node;
  return order;
}
