/**
 * A level that never falls below 0: initial + Σ amounts of the active events at or before t ≥ 0, at every minute t.
 *
 * The most there can be at t counts every filling that may have happened and only the drawings that surely have. Negative is a conflict;
 * where it would be negative without one filling, that filling must be active and no later than t; where one more drawing makes it
 * negative, that drawing is later than t or inactive. A capacity is the same rule on the mirror level, capacity − level, with the amounts negated.
 * Reasons are pointwise: ⟦drawing ≤ t⟧ and active, ⟦filling > t⟧ or inactive.
 *
 * Sources: Neumann & Schwindt (2003); Laborie (2003); Schutt & Stuckey (2016), Explaining producer/consumer constraints.
 */
import type { Explanation } from '../explanation.ts';
import type { Propagator } from '../propagator.ts';
import type { Trail } from '../trail.ts';

export interface ReservoirEvent {
  readonly variable: number;
  readonly offset: number;
  /** Positive fills, negative draws. */
  readonly amount: number;
  /** The event counts while this is true. */
  readonly active: number;
}

const SHORT = 0;
const FILL_BY = 1;
const FILL_ACTIVE = 2;
const DRAW_AFTER = 3;
const DRAW_INACTIVE = 4;

export class Reservoir implements Propagator {
  readonly priority = 1;
  id = 0;
  readonly cost: number;

  private readonly trail: Trail;
  private readonly initial: number;
  private readonly slot: Int32Array;
  private readonly offset: Int32Array;
  private readonly amount: Int32Array;
  private readonly active: Int32Array;
  private readonly count: number;

  constructor(trail: Trail, initial: number, events: readonly ReservoirEvent[]) {
    this.trail = trail;
    this.initial = initial;
    this.count = events.length;
    this.slot = Int32Array.from(events, (e) => 2 * e.variable);
    this.offset = Int32Array.from(events, (e) => e.offset);
    this.amount = Int32Array.from(events, (e) => e.amount);
    this.active = Int32Array.from(events, (e) => e.active);
    this.cost = events.length * events.length + 4;
  }

  watches(): (readonly [number, number])[] {
    const pairs: (readonly [number, number])[] = [];
    for (let k = 0; k < this.count; k++) {
      const slot = this.slot[k]!;
      // Fillings matter by their earliest time, drawings by their latest; both also when they are to be moved.
      pairs.push([slot, k], [slot + 1, k]);
      if (this.active[k] !== this.trail.alwaysTrue) {
        pairs.push([this.trail.slotOf(this.active[k]!), k], [this.trail.slotOf(this.active[k]!) ^ 1, k]);
      }
    }
    return pairs;
  }

  private earliest(k: number): number {
    return this.trail.bound[this.slot[k]!]! + this.offset[k]!;
  }
  private latest(k: number): number {
    return -this.trail.bound[this.slot[k]! + 1]! + this.offset[k]!;
  }

  /** The most there can be after the events of minute t. */
  private most(t: number): number {
    let level = this.initial;
    for (let k = 0; k < this.count; k++) {
      const amount = this.amount[k]!;
      if (amount > 0) {
        if (this.earliest(k) <= t && !this.trail.isFalse(this.active[k]!)) level += amount;
      } else if (this.latest(k) <= t && this.trail.isTrue(this.active[k]!)) level += amount;
    }
    return level;
  }

  propagate(): boolean {
    const { trail } = this;
    for (let c = 0; c < this.count; c++) {
      if (this.amount[c]! >= 0 || trail.isFalse(this.active[c]!)) continue;
      const sure = trail.isTrue(this.active[c]!);
      if (sure && !this.checkAt(this.latest(c))) return false;
      if (!this.moveDrawing(c, sure)) return false;
    }
    return true;
  }

  /** At the latest time of a sure drawing: is there enough, and is any filling indispensable? */
  private checkAt(t: number): boolean {
    const { trail } = this;
    const level = this.most(t);
    if (level < 0) return trail.fail(trail.record(this.id, SHORT, -1, t));
    for (let k = 0; k < this.count; k++) {
      const amount = this.amount[k]!;
      if (amount <= level || this.earliest(k) > t || trail.isFalse(this.active[k]!)) continue;
      if (
        !trail.isTrue(this.active[k]!) &&
        !trail.setLiteral(this.active[k]!, trail.record(this.id, FILL_ACTIVE, k, t))
      )
        return false;
      if (this.latest(k) > t) {
        if (!trail.set(this.slot[k]! + 1, this.offset[k]! - t, trail.record(this.id, FILL_BY, k, t))) return false;
      }
    }
    return true;
  }

  /** A drawing waits until there can be enough for it; one that cannot wait does not happen. */
  private moveDrawing(c: number, sure: boolean): boolean {
    const { trail } = this;
    const amount = this.amount[c]!;
    for (let t = this.earliest(c); t <= this.latest(c); t++) {
      const counted = sure && this.latest(c) <= t;
      if (counted || this.most(t) + amount >= 0) break;
      if (!sure) {
        if (this.latest(c) <= t)
          return trail.setLiteral(this.active[c]! ^ trail.negation, trail.record(this.id, DRAW_INACTIVE, c, t));
        break;
      }
      if (!trail.set(this.slot[c]!, t + 1 - this.offset[c]!, trail.record(this.id, DRAW_AFTER, c, t))) return false;
    }
    return true;
  }

  explain(into: Explanation, position: number, _slot: number, _value: number, record: number): void {
    const { trail } = this;
    const kind = trail.records[record + 1]!;
    const about = trail.records[record + 2]!;
    const t = trail.records[record + 3]!;
    // Level without the event in question, which the reason treats on its own.
    let level = this.initial;
    if (about >= 0) {
      if (kind === DRAW_AFTER || kind === DRAW_INACTIVE) level += this.amount[about]!;
      if (kind === FILL_BY) this.addLiteral(into, this.active[about]!, false);
      if (kind === DRAW_AFTER) this.addLiteral(into, this.active[about]!, false);
      if (kind === DRAW_INACTIVE) into.add(this.slot[about]! + 1, this.offset[about]! - t);
    }
    for (let k = 0; k < this.count; k++) {
      if (k === about) continue;
      const amount = this.amount[k]!;
      if (amount > 0) {
        if (!this.cannotFill(k, t, position)) level += amount;
      } else if (this.hasDrawn(k, t, position)) level += amount;
    }
    // level < 0: give back what the slack allows, the newest first, by leaving out drawings or exclusions in turn.
    let slack = -1 - level;
    for (let k = this.count - 1; k >= 0; k--) {
      if (k === about) continue;
      const amount = this.amount[k]!;
      if (amount > 0) {
        if (!this.cannotFill(k, t, position)) continue;
        if (amount <= slack && !this.isFact(k, t)) slack -= amount;
        else if (trail.wasTrue(this.active[k]! ^ trail.negation, position))
          this.addLiteral(into, this.active[k]!, true);
        else into.add(this.slot[k]!, t + 1 - this.offset[k]!);
      } else if (amount < 0 && this.hasDrawn(k, t, position)) {
        if (-amount <= slack && !this.isFact(k, t)) slack += amount;
        else {
          into.add(this.slot[k]! + 1, this.offset[k]! - t);
          this.addLiteral(into, this.active[k]!, false);
        }
      }
    }
  }

  private addLiteral(into: Explanation, literal: number, negated: boolean): void {
    if (literal === this.trail.alwaysTrue) return;
    const l = negated ? literal ^ this.trail.negation : literal;
    into.add(this.trail.slotOf(l), this.trail.valueOf(l));
  }

  private cannotFill(k: number, t: number, position: number): boolean {
    const { trail } = this;
    return (
      trail.boundBefore(this.slot[k]!, position) + this.offset[k]! > t ||
      trail.wasTrue(this.active[k]! ^ trail.negation, position)
    );
  }
  private hasDrawn(k: number, t: number, position: number): boolean {
    const { trail } = this;
    return (
      -trail.boundBefore(this.slot[k]! + 1, position) + this.offset[k]! <= t && trail.wasTrue(this.active[k]!, position)
    );
  }
  /** Whether the event's part in the reason is known without any decision, and so costs nothing. */
  private isFact(k: number, t: number): boolean {
    const { trail } = this;
    const active = this.active[k]!;
    const off = active ^ trail.negation;
    const rootTrue = (l: number): boolean => trail.root[trail.slotOf(l)]! >= trail.valueOf(l);
    if (this.amount[k]! > 0) return trail.root[this.slot[k]!]! + this.offset[k]! > t || rootTrue(off);
    return -trail.root[this.slot[k]! + 1]! + this.offset[k]! <= t && rootTrue(active);
  }
}
