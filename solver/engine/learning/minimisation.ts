/**
 * Makes a learned clause shorter: a literal is left out where it follows from the others, through reasons that lead back to them.
 *
 * A literal may be covered only by one of the same trail entry, otherwise the argument could be circular. Reasons that leave the levels of
 * the clause lead nowhere and are given up at once.
 *
 * Source: Sörensson & Biere (2009), Minimizing learned clauses.
 */
import { DECIDED, NONE } from './trail.ts';
import { widened } from './widened.ts';
import type { Reasons } from './reasons.ts';
import type { Trail } from './trail.ts';

/** Depth at which minimisation gives up on a literal. */
const DEEPEST = 200;

export class Minimisation {
  private readonly trail: Trail;
  private readonly reasons: Reasons;
  /** By slot: the value that the clause needs, `NONE` for none; the caller's own array. */
  private needed: Int32Array = new Int32Array(0);
  /** By level: the last clause that had a literal on it. */
  private levelStamp = new Int32Array(0);
  /** Open literals by three words: entry, slot, value. */
  private stack = new Int32Array(1 << 10);
  private stackUsed = 0;
  /** By trail entry: the value found redundant (≤ it holds too), or found not to be (≥ it fails too), in the clause `stamp`. */
  private memoStamp = new Int32Array(0);
  private memoYes = new Int32Array(0);
  private memoNo = new Int32Array(0);
  private stamp = 0;

  constructor(trail: Trail, reasons: Reasons) {
    this.trail = trail;
    this.reasons = reasons;
  }

  /** @param needed by slot: the value that the clause needs, or `NONE` */
  seal(needed: Int32Array): void {
    this.needed = needed;
    const entries = this.trail.entrySlot.length;
    this.memoStamp = new Int32Array(entries);
    this.memoYes = new Int32Array(entries);
    this.memoNo = new Int32Array(entries);
  }

  /** Begins a clause; then every level that it has a literal on is to be marked. */
  begin(): void {
    this.stamp++;
    if (this.levelStamp.length <= this.trail.level) this.levelStamp = new Int32Array(this.trail.level * 2 + 16);
  }

  markLevel(level: number): void {
    this.levelStamp[level] = this.stamp;
  }

  /** Whether the literal (slot, value), made true at `entry`, follows from the clause's other literals. */
  isRedundant(entry: number, slot: number, value: number): boolean {
    return this.trail.entryReason[entry] !== DECIDED && this.follows(entry, slot, value, 0);
  }

  private follows(entry: number, slot: number, value: number, depth: number): boolean {
    const trail = this.trail;
    if (depth > DEEPEST) return false;
    if (this.memoStamp[entry] === this.stamp) {
      if (value <= this.memoYes[entry]!) return true;
      if (value >= this.memoNo[entry]!) return false;
    } else {
      this.memoStamp[entry] = this.stamp;
      this.memoYes[entry] = NONE;
      this.memoNo[entry] = 0x7fffffff;
    }
    this.reasons.explain(trail.entryReason[entry]!, entry, slot, value, -1);
    const from = this.stackUsed;
    let all = this.pushOpen();
    const end = this.stackUsed;
    for (let k = from; k < end && all; k += 3)
      all = this.follows(this.stack[k]!, this.stack[k + 1]!, this.stack[k + 2]!, depth + 1);
    this.stackUsed = from;
    if (all) {
      if (value > this.memoYes[entry]!) this.memoYes[entry] = value;
    } else if (value < this.memoNo[entry]!) this.memoNo[entry] = value;
    return all;
  }

  /**
   * Puts what `reason` names on the stack, by entry, slot and value, but for what the clause holds already.
   * @returns false where one of it can be told at once not to follow from the clause
   */
  private pushOpen(): boolean {
    const { trail, needed } = this;
    const { reason } = this.reasons;
    const most = this.stackUsed + 3 * reason.size;
    if (most > this.stack.length) this.stack = widened(this.stack, most * 2);
    const { stack } = this;
    for (let k = 0; k < reason.size; k++) {
      const slot = reason.slots[k]!;
      const value = reason.values[k]!;
      if (value <= trail.root[slot]!) continue;
      const entry = trail.entryOf(slot, value);
      const kept = needed[slot]!;
      if (kept >= value && trail.entryOld[entry]! < kept && kept <= trail.entryNew[entry]!) continue;
      if (trail.entryReason[entry] === DECIDED || this.levelStamp[trail.entryLevel[entry]!] !== this.stamp)
        return false;
      stack[this.stackUsed++] = entry;
      stack[this.stackUsed++] = slot;
      stack[this.stackUsed++] = value;
    }
    return true;
  }
}
