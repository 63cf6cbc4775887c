/**
 * Overload and edge finding on an exclusive resource.
 *
 * **Overload**: tasks that must all lie within a window need no more minutes than it has. **Edge finding**: where Ω fits the window
 * [a, b) but Ω ∪ {i} with i before any of Ω does not, i comes after all of Ω; said as order literals.
 *
 * Example: work of 3, 4 and 5 minutes that may start at 0 and must end by 10 fits in no order, 12 > 10. With 3 and 4 minutes that must
 * end by 10 and one of 5 that may start at 0 and end at 20, the last comes after both.
 *
 * A Θ-tree in which windows grow by their latest end tells which ends need a closer look. Sources: Carlier & Pinson (1989); Vilím (2004).
 */
import { EDGE, OVERLOAD, type Reasons } from './reasons.ts';
import { ThetaTree } from './theta-tree.ts';
import type { SureOrders } from './sure-orders.ts';
import type { TaskWindows } from './task-windows.ts';

export class EdgeFinding {
  private readonly windows: TaskWindows;
  private readonly orders: SureOrders;
  private readonly reasons: Reasons;
  private readonly tree: ThetaTree;
  /** By place in the order by latest end: the longest task from there on. */
  private readonly longest: Int32Array;
  /** By place in the order by earliest start: work from there on that must end by b. */
  private readonly suffix: Int32Array;
  /** Rows of bits: tasks that must end by b; by place, tasks from there on. */
  private readonly within: Int32Array;
  private readonly fromPlace: Int32Array;

  constructor(windows: TaskWindows, orders: SureOrders, reasons: Reasons) {
    this.windows = windows;
    this.orders = orders;
    this.reasons = reasons;
    const n = windows.count;
    this.tree = new ThetaTree(n);
    this.longest = new Int32Array(n + 1);
    this.suffix = new Int32Array(n + 1);
    this.within = new Int32Array(orders.words);
    this.fromPlace = new Int32Array((n + 1) * orders.words);
  }

  /** Both rules over the windows of the group at places [from, until) of both orders; false on conflict. */
  propagate(from: number, until: number): boolean {
    const { tree, longest, within } = this;
    const { byLatest, placeByEarliest, earliest, latest, length } = this.windows;
    longest[until] = 0;
    for (let u = until - 1; u >= from; u--) {
      const p = length[byLatest[u]!]!;
      longest[u] = p > longest[u + 1]! ? p : longest[u + 1]!;
    }
    tree.clear(until - from);
    within.fill(0);
    let prepared = false;
    for (let u = from; u < until; u++) {
      const k = byLatest[u]!;
      const b = latest[k]!;
      tree.insert(placeByEarliest[k]! - from, earliest[k]!, length[k]!);
      within[k >> 5]! |= 1 << (k & 31);
      if (u + 1 < until && latest[byLatest[u + 1]!] === b) continue;
      const ect = tree.ect;
      if (ect > b) return this.overload(from, until, b);
      // When the longest task left outside still fits every window, edge finding has nothing to say.
      if (u + 1 === until || ect + longest[u + 1]! <= b) continue;
      if (!prepared) this.collect(from, until);
      prepared = true;
      if (!this.edgesBy(from, until, b)) return false;
    }
    return true;
  }

  /** Fails with the window that begins last among those that end at b and have too much work. */
  private overload(from: number, until: number, b: number): boolean {
    const { byEarliest, earliest, latest, length, direction, trail } = this.windows;
    let work = 0;
    for (let j = until - 1; j >= from; j--) {
      const k = byEarliest[j]!;
      if (latest[k]! > b) continue;
      work += length[k]!;
      if (earliest[k]! + work > b) return trail.fail(this.reasons.record(OVERLOAD, direction, 0, earliest[k]!, b));
    }
    return true;
  }

  /** Fills `fromPlace` for a group. */
  private collect(from: number, until: number): void {
    const { fromPlace } = this;
    const { words } = this.orders;
    const { byEarliest } = this.windows;
    fromPlace.fill(0, until * words, (until + 1) * words);
    for (let j = until - 1; j >= from; j--) {
      const at = j * words;
      for (let w = 0; w < words; w++) fromPlace[at + w] = fromPlace[at + words + w]!;
      const k = byEarliest[j]!;
      fromPlace[at + (k >> 5)]! |= 1 << (k & 31);
    }
  }

  /** Edge finding for windows that end at b. */
  private edgesBy(from: number, until: number, b: number): boolean {
    const { suffix } = this;
    const { byEarliest, earliest, latest, length } = this.windows;
    suffix[until] = 0;
    for (let j = until - 1; j >= from; j--) {
      const k = byEarliest[j]!;
      suffix[j] = suffix[j + 1]! + (latest[k]! > b ? 0 : length[k]!);
    }
    // Among windows that begin no later than i may start, the one where most work is left over.
    let best = -0x3fffffff;
    let bestFrom = from;
    let reach = from;
    for (let j = from; j < until; j++) {
      const i = byEarliest[j]!;
      const e = earliest[i]!;
      // Windows beginning at the same earliest start belong to all tasks that have it.
      while (reach < until && earliest[byEarliest[reach]!]! <= e) {
        const filled = earliest[byEarliest[reach]!]! + suffix[reach]!;
        if (suffix[reach]! > 0 && filled > best) {
          best = filled;
          bestFrom = reach;
        }
        reach++;
      }
      if (latest[i]! <= b) continue;
      const p = length[i]!;
      if (best + p > b) {
        if (!this.placeAfter(i, bestFrom, until, b)) return false;
      } else if (reach < until && e + suffix[reach]! + p > b && suffix[reach]! > 0) {
        if (!this.placeAfter(i, reach, until, b)) return false;
      }
    }
    return true;
  }

  /** i comes after every task that must end by b and starts no earlier than the one at place `from`. */
  private placeAfter(i: number, from: number, until: number, b: number): boolean {
    const { within, fromPlace, orders } = this;
    const { words } = orders;
    const { trail, direction, byEarliest, earliest } = this.windows;
    const known = orders.after[1 - direction]!;
    let open = 0;
    for (let w = 0; w < words; w++) open |= within[w]! & fromPlace[from * words + w]! & ~known[i * words + w]!;
    if (open === 0) return true;
    let reason = 0;
    for (let c = from; c < until; c++) {
      const j = byEarliest[c]!;
      if (((within[j >> 5]! >>> (j & 31)) & 1) === 0) continue;
      const off = orders.literal(direction, i, j) ^ trail.negation;
      if (trail.isTrue(off)) continue;
      if (reason === 0) reason = this.reasons.record(EDGE, direction, i, earliest[byEarliest[from]!]!, b);
      if (!trail.setLiteral(off, reason)) return false;
      orders.takeIn(direction, j, i);
    }
    return true;
  }
}
