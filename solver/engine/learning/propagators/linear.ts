/**
 * Guarded linear inequality: while the guard is true, Σ coefficient × slot value ≤ limit, with positive coefficients.
 *
 * A slot's value is at least its bound, so a term with a negative coefficient is written on the mirror slot. From the least sum follow
 * a conflict, the end of the guard, or an upper limit on each term. Reasons take the other terms' bounds and give back the slack: first
 * whole terms, then the rest to the newest ones.
 *
 * Source: Ohrimenko, Stuckey, Codish (2009), linear constraints with lazy explanations.
 */
import type { Explanation } from '../explanation.ts';
import type { Propagator } from '../propagator.ts';
import type { Trail } from '../trail.ts';

export class Linear implements Propagator {
  readonly priority = 1;
  id = 0;
  readonly cost: number;

  private readonly trail: Trail;
  private readonly slots: Int32Array;
  private readonly coefficients: Float64Array;
  private readonly limit: number;
  private readonly guard: number;

  constructor(
    trail: Trail,
    terms: readonly { readonly slot: number; readonly coefficient: number }[],
    limit: number,
    guard: number,
  ) {
    this.trail = trail;
    this.slots = Int32Array.from(terms, (t) => t.slot);
    this.coefficients = Float64Array.from(terms, (t) => t.coefficient);
    this.limit = limit;
    this.guard = guard;
    this.cost = terms.length + 2;
  }

  watches(): (readonly [number, number])[] {
    const pairs: (readonly [number, number])[] = Array.from(this.slots, (slot) => [slot, 0] as const);
    if (this.guard !== this.trail.alwaysTrue) pairs.push([this.trail.slotOf(this.guard), 0]);
    return pairs;
  }

  propagate(): boolean {
    const { trail, slots, coefficients } = this;
    const bound = trail.bound;
    if (trail.isFalse(this.guard)) return true;
    let slack = this.limit;
    for (let k = 0; k < slots.length; k++) slack -= coefficients[k]! * bound[slots[k]!]!;
    if (slack < 0) {
      const reason = trail.record(this.id, -1, 0, 0);
      if (trail.isTrue(this.guard)) return trail.fail(reason);
      return trail.setLiteral(this.guard ^ trail.negation, reason);
    }
    if (!trail.isTrue(this.guard)) return true;
    for (let k = 0; k < slots.length; k++) {
      const slot = slots[k]!;
      const low = bound[slot]!;
      const room = -bound[slot ^ 1]! - low;
      if (coefficients[k]! * room <= slack) continue;
      const most = low + Math.floor(slack / coefficients[k]!);
      if (!trail.set(slot ^ 1, -most, trail.record(this.id, k, 0, 0))) return false;
    }
    return true;
  }

  explain(into: Explanation, position: number, slot: number, value: number, record: number): void {
    const { trail, slots, coefficients } = this;
    const term = trail.records[record + 1]!;
    // With the term above −value the sum exceeds the limit by `excess` > 0, of which all but one may be given back.
    let excess = -this.limit;
    for (let k = 0; k < slots.length; k++)
      excess += coefficients[k]! * (k === term ? 1 - value : trail.boundBefore(slots[k]!, position));
    let slack = excess - 1;
    const off = this.guard ^ trail.negation;
    const endsGuard = term < 0 && slot >= 0 && slot === trail.slotOf(off);
    if (!endsGuard && this.guard !== trail.alwaysTrue) into.add(trail.slotOf(this.guard), trail.valueOf(this.guard));
    const first = into.size;
    for (let k = 0; k < slots.length; k++) {
      if (k === term) continue;
      const at = trail.boundBefore(slots[k]!, position);
      const root = trail.root[slots[k]!]!;
      if (at <= root) continue;
      const whole = coefficients[k]! * (at - root);
      if (whole <= slack) slack -= whole;
      else into.add(slots[k]!, at);
    }
    for (let i = into.size - 1; i >= first && slack > 0; i--) {
      const k = slots.indexOf(into.slots[i]!);
      const back = Math.floor(slack / coefficients[k]!);
      into.values[i]! -= back;
      slack -= back * coefficients[k]!;
    }
  }
}
