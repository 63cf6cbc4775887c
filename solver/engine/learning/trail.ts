/**
 * Integer variables as pairs of bounds, their bound literals, and the trail of changes that can be undone and explained.
 *
 * Variable x has two **slots**: slot 2x holds its lower bound, slot 2x+1 the negative of its upper bound. Both only rise along a
 * branch, so each rule is written once and run on a variable and on its mirror image. The literal (slot, value) is true when the
 * slot's bound is at least the value: (2x, v) is ⟦x ≥ v⟧ and (2x+1, −v) is ⟦x ≤ v⟧. It is packed into one 32-bit integer,
 * the slot above the value, so that negation is one exclusive-or: the negation of (s, v) is (s ^ 1, 1 − v).
 *
 * Source of the bounds-only encoding: Ohrimenko, Stuckey, Codish (2009), Propagation via lazy clause generation.
 */

import { widened } from './widened.ts';

/** "Not needed" in arrays of values by slot; below every value. */
export const NONE = -0x7fffffff;

/** A decision; every other reason is `(reference << 2) | kind`. */
export const DECIDED = 0;
export const BY_CLAUSE = 0;
export const BY_ARC = 1;
export const BY_ARC_GUARD = 2;
export const BY_RECORD = 3;

export class Trail {
  readonly valueBits: number;
  readonly mask: number;
  readonly offset: number;
  /** Exclusive-or with this negates a literal. */
  readonly negation: number;
  readonly alwaysTrue: number;
  readonly alwaysFalse: number;

  /** Number of variables; slots are twice as many. */
  variables = 0;
  private building: number[] = [];

  /** Bound of each slot now; where no decision stands; and as first declared. */
  bound = new Int32Array(0);
  /** By slot: its strongest true literal. */
  reached = new Int32Array(0);
  root = new Int32Array(0);
  initial = new Int32Array(0);
  /** Dense number of the literal (slot, initial + 1); one number a value above. */
  literalBase = new Int32Array(0);
  literals = 0;

  /** Entries in order of time. `previous` chains the changes of one slot. */
  entries = 0;
  entrySlot = new Int32Array(0);
  entryOld = new Int32Array(0);
  entryNew = new Int32Array(0);
  entryReason = new Int32Array(0);
  entryPrevious = new Int32Array(0);
  entryLevel = new Int32Array(0);
  /** The newest entry of each slot, or −1. */
  last = new Int32Array(0);

  level = 0;
  /** Entries and record words that stood when each level began. */
  levelEntries = new Int32Array(0);
  private levelRecords = new Int32Array(0);

  /** Words of reasons that propagators wrote, cut back with the trail. */
  records = new Int32Array(1 << 12);
  recordsUsed = 0;

  /** What failed: a reason, and the bound that would have emptied the domain of `conflictSlot` (−1: the reason alone fails). */
  conflictReason = 0;
  conflictSlot = -1;
  conflictValue = 0;

  /** @param largest no bound of any variable exceeds this in absolute value */
  constructor(largest: number) {
    let bits = 3;
    while (2 ** (bits - 1) - 1 < largest + 2) bits++;
    this.valueBits = bits;
    // Powers are doubles to the compiler unless told otherwise, and then so is every test of a literal.
    this.mask = (2 ** bits - 1) | 0;
    this.offset = (2 ** (bits - 1) - 1) | 0;
    this.negation = (2 ** (bits + 1) - 1) | 0;
    this.building.push(1, -1);
    this.variables = 1;
    this.alwaysTrue = this.literal(0, 1);
    this.alwaysFalse = this.alwaysTrue ^ this.negation;
  }

  /** Declares a variable with lo ≤ x ≤ hi; returns its number. */
  variable(lo: number, hi: number): number {
    this.building.push(lo, -hi);
    return this.variables++;
  }

  /** Lower bound of x while the problem is being built. */
  declaredLower(x: number): number {
    return this.building[2 * x]!;
  }
  /** Upper bound of x while the problem is being built. */
  declaredUpper(x: number): number {
    return -this.building[2 * x + 1]!;
  }
  /** Narrows a declared slot while the problem is being built; false when the domain would be empty. */
  declare(slot: number, value: number): boolean {
    if (value > this.building[slot]!) {
      if (value + this.building[slot ^ 1]! > 0) return false;
      this.building[slot] = value;
    }
    return true;
  }

  /** True while every literal still fits 32 bits. */
  fits(): boolean {
    return 2 * this.variables < 2 ** (32 - this.valueBits);
  }

  literal(slot: number, value: number): number {
    return (slot << this.valueBits) | (value + this.offset);
  }
  /** ⟦x ≥ v⟧ */
  atLeast(x: number, v: number): number {
    if (v <= this.declaredLower(x)) return this.alwaysTrue;
    if (v > this.declaredUpper(x)) return this.alwaysFalse;
    return this.literal(2 * x, v);
  }
  /** ⟦x ≤ v⟧ */
  atMost(x: number, v: number): number {
    return this.atLeast(x, v + 1) ^ this.negation;
  }
  slotOf(literal: number): number {
    return literal >>> this.valueBits;
  }
  valueOf(literal: number): number {
    return (literal & this.mask) - this.offset;
  }
  isTrue(literal: number): boolean {
    return this.reached[literal >>> this.valueBits]! >= literal;
  }
  isFalse(literal: number): boolean {
    return this.isTrue(literal ^ this.negation);
  }

  /** Ends building, or building on: at level 0 with an empty trail, variables declared since the last time join, and facts stay. */
  seal(): void {
    const slots = 2 * this.variables;
    const facts = this.root;
    this.initial = Int32Array.from(this.building);
    this.root = Int32Array.from(this.building);
    this.root.set(facts);
    this.bound = this.root.slice();
    this.reached = this.bound.map((value, slot) => this.literal(slot, value));
    this.last = new Int32Array(slots).fill(-1);
    this.literalBase = new Int32Array(slots + 1);
    let base = 0;
    for (let s = 0; s < slots; s++) {
      this.literalBase[s] = base;
      base += -this.building[s ^ 1]! - this.building[s]!;
    }
    this.literalBase[slots] = base;
    this.literals = base;
    // Each entry raises a bound by at least 1 and the two bounds of a variable meet, so this is never outgrown.
    const most = (base >> 1) + this.variables + 2;
    this.entrySlot = new Int32Array(most);
    this.entryOld = new Int32Array(most);
    this.entryNew = new Int32Array(most);
    this.entryReason = new Int32Array(most);
    this.entryPrevious = new Int32Array(most);
    this.entryLevel = new Int32Array(most);
  }

  /** Room for decision levels beyond one an entry (assumptions already true open a level without an entry). */
  reserveLevels(assumptions: number): void {
    const most = this.entrySlot.length + assumptions + 2;
    if (this.levelEntries.length >= most) return;
    this.levelEntries = new Int32Array(most);
    this.levelRecords = new Int32Array(most);
  }

  /**
   * Raises a slot's bound.
   * @param value above the bound now
   * @returns false when the domain would be empty; the conflict fields then say why and nothing has changed
   */
  set(slot: number, value: number, reason: number): boolean {
    const bound = this.bound;
    if (value + bound[slot ^ 1]! > 0) {
      this.conflictSlot = slot;
      this.conflictValue = value;
      this.conflictReason = reason;
      return false;
    }
    const i = this.entries++;
    this.entrySlot[i] = slot;
    this.entryOld[i] = bound[slot]!;
    this.entryNew[i] = value;
    this.entryReason[i] = reason;
    this.entryPrevious[i] = this.last[slot]!;
    this.entryLevel[i] = this.level;
    this.last[slot] = i;
    bound[slot] = value;
    this.reached[slot] = (slot << this.valueBits) | (value + this.offset);
    return true;
  }

  /** Makes a literal true; does nothing when it is already. */
  setLiteral(literal: number, reason: number): boolean {
    const slot = literal >>> this.valueBits;
    return this.reached[slot]! >= literal || this.set(slot, (literal & this.mask) - this.offset, reason);
  }

  /** Records that a reason alone cannot hold. */
  fail(reason: number): false {
    this.conflictSlot = -1;
    this.conflictReason = reason;
    return false;
  }

  /** Writes a propagator's reason of up to four words; returns the reason for `set`. Undone with the trail. */
  record(propagator: number, a: number, b: number, c: number): number {
    if (this.recordsUsed + 4 > this.records.length) {
      this.records = widened(this.records, this.records.length * 2);
    }
    const at = this.recordsUsed;
    this.records[at] = propagator;
    this.records[at + 1] = a;
    this.records[at + 2] = b;
    this.records[at + 3] = c;
    this.recordsUsed = at + 4;
    return (at << 2) | BY_RECORD;
  }

  newLevel(): void {
    this.level++;
    this.levelEntries[this.level] = this.entries;
    this.levelRecords[this.level] = this.recordsUsed;
  }

  /** Undoes every change made above a level. */
  backtrack(level: number): void {
    if (this.level <= level) return;
    const keep = this.levelEntries[level + 1]!;
    const { bound, reached, last, entrySlot, entryOld, entryPrevious, valueBits, offset } = this;
    for (let i = this.entries - 1; i >= keep; i--) {
      const slot = entrySlot[i]!;
      const old = entryOld[i]!;
      bound[slot] = old;
      reached[slot] = (slot << valueBits) | (old + offset);
      last[slot] = entryPrevious[i]!;
    }
    this.entries = keep;
    this.recordsUsed = this.levelRecords[level + 1]!;
    this.level = level;
  }

  /** At level 0, after propagation: the bounds become facts and the trail is emptied. */
  absorbRoot(): void {
    for (let i = 0; i < this.entries; i++) {
      const slot = this.entrySlot[i]!;
      this.root[slot] = this.bound[slot]!;
      this.last[slot] = -1;
    }
    this.entries = 0;
    this.recordsUsed = 0;
  }

  /** The entry that first made (slot, value) true; −1 when it is a fact. The literal must be true now. */
  entryOf(slot: number, value: number): number {
    let i = this.last[slot]!;
    while (i >= 0 && this.entryOld[i]! >= value) i = this.entryPrevious[i]!;
    return i;
  }

  /** The slot's bound just before the entry at `position` was made. */
  boundBefore(slot: number, position: number): number {
    let i = this.last[slot]!;
    while (i >= position) i = this.entryPrevious[i]!;
    return i < 0 ? this.root[slot]! : this.entryNew[i]!;
  }

  /** Whether the literal was true just before the entry at `position`. */
  wasTrue(literal: number, position: number): boolean {
    return this.boundBefore(literal >>> this.valueBits, position) >= (literal & this.mask) - this.offset;
  }
}
