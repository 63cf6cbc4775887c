/**
 * Reasons for what the rules of an exclusive resource say: a record of a few words now, an explanation when it is asked for.
 *
 * A set Ω is explained by start ≥ m and end ≤ b for its members, with m as low as the work in Ω allows.
 *
 * Source: Vilím (2005), Computing explanations for the unary resource constraint.
 */
import type { Explanation } from '../../explanation.ts';
import type { SureOrders } from './sure-orders.ts';
import type { TaskWindows } from './task-windows.ts';

export const OVERLOAD = 0;
export const EDGE = 1;
export const AFTER_SET = 2;
export const NOT_FIRST = 3;

export class Reasons {
  private readonly owner: { readonly id: number };
  private readonly windows: TaskWindows;
  private readonly orders: SureOrders;
  private readonly members: Int32Array;

  /** @param owner the propagator in whose name reasons are given */
  constructor(owner: { readonly id: number }, windows: TaskWindows, orders: SureOrders) {
    this.owner = owner;
    this.windows = windows;
    this.orders = orders;
    this.members = new Int32Array(windows.count);
  }

  /** Writes a reason of a rule about task i: a set that starts at a or later, ends by b, as far as the rule has them. */
  record(rule: number, direction: number, i: number, a: number, b: number): number {
    return this.windows.trail.record(this.owner.id, rule | (direction << 2) | (i << 3), a, b);
  }

  /** As `Propagator.explain`. */
  explain(into: Explanation, position: number, value: number, record: number): void {
    const { trail, lowShift } = this.windows;
    const word = trail.records[record + 1]!;
    const a = trail.records[record + 2]!;
    const b = trail.records[record + 3]!;
    const direction = (word >> 2) & 1;
    const i = word >> 3;
    switch (word & 3) {
      case OVERLOAD:
        this.explainWindow(into, position, direction, -1, a, b);
        return;
      case EDGE:
        this.explainWindow(into, position, direction, i, a, b);
        return;
      case NOT_FIRST:
        this.explainNotFirst(into, position, direction, i, value + lowShift[direction]![i]!, b);
        return;
      default:
        this.explainSet(into, position, direction, i, a, value + lowShift[direction]![i]!);
    }
  }

  /** The tasks of [a, b), with i when there is one, have too much work for [m, b) with m the highest such minute. */
  private explainWindow(into: Explanation, position: number, direction: number, i: number, a: number, b: number): void {
    const { windows, members } = this;
    const { trail } = windows;
    let count = 0;
    let work = 0;
    for (let k = 0; k < windows.count; k++) {
      if (k === i || !trail.wasTrue(windows.literal[k]!, position)) continue;
      if (windows.earliestBefore(direction, k, position) < a || windows.latestBefore(direction, k, position) > b)
        continue;
      members[count++] = k;
      work += windows.length[k]!;
    }
    if (i >= 0) work += windows.length[i]!;
    const m = b - work + 1;
    for (let c = 0; c < count; c++) {
      this.addEarliest(into, direction, members[c]!, m);
      this.addUse(into, members[c]!);
      into.add(windows.high[direction]![members[c]!]!, -b - windows.highShift[direction]![members[c]!]!);
    }
    if (i >= 0) {
      this.addEarliest(into, direction, i, m);
      this.addUse(into, i);
    }
  }

  /** Tasks that cannot end before the goal but must end by b are too many to come after i: so one is before it, and i not before the goal. */
  private explainNotFirst(
    into: Explanation,
    position: number,
    direction: number,
    i: number,
    goal: number,
    b: number,
  ): void {
    const { windows } = this;
    const { trail } = windows;
    const room = b - windows.earliestBefore(direction, i, position) - windows.length[i]!;
    let work = 0;
    // One is needed even where i alone does not end by b.
    for (let k = 0; k < windows.count && (work === 0 || work <= room); k++) {
      if (k === i || !trail.wasTrue(windows.literal[k]!, position) || windows.latestBefore(direction, k, position) > b)
        continue;
      if (windows.earliestBefore(direction, k, position) + windows.length[k]! < goal) continue;
      work += windows.length[k]!;
      this.addEarliest(into, direction, k, goal - windows.length[k]!);
      this.addUse(into, k);
      into.add(windows.high[direction]![k]!, -b - windows.highShift[direction]![k]!);
    }
    this.addEarliest(into, direction, i, b - work - windows.length[i]! + 1);
    this.addUse(into, i);
  }

  /** Tasks ordered before i, none starting before the set's first start, fill the minutes up to the goal. */
  private explainSet(into: Explanation, position: number, direction: number, i: number, a: number, goal: number): void {
    const { windows, orders, members } = this;
    const { trail, count } = windows;
    let found = 0;
    let work = 0;
    for (let k = 0; k < count; k++) {
      if (k === i || !trail.wasTrue(windows.literal[k]!, position)) continue;
      const first = orders.literal(direction, k, i);
      if (!trail.wasTrue(first, position) || windows.earliestBefore(direction, k, position) < a) continue;
      members[found++] = k;
      work += windows.length[k]!;
    }
    // One is needed even where the first start alone reaches the goal.
    for (let c = found - 1; c >= 0 && found > 1; c--) {
      const k = members[c]!;
      if (a + work - windows.length[k]! < goal) continue;
      work -= windows.length[k]!;
      members[c] = members[--found]!;
    }
    for (let c = 0; c < found; c++) {
      const k = members[c]!;
      const first = orders.literal(direction, k, i);
      if (first !== trail.alwaysTrue) into.add(trail.slotOf(first), trail.valueOf(first));
      this.addUse(into, k);
      this.addEarliest(into, direction, k, goal - work);
    }
  }

  private addEarliest(into: Explanation, direction: number, k: number, minute: number): void {
    const { windows } = this;
    into.add(windows.low[direction]![k]!, minute - windows.lowShift[direction]![k]!);
  }

  private addUse(into: Explanation, k: number): void {
    const { trail, literal: on } = this.windows;
    const literal = on[k]!;
    if (literal !== trail.alwaysTrue) into.add(trail.slotOf(literal), trail.valueOf(literal));
  }
}
