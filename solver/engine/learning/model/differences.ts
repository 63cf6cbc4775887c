/** Adds gaps between places to the core, and answers which orders hold without any decision. */
import type { Core } from '../core.ts';
import type { Place } from './points.ts';

/** Beyond this many variables the table of longest paths is not made. */
const MOST_IN_TABLE = 400;

export class Differences {
  private readonly core: Core;
  private readonly clamp: number;
  private readonly sure: { readonly from: number; readonly to: number; readonly weight: number }[] = [];
  private number = new Map<number, number>();
  private table: Float64Array | null = null;
  private size = 0;

  /** @param horizon gaps beyond it, either way, mean no more than it does */
  constructor(core: Core, horizon: number) {
    this.core = core;
    this.clamp = horizon + 1;
  }

  /** While the guard is true: to ≥ from + least. */
  add(from: Place, to: Place, least: number, guard: number): void {
    const { trail } = this.core;
    if (guard === trail.alwaysFalse || least < -this.clamp) return;
    const gap = Math.min(least, this.clamp);
    const weight = gap - to.offset + from.offset;
    if (from.x === to.x) {
      if (weight > 0) this.core.clause(guard ^ trail.negation);
      return;
    }
    this.core.arcs.add(2 * from.x, 2 * to.x, weight, guard);
    if (guard === trail.alwaysTrue) this.sure.push({ from: from.x, to: to.x, weight });
  }

  /** Ends the sure gaps: makes the table of longest paths between all variables in them. */
  close(): void {
    const nodes = new Set<number>([0]);
    for (const gap of this.sure) nodes.add(gap.from).add(gap.to);
    const n = nodes.size;
    if (n > MOST_IN_TABLE) return;
    this.number = new Map([...nodes].map((x, i) => [x, i]));
    this.size = n;
    const table = new Float64Array(n * n).fill(-Infinity);
    for (let i = 0; i < n; i++) table[i * n + i] = 0;
    for (const gap of this.sure) {
      const at = this.number.get(gap.from)! * n + this.number.get(gap.to)!;
      table[at] = Math.max(table[at]!, gap.weight);
    }
    for (let k = 0; k < n; k++)
      for (let i = 0; i < n; i++) {
        const ik = table[i * n + k]!;
        if (ik === -Infinity) continue;
        for (let j = 0; j < n; j++) {
          const through = ik + table[k * n + j]!;
          if (through > table[i * n + j]!) table[i * n + j] = through;
        }
      }
    this.table = table;
  }

  /** The longest sure gap from one place to another; −∞ where none is known. */
  longest(from: Place, to: Place): number {
    const shift = to.offset - from.offset;
    if (from.x === to.x) return shift;
    const { trail } = this.core;
    let gap = trail.declaredLower(to.x) - trail.declaredUpper(from.x);
    const i = this.number.get(from.x);
    const j = this.number.get(to.x);
    if (this.table !== null && i !== undefined && j !== undefined) gap = Math.max(gap, this.table[i * this.size + j]!);
    return gap + shift;
  }

  /** Whether to ≥ from + least in every solution, as far as the sure gaps and the declared bounds tell. */
  holds(from: Place, to: Place, least: number): boolean {
    return this.longest(from, to) >= least;
  }
}
