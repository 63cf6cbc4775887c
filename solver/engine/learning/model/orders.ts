/**
 * Pairs of tasks of which one must come before the other, each with Booleans for its order.
 *
 * A pair that can never overlap has one Boolean for both orders; a pair that cannot overlap only under conditions has one for each order, at
 * most one of them true. Orders that the sure gaps decide get none. Larger gaps (between states) are arcs under the order and its condition.
 */
import type { Conditions } from './conditions.ts';
import type { Core } from '../core.ts';
import type { Differences } from './differences.ts';
import type { Points } from './points.ts';

interface Pair {
  readonly a: number;
  readonly b: number;
  /** Each a list of literals under which the two may not overlap. */
  readonly conflicts: (readonly number[])[];
  /** Gaps after a before b, or after b before a, under a condition. */
  readonly gaps: { readonly aFirst: boolean; readonly least: number; readonly when: readonly number[] }[];
}

export class Orders {
  private readonly core: Core;
  private readonly conditions: Conditions;
  private readonly points: Points;
  private readonly differences: Differences;
  private readonly pairs = new Map<number, Pair>();
  private readonly orders = new Map<number, number>();
  /** Pairs decided by a Boolean, for branching and tests. */
  made: { readonly a: number; readonly b: number; readonly aFirst: number; readonly bFirst: number }[] = [];

  constructor(core: Core, conditions: Conditions, points: Points, differences: Differences) {
    this.core = core;
    this.conditions = conditions;
    this.points = points;
    this.differences = differences;
  }

  private key(a: number, b: number): number {
    return a * this.points.present.length + b;
  }

  /** The tasks may not overlap while all literals hold. */
  conflict(a: number, b: number, when: readonly number[]): void {
    this.pair(a, b).conflicts.push(when);
  }

  /** While all literals hold: `second` starts at least `least` after `first` ends, if it comes after it. */
  gap(first: number, second: number, least: number, when: readonly number[]): void {
    const pair = this.pair(first, second);
    if (least > 0) pair.gaps.push({ aFirst: pair.a === first, least, when });
  }

  private pair(first: number, second: number): Pair {
    const a = Math.min(first, second);
    const b = Math.max(first, second);
    const key = this.key(a, b);
    let pair = this.pairs.get(key);
    if (pair === undefined) {
      pair = { a, b, conflicts: [], gaps: [] };
      this.pairs.set(key, pair);
    }
    return pair;
  }

  get count(): number {
    return this.pairs.size;
  }

  /** Makes the Booleans and arcs of all pairs. */
  close(): void {
    const { alwaysTrue, alwaysFalse } = this.core.trail;
    for (const pair of this.pairs.values()) {
      const conflicts = pair.conflicts
        .map((when) => [...new Set(when)].filter((l) => l !== alwaysTrue))
        .filter((when) => !when.includes(alwaysFalse) && !this.contradict(when));
      if (conflicts.length === 0) continue;
      const always = conflicts.some((when) => when.length === 0);
      const { a, b } = pair;
      // Two tasks without length may stand at one minute, each before the other.
      const apart = !(this.points.mayVanish(a) && this.points.mayVanish(b));
      let aFirst: number;
      let bFirst: number;
      if (apart && this.decided(a, b)) [aFirst, bFirst] = [alwaysTrue, alwaysFalse];
      else if (apart && this.decided(b, a)) [aFirst, bFirst] = [alwaysFalse, alwaysTrue];
      else {
        const one = always && apart;
        aFirst = this.conditions.boolean();
        bFirst = one ? this.conditions.not(aFirst) : this.conditions.boolean();
        if (!one && apart) this.core.clause(this.conditions.not(aFirst), this.conditions.not(bFirst));
        this.differences.add(this.points.ends[a]!, this.points.starts[b]!, 0, aFirst);
        this.differences.add(this.points.ends[b]!, this.points.starts[a]!, 0, bFirst);
        if (!one)
          for (const when of conflicts) this.core.clause(...when.map((l) => this.conditions.not(l)), aFirst, bFirst);
        this.made.push({ a, b, aFirst, bFirst });
      }
      if (apart || pair.gaps.length === 0) {
        this.orders.set(this.key(a, b), aFirst);
        this.orders.set(this.key(b, a), bFirst);
      }
      for (const gap of pair.gaps) {
        const [first, second, literal] = gap.aFirst ? [a, b, aFirst] : [b, a, bFirst];
        const guard = this.conditions.all([literal, ...gap.when]);
        this.differences.add(this.points.ends[first]!, this.points.starts[second]!, gap.least, guard);
      }
    }
  }

  private contradict(when: readonly number[]): boolean {
    return when.some((l, i) => when.slice(i + 1).some((m) => this.conditions.exclude(l, m)));
  }

  /** Whether `first` ends before `second` starts in every solution. */
  private decided(first: number, second: number): boolean {
    return this.differences.holds(this.points.ends[first]!, this.points.starts[second]!, 0);
  }

  /** The order literal of a pair in conflict; always false where none was made. */
  known(first: number, second: number): number {
    return this.orders.get(this.key(first, second)) ?? this.core.trail.alwaysFalse;
  }

  /** Whether the pair has an order whenever both are there in modes that conflict. */
  inConflict(a: number, b: number): boolean {
    return this.orders.has(this.key(a, b)) && this.pairs.has(this.key(Math.min(a, b), Math.max(a, b)));
  }

  /** Whether `second` cannot start after `first` has ended, whatever is decided. */
  never(first: number, second: number): boolean {
    return this.differences.holds(this.points.starts[second]!, this.points.ends[first]!, 1);
  }

  /** A literal under which `second` starts no earlier than `first` ends (it need not be true whenever that holds). Call after `close`. */
  before(first: number, second: number): number {
    const known = this.orders.get(this.key(first, second));
    if (known !== undefined) return known;
    const { alwaysTrue } = this.core.trail;
    let literal = alwaysTrue;
    if (!this.decided(first, second)) {
      literal = this.conditions.boolean();
      this.differences.add(this.points.ends[first]!, this.points.starts[second]!, 0, literal);
    }
    this.orders.set(this.key(first, second), literal);
    return literal;
  }
}
