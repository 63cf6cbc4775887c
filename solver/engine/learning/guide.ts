/**
 * The plan that guides the search: decisions take the side of each variable on which that plan lies, so that search stays near what is known to be
 * good; or the lower side, where the caller wants to leave it (rephasing).
 *
 * Sources: Beck (2007), Solution-guided multi-point constructive search; Demirović, Chu, Stuckey (2018), Solution-based phase saving for
 * CP; Biere & Fleury (2020), Chasing target phases.
 */
import { widened } from './widened.ts';
import type { Trail } from './trail.ts';

export class Guide {
  /** Value each variable has in the plan; `isKnown` says whether there is one. */
  values = new Int32Array(0);
  isKnown = false;
  /** Decisions take the lower side of each variable, not that of the plan. */
  goesLow = false;
  private readonly trail: Trail;
  /** No variable before this one is open. */
  private scan = 0;

  constructor(trail: Trail) {
    this.trail = trail;
  }

  /** Makes room for the variables of a sealed trail. */
  seal(): void {
    this.values = widened(this.values, this.trail.variables);
  }

  /** Makes the trail's values the plan; every variable must be fixed. */
  adopt(): void {
    for (let x = 0; x < this.trail.variables; x++) this.values[x] = this.trail.bound[2 * x]!;
    this.isKnown = true;
  }

  /** Takes the values that literals state at their weakest, and leaves the others as they are. */
  follow(literals: readonly number[]): void {
    const { trail } = this;
    for (const literal of literals) {
      const slot = trail.slotOf(literal);
      this.values[slot >> 1] = (slot & 1) === 0 ? trail.valueOf(literal) : -trail.valueOf(literal);
    }
    this.isKnown = true;
  }

  /** Whether a literal is true in the plan. */
  holds(literal: number): boolean {
    const slot = this.trail.slotOf(literal);
    const value = this.values[slot >> 1]!;
    return ((slot & 1) === 0 ? value : -value) >= this.trail.valueOf(literal);
  }

  /** An open literal ⟦x ≥ v⟧, or its negation: the one to decide. */
  side(literal: number): number {
    const { trail } = this;
    const x = literal >>> (trail.valueBits + 1);
    return !this.goesLow && this.values[x]! >= trail.valueOf(literal) ? literal : literal ^ trail.negation;
  }

  /** Levels were left: variables may be open again. */
  rescan(): void {
    this.scan = 0;
  }

  /** A decision that brings the first open variable to the plan's value or low; 0 when every variable is fixed. */
  next(): number {
    const { trail } = this;
    for (; this.scan < trail.variables; this.scan++) {
      const low = trail.bound[2 * this.scan]!;
      const high = -trail.bound[2 * this.scan + 1]!;
      if (low === high) continue;
      const aim = this.isKnown && !this.goesLow ? Math.min(high, Math.max(low, this.values[this.scan]!)) : low;
      if (aim < high) return trail.literal(2 * this.scan + 1, -aim);
      return trail.literal(2 * this.scan, aim);
    }
    return 0;
  }
}
