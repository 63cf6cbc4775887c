/**
 * Why a bound literal holds, read from the trail: the clause, the arc or the propagator that made it true is asked when analysis wants to know,
 * and answers for the weaker literal that is needed, not for the bound that was set.
 */
import { Explanation } from './explanation.ts';
import { BY_ARC, BY_ARC_GUARD, BY_CLAUSE } from './trail.ts';
import { HEADER } from './clauses.ts';
import type { Arcs } from './arcs.ts';
import type { Clauses } from './clauses.ts';
import type { Propagator } from './propagator.ts';
import type { Trail } from './trail.ts';

export class Reasons {
  /** The last reason asked for; overwritten by the next. */
  readonly reason = new Explanation();
  private readonly trail: Trail;
  private readonly arcs: Arcs;
  private readonly clauses: Clauses;
  private readonly propagators: readonly Propagator[];
  /** Called with every reason used, in tests. */
  audit: ((reason: Explanation, slot: number, value: number) => void) | null = null;

  constructor(trail: Trail, arcs: Arcs, clauses: Clauses, propagators: readonly Propagator[]) {
    this.trail = trail;
    this.arcs = arcs;
    this.clauses = clauses;
    this.propagators = propagators;
  }

  /**
   * Writes the reason of an entry into `reason`.
   * @param code the reason as the trail has it
   * @param position of the entry on the trail; what holds later is no reason
   * @param slot with `value` the literal to explain, no stronger than the bound that was set; −1: the ground of a failure
   * @param stamp noted with a clause that is used; −1 to leave it
   */
  explain(code: number, position: number, slot: number, value: number, stamp: number): void {
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
}
