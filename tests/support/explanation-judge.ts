/**
 * Judges reasons and clauses of the learning engine by plans that are known.
 *
 * A reason must have stood before what it explains; a plan that satisfies a reason satisfies what it implies; every plan satisfies every
 * learned clause. With every plan of a problem known, that is the whole meaning of a reason.
 */
import type { Explanation } from '../../solver/engine/learning/explanation.ts';
import { Model } from '../../solver/engine/learning/model/model.ts';
import type { TierVariable } from '../../solver/engine/learning/model/tiers.ts';
import type { Solution } from '../../solver/engine/outcome.ts';
import type { Problem } from '../../solver/engine/problem.ts';
import { plainTierValues } from './plain-check.ts';

/** A plan in the terms of a model. */
export interface Assignment {
  /** Every variable's value. */
  readonly values: Int32Array;
  readonly tiers: readonly number[];
}

/**
 * Every variable's value in each plan, as the model built anew assigns them.
 *
 * @param deep whether the model has tiers that count changes
 * @returns and how many plans the model refuses, which only the order of interchangeable work may do
 */
export function assignmentsOf(
  problem: Problem,
  plans: readonly Solution[],
  deep: boolean,
): { readonly known: readonly Assignment[]; readonly refused: number } {
  let model = new Model(problem, false, deep);
  const known = plans.flatMap((plan): Assignment[] => {
    let { core } = model;
    if (!core.replay(model.literalsOf(plan), model.branching)) {
      // What the plan leaves open may need search.
      model = new Model(problem, false, deep);
      ({ core } = model);
      if (core.solve(model.literalsOf(plan), model.branching, 3000, Infinity, undefined) !== 'solution') return [];
    }
    core.guide.adopt();
    return [{ values: Int32Array.from(core.guide.values), tiers: plainTierValues(problem, plan) }];
  });
  return { known, refused: plans.length - known.length };
}

export class Judge {
  readonly wrong: string[] = [];
  /** Pairs of a reason or clause and a plan. */
  checked = 0;
  private spareOf: readonly TierVariable[] = [];
  private spareSet: ReadonlySet<number> = new Set();

  /**
   * @param model whose reasons are judged
   * @param known plans in its terms
   */
  constructor(
    private readonly model: Model,
    public known: readonly Assignment[],
  ) {}

  /** Variables that get their meaning as they are used: nothing is known of them. */
  private get spare(): ReadonlySet<number> {
    const { tiers } = this.model;
    if (tiers.some((tier, k) => tier !== this.spareOf[k])) {
      this.spareOf = [...tiers];
      this.spareSet = new Set(tiers.flatMap(({ count }) => count?.spare ?? []));
    }
    return this.spareSet;
  }

  /** A reason for ⟦slot ≥ value⟧; slot −1: for a failure. To be called while the trail has both. */
  readonly reason = (reason: Explanation, slot: number, value: number): void => {
    const { trail } = this.model.core;
    const made = slot >= 0 && trail.bound[slot]! >= value ? trail.entryOf(slot, value) : Infinity;
    const literals = Array.from({ length: reason.size }, (_, k) => [reason.slots[k]!, reason.values[k]!] as const);
    const what = `a reason for slot ${slot} at ${value}`;
    for (const [s, v] of literals)
      if (trail.bound[s]! < v || trail.entryOf(s, v) >= made) this.wrong.push(`${what} that did not stand`);
    if ([slot, ...literals.map(([s]) => s)].some((s) => this.spare.has(s >> 1))) return;
    for (const { values } of this.known) {
      this.checked++;
      if (!literals.every(([s, v]) => holds(values, s, v))) continue;
      if (slot < 0 || !holds(values, slot, value)) this.wrong.push(what);
    }
  };

  /** At least one of the literals must be true in every plan. */
  clause(literals: readonly number[], what: string): void {
    const { trail } = this.model.core;
    const pairs = literals.map((literal) => [trail.slotOf(literal), trail.valueOf(literal)] as const);
    if (pairs.some(([slot]) => this.spare.has(slot >> 1))) return;
    for (const { values } of this.known) {
      this.checked++;
      if (!pairs.some(([slot, value]) => holds(values, slot, value)))
        this.wrong.push(`${what} of ${pairs.length} literals`);
    }
  }
}

const holds = (values: Int32Array, slot: number, value: number): boolean =>
  ((slot & 1) === 0 ? values[slot >> 1]! : -values[slot >> 1]!) >= value;
