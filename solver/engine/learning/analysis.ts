/**
 * From a conflict to a clause: resolution back along the trail to the first unique implication point, over bound literals.
 *
 * One `needed` value a slot stands for all literals of that slot in the clause under construction: ⟦x ≥ 3⟧ and ⟦x ≥ 5⟧ merge into the
 * stronger. Each is looked up at the entry that first made it true, and it is that weaker literal which is explained, not the bound
 * that the entry set. Afterwards literals that follow from the others are dropped.
 *
 * Sources: Marques-Silva & Sakallah (1999); Eén & Sörensson (2003); Liang, Ganesh, Poupart, Czarnecki (2016), Learning rate based branching heuristic, for activity by reasons.
 */
import { Minimisation } from './minimisation.ts';
import { DECIDED, NONE } from './trail.ts';
import type { Activity } from './activity.ts';
import type { Reasons } from './reasons.ts';
import type { Trail } from './trail.ts';

export class Analysis {
  /** The learned clause: the asserting literal first, then one of the highest level below; its LBD. */
  clause = new Int32Array(64);
  clauseSize = 0;
  backLevel = 0;
  lbd = 0;

  private readonly trail: Trail;
  private readonly reasons: Reasons;
  private readonly minimisation: Minimisation;
  private readonly activity: Activity;
  private readonly named: number;

  private needed = new Int32Array(0);
  private current = new Uint8Array(0);
  private touched = new Int32Array(0);
  private touchedMark = new Uint8Array(0);
  private touchedCount = 0;
  /** By level: the last clause that had a literal on it. */
  private levelMark = new Int32Array(0);
  private mark = 0;

  /** @param named activity that a literal gains each time a reason in a conflict names it */
  constructor(trail: Trail, reasons: Reasons, activity: Activity, named: number) {
    this.trail = trail;
    this.reasons = reasons;
    this.minimisation = new Minimisation(trail, reasons);
    this.activity = activity;
    this.named = named;
  }

  seal(): void {
    const slots = 2 * this.trail.variables;
    this.needed = new Int32Array(slots).fill(NONE);
    this.current = new Uint8Array(slots);
    this.touched = new Int32Array(slots);
    this.touchedMark = new Uint8Array(slots);
    this.minimisation.seal(this.needed);
  }

  private need(slot: number, value: number): number {
    const trail = this.trail;
    if (value <= trail.root[slot]! || this.needed[slot]! >= value) return 0;
    if (this.touchedMark[slot] === 0) {
      this.touchedMark[slot] = 1;
      this.touched[this.touchedCount++] = slot;
    }
    this.needed[slot] = value;
    if (this.current[slot] === 0 && trail.entryOf(slot, value) >= trail.levelEntries[trail.level]!) {
      this.current[slot] = 1;
      return 1;
    }
    return 0;
  }

  /** Puts the ground of the conflict into `reason` and returns the highest level among its literals. */
  private ground(stamp: number): number {
    const { trail, reasons } = this;
    const { reason } = reasons;
    const slot = trail.conflictSlot;
    reasons.explain(trail.conflictReason, trail.entries, slot, trail.conflictValue, stamp);
    if (slot >= 0) reason.add(slot ^ 1, 1 - trail.conflictValue);
    let highest = 0;
    for (let k = 0; k < reason.size; k++) {
      const entry = trail.entryOf(reason.slots[k]!, reason.values[k]!);
      if (entry >= 0 && trail.entryLevel[entry]! > highest) highest = trail.entryLevel[entry]!;
    }
    return highest;
  }

  /**
   * Learns from the conflict that the trail tells. Leaves the clause in the fields.
   * @param batch a level with several decisions, where nothing is learned (see `failedTogether`); −1 when there is none
   * @returns the level of the conflict: 0 when the problem is refuted; above it the trail must be cut back to this level before
   *          the clause's level is read from it, which this function does by `undo`
   */
  learn(stamp: number, undo: (level: number) => void, batch: number): number {
    const { trail, reasons, needed } = this;
    const { reason } = reasons;
    const level = this.ground(stamp);
    if (level === 0) return 0;
    if (level < trail.level) undo(level);
    if (level === batch) return level;
    let open = 0;
    for (let k = 0; k < reason.size; k++) open += this.need(reason.slots[k]!, reason.values[k]!);
    let i = trail.entries - 1;
    let slot = 0;
    for (;;) {
      slot = trail.entrySlot[i]!;
      const value = needed[slot]!;
      if (value !== NONE && value > trail.entryOld[i]!) {
        this.activity.bump(slot, value, 1);
        if (open === 1) break;
        open--;
        this.current[slot] = 0;
        needed[slot] = NONE;
        reasons.explain(trail.entryReason[i]!, i, slot, value, stamp);
        if (this.named > 0) this.bumpNamed();
        for (let k = 0; k < reason.size; k++) open += this.need(reason.slots[k]!, reason.values[k]!);
      }
      i--;
    }
    this.collect(slot);
    return level;
  }

  private bumpNamed(): void {
    const { named } = this;
    const { reason } = this.reasons;
    const { root } = this.trail;
    for (let k = 0; k < reason.size; k++) {
      const slot = reason.slots[k]!;
      const value = reason.values[k]!;
      if (value > root[slot]!) this.activity.bump(slot, value, named);
    }
  }

  /** Builds the clause from `needed`, minimised; `point` is the slot of the unique implication point. */
  private collect(point: number): void {
    const { trail, needed, minimisation } = this;
    minimisation.begin();
    for (let k = 0; k < this.touchedCount; k++) {
      const slot = this.touched[k]!;
      const value = needed[slot]!;
      if (value !== NONE) minimisation.markLevel(trail.entryLevel[trail.entryOf(slot, value)]!);
    }
    if (this.clause.length <= this.touchedCount) this.clause = new Int32Array(this.touchedCount * 2 + 2);
    const clause = this.clause;
    clause[0] = trail.literal(point, needed[point]!) ^ trail.negation;
    let size = 1;
    for (let k = 0; k < this.touchedCount; k++) {
      const slot = this.touched[k]!;
      const value = needed[slot]!;
      if (value === NONE || slot === point) continue;
      if (minimisation.isRedundant(trail.entryOf(slot, value), slot, value)) continue;
      this.activity.bump(slot, value, 1);
      clause[size++] = trail.literal(slot, value) ^ trail.negation;
    }
    this.clauseSize = size;
    // Second literal: highest level among the rest. LBD: distinct levels.
    this.mark++;
    if (this.levelMark.length <= trail.level) this.levelMark = new Int32Array(trail.level * 2 + 16);
    this.backLevel = 0;
    this.lbd = 1;
    for (let k = 1; k < size; k++) {
      const literal = clause[k]! ^ trail.negation;
      const entry = trail.entryOf(literal >>> trail.valueBits, (literal & trail.mask) - trail.offset);
      const level = trail.entryLevel[entry]!;
      if (this.levelMark[level] !== this.mark) {
        this.levelMark[level] = this.mark;
        this.lbd++;
      }
      if (level > this.backLevel) {
        this.backLevel = level;
        const swap = clause[1]!;
        clause[1] = clause[k]!;
        clause[k] = swap;
      }
    }
    this.forget();
  }

  private forget(): void {
    for (let k = 0; k < this.touchedCount; k++) {
      const slot = this.touched[k]!;
      this.touchedMark[slot] = 0;
      this.current[slot] = 0;
      this.needed[slot] = NONE;
    }
    this.touchedCount = 0;
  }

  /**
   * Of the assumptions, those that together refute the one that is false now.
   * @param literal an assumption that is false under the earlier ones
   * @returns the failed assumptions, `literal` first
   */
  failed(literal: number): number[] {
    const off = literal ^ this.trail.negation;
    this.need(this.trail.slotOf(off), this.trail.valueOf(off));
    return [literal, ...this.decidedBehind().filter((by) => by !== literal)];
  }

  /** Of the assumptions, those that together lead to the conflict whose ground `learn` left unlearned. */
  failedTogether(): number[] {
    const { reason } = this.reasons;
    for (let k = 0; k < reason.size; k++) this.need(reason.slots[k]!, reason.values[k]!);
    return this.decidedBehind();
  }

  /** The decisions from which everything needed follows. */
  private decidedBehind(): number[] {
    const { trail, reasons, needed } = this;
    const { reason } = reasons;
    const found: number[] = [];
    for (let i = trail.entries - 1; i >= 0; i--) {
      const slot = trail.entrySlot[i]!;
      const value = needed[slot]!;
      if (value === NONE || value <= trail.entryOld[i]!) continue;
      needed[slot] = NONE;
      if (trail.entryReason[i] === DECIDED) {
        found.push(trail.literal(slot, trail.entryNew[i]!));
        continue;
      }
      reasons.explain(trail.entryReason[i]!, i, slot, value, -1);
      for (let k = 0; k < reason.size; k++) this.need(reason.slots[k]!, reason.values[k]!);
    }
    this.forget();
    return found;
  }
}
