/**
 * Precedence sets on an exclusive resource: what is ordered before i takes its minutes one after the other, from the earliest start among
 * them on, before i starts.
 *
 * Example: two tasks of 3 and 4 minutes that start at 0 or later and are before i let i start at minute 7, not 4.
 *
 * Source: Vilím (2004), on precedences. Sets grow from the latest start down, for all tasks at once.
 */
import { AFTER_SET, type Reasons } from './reasons.ts';
import type { SureOrders } from './sure-orders.ts';
import type { TaskWindows } from './task-windows.ts';

export class PrecedenceSets {
  private readonly windows: TaskWindows;
  private readonly orders: SureOrders;
  private readonly reasons: Reasons;
  /** By task: minutes ordered before it so far, the latest minute that a set fills, and the start of that set. */
  private readonly work: Int32Array;
  private readonly filled: Int32Array;
  private readonly first: Int32Array;

  constructor(windows: TaskWindows, orders: SureOrders, reasons: Reasons) {
    this.windows = windows;
    this.orders = orders;
    this.reasons = reasons;
    this.work = new Int32Array(windows.count);
    this.filled = new Int32Array(windows.count);
    this.first = new Int32Array(windows.count);
  }

  /** False on conflict. */
  propagate(): boolean {
    const { windows, first, filled } = this;
    const { trail, direction, byEarliest, on, low, lowShift } = windows;
    this.fill();
    for (let m = 0; m < on; m++) {
      const i = byEarliest[m]!;
      if (filled[i]! - lowShift[direction]![i]! <= trail.bound[low[direction]![i]!]!) continue;
      if (!windows.startFrom(i, filled[i]!, this.reasons.record(AFTER_SET, direction, i, first[i]!, 0))) return false;
    }
    return true;
  }

  private fill(): void {
    const { work, filled, first } = this;
    const { words } = this.orders;
    const { direction, byEarliest, earliest, length } = this.windows;
    const after = this.orders.after[direction]!;
    work.fill(0);
    filled.fill(-0x3fffffff);
    for (let j = this.windows.on - 1; j >= 0; j--) {
      const k = byEarliest[j]!;
      const e = earliest[k]!;
      const p = length[k]!;
      for (let w = 0; w < words; w++) {
        for (let rest = after[k * words + w]!; rest !== 0; rest &= rest - 1) {
          const i = (w << 5) + 31 - Math.clz32(rest & -rest);
          const sum = work[i]! + p;
          work[i] = sum;
          if (e + sum <= filled[i]!) continue;
          filled[i] = e + sum;
          first[i] = e;
        }
      }
    }
  }
}
