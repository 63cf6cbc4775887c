/**
 * Guarded differences: while a guard literal is true, `to ≥ from + weight`.
 *
 * In slots, y ≥ x + w raises the lower bound of y with that of x, and its mirror −x ≥ −y + w lowers the upper bound of x with that of
 * y. Arc 2k and its mirror 2k+1 lie side by side, so the mirror of arc a is a ^ 1. A reason needs no record: it is the arc, and the
 * literal of `from` is found again from the bound that is asked for. A guard whose arc would empty a domain becomes false. Arcs whose guard is
 * false, and those that hold whatever `from` becomes, rest until that is undone: each slot's list keeps the live ones in front.
 *
 * Sources: Dechter, Meiri, Pearl (1991); Bartusch, Möhring, Radermacher (1988); Briggs & Torczon (1993) for sparse sets.
 */
import { BY_ARC, BY_ARC_GUARD } from './trail.ts';
import type { Trail } from './trail.ts';

export class Arcs {
  readonly from: number[] = [];
  readonly to: number[] = [];
  readonly weight: number[] = [];
  readonly guard: number[] = [];

  /** Arcs by the slot they leave, what is asked of each beside it, and the even arcs by the slot of their guard. */
  private leaving: Int32Array = new Int32Array(0);
  private leavingTo: Int32Array = new Int32Array(0);
  private leavingWeight: Int32Array = new Int32Array(0);
  private leavingStart = new Int32Array(0);
  /** By slot: the end of its live arcs; by arc: its place in `leaving`. */
  private liveEnd = new Int32Array(0);
  private place = new Int32Array(0);
  /** Arcs put to rest, in order of time, and the level of each. */
  private resting: Int32Array = new Int32Array(0);
  private restingLevel = new Int32Array(0);
  private restingCount = 0;
  private guarded: Int32Array = new Int32Array(0);
  private guardedStart = new Int32Array(0);
  private arcFrom = new Int32Array(0);
  private arcTo = new Int32Array(0);
  private arcWeight = new Int32Array(0);
  private arcGuard = new Int32Array(0);
  visits = 0;
  private readonly trail: Trail;

  constructor(trail: Trail) {
    this.trail = trail;
  }

  /** While `guard` is true: the bound of slot `to` is at least the bound of slot `from` plus `weight`. */
  add(from: number, to: number, weight: number, guard: number): void {
    this.from.push(from, to ^ 1);
    this.to.push(to, from ^ 1);
    this.weight.push(weight, weight);
    this.guard.push(guard, guard);
  }

  /** Ends building, or building on, on a sealed trail at level 0. */
  seal(): void {
    const slots = 2 * this.trail.variables;
    const count = this.from.length;
    this.arcFrom = Int32Array.from(this.from);
    this.arcTo = Int32Array.from(this.to);
    this.arcWeight = Int32Array.from(this.weight);
    this.arcGuard = Int32Array.from(this.guard);
    this.leavingStart = new Int32Array(slots + 1);
    this.guardedStart = new Int32Array(slots + 1);
    const bucket = (start: Int32Array, slotOf: (arc: number) => number, step: number): Int32Array => {
      for (let a = 0; a < count; a += step) start[slotOf(a) + 1]!++;
      for (let s = 0; s < slots; s++) start[s + 1]! += start[s]!;
      const fill = Int32Array.from(start);
      const list = new Int32Array(start[slots]!);
      for (let a = 0; a < count; a += step) list[fill[slotOf(a)]!++] = a;
      return list;
    };
    this.leaving = bucket(this.leavingStart, (a) => this.arcFrom[a]!, 1);
    for (let s = 0; s < slots; s++) {
      // Those that always hold push first.
      const list = this.leaving.subarray(this.leavingStart[s], this.leavingStart[s + 1]);
      list.sort((a, b) => Number(this.isGuarded(a)) - Number(this.isGuarded(b)) || a - b);
    }
    this.leavingTo = this.leaving.map((arc) => this.arcTo[arc]!);
    this.leavingWeight = this.leaving.map((arc) => this.arcWeight[arc]!);
    this.guarded = bucket(this.guardedStart, (a) => this.trail.slotOf(this.arcGuard[a]!), 2);
    this.liveEnd = this.leavingStart.slice(1);
    this.place = new Int32Array(count);
    this.leaving.forEach((arc, k) => (this.place[arc] = k));
    this.resting = new Int32Array(count);
    this.restingLevel = new Int32Array(count);
    this.restingCount = 0;
    for (let arc = 0; arc < count; arc++) if (this.trail.isFalse(this.arcGuard[arc]!)) this.rest(arc);
  }

  private isGuarded(arc: number): boolean {
    return this.arcGuard[arc] !== this.trail.alwaysTrue;
  }

  private isLive(arc: number): boolean {
    return this.place[arc]! < this.liveEnd[this.arcFrom[arc]!]!;
  }

  /** Takes a live arc out of its slot's list until the level is left. */
  private rest(arc: number): void {
    const { leaving, leavingTo, leavingWeight, place } = this;
    const last = --this.liveEnd[this.arcFrom[arc]!]!;
    const k = place[arc]!;
    const other = leaving[last]!;
    leaving[k] = other;
    place[other] = k;
    leaving[last] = arc;
    place[arc] = last;
    leavingTo[k] = leavingTo[last]!;
    leavingTo[last] = this.arcTo[arc]!;
    leavingWeight[k] = leavingWeight[last]!;
    leavingWeight[last] = this.arcWeight[arc]!;
    this.resting[this.restingCount] = arc;
    this.restingLevel[this.restingCount++] = this.trail.level;
  }

  /** Brings back the arcs put to rest above a level; the last to leave a list comes back first, so each finds its place at the end. */
  backtrack(level: number): void {
    while (this.restingCount > 0 && this.restingLevel[this.restingCount - 1]! > level)
      this.liveEnd[this.arcFrom[this.resting[--this.restingCount]!]!]!++;
  }

  /** A slot's bound rose: every arc that leaves it. */
  propagate(slot: number): boolean {
    const trail = this.trail;
    const { bound, reached, valueBits, mask, offset, negation, alwaysTrue } = trail;
    const { leavingTo, leavingWeight } = this;
    const start = this.leavingStart[slot]!;
    let end = this.liveEnd[slot]!;
    this.visits += end - start;
    const here = bound[slot]!;
    /** How much higher the bound can still rise. */
    const rise = -bound[slot ^ 1]! - here;
    for (let k = start; k < end; k++) {
      const value = here + leavingWeight[k]!;
      const to = leavingTo[k]!;
      if (value <= bound[to]!) {
        if (value + rise <= bound[to]!) {
          this.rest(this.leaving[k]!);
          end--;
          k--;
        }
        continue;
      }
      const arc = this.leaving[k]!;
      const guard = this.arcGuard[arc]!;
      if (guard === alwaysTrue || reached[guard >>> valueBits]! >= guard) {
        if (!trail.set(to, value, (arc << 2) | BY_ARC)) return false;
      } else if (value + bound[to ^ 1]! > 0) {
        const off = guard ^ negation;
        if (reached[off >>> valueBits]! < off)
          trail.set(off >>> valueBits, (off & mask) - offset, (arc << 2) | BY_ARC_GUARD);
      }
    }
    return true;
  }

  /** A slot's bound rose: the arcs whose guards it made false come to rest, and those whose guards it made true push. */
  release(slot: number, old: number, now: number): boolean {
    this.restGuarded(slot, old, now);
    const trail = this.trail;
    const { bound, mask, offset } = trail;
    const end = this.guardedStart[slot + 1]!;
    for (let k = this.guardedStart[slot]!; k < end; k++) {
      const arc = this.guarded[k]!;
      const value = (this.arcGuard[arc]! & mask) - offset;
      if (value <= old || value > now) continue;
      this.visits++;
      for (let a = arc; a <= arc + 1; a++) {
        const reached = bound[this.arcFrom[a]!]! + this.arcWeight[a]!;
        const to = this.arcTo[a]!;
        if (reached > bound[to]! && !trail.set(to, reached, (a << 2) | BY_ARC)) return false;
      }
    }
    return true;
  }

  /** The arcs whose guards a slot's rise made false come to rest. */
  private restGuarded(slot: number, old: number, now: number): void {
    const { mask, offset } = this.trail;
    const end = this.guardedStart[(slot ^ 1) + 1]!;
    for (let k = this.guardedStart[slot ^ 1]!; k < end; k++) {
      const arc = this.guarded[k]!;
      const value = 1 - ((this.arcGuard[arc]! & mask) - offset);
      if (value <= old || value > now) continue;
      if (this.isLive(arc)) this.rest(arc);
      if (this.isLive(arc + 1)) this.rest(arc + 1);
    }
  }

  /** Once, before search: every arc as it stands. */
  propagateAll(): boolean {
    for (let slot = 0; slot < 2 * this.trail.variables; slot++) if (!this.propagate(slot)) return false;
    return true;
  }
}
