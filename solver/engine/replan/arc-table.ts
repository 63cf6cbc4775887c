/** Arcs of an order as columns of numbers, for what goes over all of them many times. */
import { endNode, startNode } from '../explain/taken.ts';
import type { OrderArc } from '../explain/plan-order.ts';

/** The tasks of exclusive resources, first to last. */
type Sequences = ReadonlyMap<string, readonly number[]>;

export class ArcTable {
  private constructor(
    /** How many arcs there are; the columns may be longer. */
    readonly count: number,
    readonly from: Int32Array,
    readonly to: Int32Array,
    readonly least: Int32Array,
    private readonly arcs: readonly OrderArc[],
    /** Resources of the arcs after those, which are told by sequences. */
    private readonly resources: readonly string[],
  ) {}

  static of(arcs: readonly OrderArc[]): ArcTable {
    const count = arcs.length;
    const [from, to, least] = [new Int32Array(count), new Int32Array(count), new Int32Array(count)];
    for (let index = 0; index < count; index++) {
      const arc = arcs[index]!;
      from[index] = arc.from;
      to[index] = arc.to;
      least[index] = arc.least;
    }
    return new ArcTable(count, from, to, least, arcs, []);
  }

  /** With the arcs between one task and the next along sequences after all others. */
  along(sequences: Sequences): ArcTable {
    let more = 0;
    for (const list of sequences.values()) more += Math.max(0, list.length - 1);
    const count = this.count + more;
    const longer = (column: Int32Array): Int32Array => {
      const next = new Int32Array(count);
      next.set(column.length === this.count ? column : column.subarray(0, this.count));
      return next;
    };
    const [from, to, least] = [longer(this.from), longer(this.to), longer(this.least)];
    const resources = [...this.resources];
    let at = this.count;
    for (const [resource, list] of sequences)
      for (let place = 1; place < list.length; place++, at++) {
        from[at] = endNode(list[place - 1]!);
        to[at] = startNode(list[place]!);
        resources.push(resource);
      }
    return new ArcTable(count, from, to, least, this.arcs, resources);
  }

  /** The arc in a row. */
  arc(index: number): OrderArc {
    const known = this.arcs[index];
    if (known !== undefined) return known;
    const why = { kind: 'resource', resource: this.resources[index - this.arcs.length]! } as const;
    return { from: this.from[index]!, to: this.to[index]!, least: 0, why };
  }
}
