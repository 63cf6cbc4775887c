/**
 * From a conflict to a clause: resolution back along the trail to the first unique implication point, over bound literals.
 *
 * One `needed` value a slot stands for all literals of that slot in the clause under construction: ⟦x ≥ 3⟧ and ⟦x ≥ 5⟧ merge into the
 * stronger. Each is looked up at the entry that first made it true, and it is that weaker literal which is explained, not the bound
 * that the entry set. Afterwards literals that follow from the others are dropped; there a literal may be covered only by one of the
 * same trail entry, otherwise the argument could be circular.
 *
 * Sources: Marques-Silva & Sakallah (1999); Eén & Sörensson (2003); Sörensson & Biere (2009) for minimisation; Liang, Ganesh, Poupart,
 * Czarnecki (2016), Learning rate based branching heuristic, for activity by reasons.
 */
import { Explanation } from './explanation.ts';
import { BY_ARC, BY_ARC_GUARD, BY_CLAUSE, DECIDED, NONE } from './trail.ts';
import { HEADER } from './clauses.ts';
import { widened } from './widened.ts';
import type { Activity } from './activity.ts';
import type { Arcs } from './arcs.ts';
import type { Clauses } from './clauses.ts';
import type { Propagator } from './propagator.ts';
import type { Trail } from './trail.ts';

/** Depth at which minimisation gives up on a literal. */
const DEEPEST = 200;

export class Analysis {
  /** The learned clause: the asserting literal first, then one of the highest level below; its LBD. */
  clause = new Int32Array(64);
  clauseSize = 0;
  backLevel = 0;
  lbd = 0;

  private readonly trail: Trail;
  private readonly arcs: Arcs;
  private readonly clauses: Clauses;
  private readonly propagators: readonly Propagator[];
  private readonly activity: Activity;
  private readonly named: number;

  private readonly reason = new Explanation();
  private needed = new Int32Array(0);
  private current = new Uint8Array(0);
  private touched = new Int32Array(0);
  private touchedMark = new Uint8Array(0);
  private touchedCount = 0;
  private levelMark = new Int32Array(0);
  private mark = 0;
  private stack = new Int32Array(1 << 10);
  private stackUsed = 0;
  /** By trail entry: the value found redundant (≤ it holds too), or found not to be (≥ it fails too), in the analysis `stamp`. */
  private memoStamp = new Int32Array(0);
  private memoYes = new Int32Array(0);
  private memoNo = new Int32Array(0);
  private stamp = 0;
  /** Called with every reason used, in tests. */
  audit: ((reason: Explanation, slot: number, value: number) => void) | null = null;

  /** @param named activity that a literal gains each time a reason in a conflict names it */
  constructor(
    trail: Trail,
    arcs: Arcs,
    clauses: Clauses,
    propagators: readonly Propagator[],
    activity: Activity,
    named: number,
  ) {
    this.trail = trail;
    this.arcs = arcs;
    this.clauses = clauses;
    this.propagators = propagators;
    this.activity = activity;
    this.named = named;
  }

  seal(): void {
    const slots = 2 * this.trail.variables;
    this.needed = new Int32Array(slots).fill(NONE);
    this.current = new Uint8Array(slots);
    this.touched = new Int32Array(slots);
    this.touchedMark = new Uint8Array(slots);
    const entries = this.trail.entrySlot.length;
    this.memoStamp = new Int32Array(entries);
    this.memoYes = new Int32Array(entries);
    this.memoNo = new Int32Array(entries);
  }

  /** Writes the reason of an entry into `this.reason`, for the weaker literal (slot, value); slot −1: the ground of a failure. */
  private explain(code: number, position: number, slot: number, value: number, stamp: number): void {
    const { trail, reason } = this;
    reason.clear();
    const reference = code >> 2;
    switch (code & 3) {
      case BY_CLAUSE: {
        const store = this.clauses.store;
        const from = reference + HEADER;
        const end = from + store[reference]!;
        for (let k = slot < 0 ? from : from + 1; k < end; k++) {
          const literal = store[k]! ^ trail.negation;
          reason.add(literal >>> trail.valueBits, (literal & trail.mask) - trail.offset);
        }
        if (stamp >= 0) this.clauses.touch(reference, stamp);
        break;
      }
      case BY_ARC: {
        const guard = this.arcs.guard[reference]!;
        if (guard !== trail.alwaysTrue) reason.add(trail.slotOf(guard), trail.valueOf(guard));
        reason.add(this.arcs.from[reference]!, value - this.arcs.weight[reference]!);
        break;
      }
      case BY_ARC_GUARD: {
        // from ≥ a, to ≤ −b and a + weight + b > 0; the slack goes to the later of the two.
        const from = this.arcs.from[reference]!;
        const against = this.arcs.to[reference]! ^ 1;
        const weight = this.arcs.weight[reference]!;
        let a = trail.boundBefore(from, position);
        let b = trail.boundBefore(against, position);
        const slack = a + weight + b - 1;
        if (trail.entryOf(from, a) >= trail.entryOf(against, b)) a -= slack;
        else b -= slack;
        reason.add(from, a);
        reason.add(against, b);
        break;
      }
      default:
        this.propagators[trail.records[reference]!]!.explain(reason, position, slot, value, reference);
    }
    if (this.audit !== null) this.audit(reason, slot, value);
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

  /** Puts the ground of the conflict into `this.reason` and returns the highest level among its literals. */
  private ground(stamp: number): number {
    const { trail, reason } = this;
    const slot = trail.conflictSlot;
    this.explain(trail.conflictReason, trail.entries, slot, trail.conflictValue, stamp);
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
    const { trail, reason, needed } = this;
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
        this.explain(trail.entryReason[i]!, i, slot, value, stamp);
        if (this.named > 0) this.bumpNamed();
        for (let k = 0; k < reason.size; k++) open += this.need(reason.slots[k]!, reason.values[k]!);
      }
      i--;
    }
    this.collect(slot);
    return level;
  }

  private bumpNamed(): void {
    const { reason, named } = this;
    const { root } = this.trail;
    for (let k = 0; k < reason.size; k++) {
      const slot = reason.slots[k]!;
      const value = reason.values[k]!;
      if (value > root[slot]!) this.activity.bump(slot, value, named);
    }
  }

  /** Builds the clause from `needed`, minimised; `point` is the slot of the unique implication point. */
  private collect(point: number): void {
    const { trail, needed } = this;
    this.mark++;
    if (this.levelMark.length <= trail.level) this.levelMark = new Int32Array(trail.level * 2 + 16);
    for (let k = 0; k < this.touchedCount; k++) {
      const slot = this.touched[k]!;
      const value = needed[slot]!;
      if (value !== NONE) this.levelMark[trail.entryLevel[trail.entryOf(slot, value)]!] = this.mark;
    }
    if (this.clause.length <= this.touchedCount) this.clause = new Int32Array(this.touchedCount * 2 + 2);
    const clause = this.clause;
    clause[0] = trail.literal(point, needed[point]!) ^ trail.negation;
    let size = 1;
    this.stamp++;
    for (let k = 0; k < this.touchedCount; k++) {
      const slot = this.touched[k]!;
      const value = needed[slot]!;
      if (value === NONE || slot === point) continue;
      const entry = trail.entryOf(slot, value);
      if (trail.entryReason[entry] !== DECIDED && this.follows(entry, slot, value, 0)) continue;
      this.activity.bump(slot, value, 1);
      clause[size++] = trail.literal(slot, value) ^ trail.negation;
    }
    this.clauseSize = size;
    // Second literal: highest level among the rest. LBD: distinct levels.
    this.mark++;
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

  /** Whether the literal made true at `entry` follows from the clause's other literals. */
  private follows(entry: number, slot: number, value: number, depth: number): boolean {
    const trail = this.trail;
    const code = trail.entryReason[entry]!;
    if (code === DECIDED || depth > DEEPEST) return false;
    if (this.levelMark[trail.entryLevel[entry]!] !== this.mark) return false;
    if (this.memoStamp[entry] === this.stamp) {
      if (value <= this.memoYes[entry]!) return true;
      if (value >= this.memoNo[entry]!) return false;
    } else {
      this.memoStamp[entry] = this.stamp;
      this.memoYes[entry] = NONE;
      this.memoNo[entry] = 0x7fffffff;
    }
    this.explain(code, entry, slot, value, -1);
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
    const { trail, reason, needed } = this;
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
      if (trail.entryReason[entry] === DECIDED || this.levelMark[trail.entryLevel[entry]!] !== this.mark) return false;
      stack[this.stackUsed++] = entry;
      stack[this.stackUsed++] = slot;
      stack[this.stackUsed++] = value;
    }
    return true;
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
    const { reason } = this;
    for (let k = 0; k < reason.size; k++) this.need(reason.slots[k]!, reason.values[k]!);
    return this.decidedBehind();
  }

  /** The decisions from which everything needed follows. */
  private decidedBehind(): number[] {
    const { trail, reason, needed } = this;
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
      this.explain(trail.entryReason[i]!, i, slot, value, -1);
      for (let k = 0; k < reason.size; k++) this.need(reason.slots[k]!, reason.values[k]!);
    }
    this.forget();
    return found;
  }
}
