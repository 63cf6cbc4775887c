/**
 * The learner that an outer search drives in slices: a proof that chooses how to work on. Hand in plans with `offer`, call `improve`
 * until it is `done`, and read `best`, `values`, `bounds` and `outcomes` at any time.
 */
import { Proof } from './proof.ts';
import type { Problem } from '../problem.ts';
import type { Slice, Step } from './proof.ts';

/** Conflicts of one neighbourhood, and work units of a turn of them. */
const NEARBY = 200;
const NEARBY_WORK = 2_000_000;
/** After so many neighbourhoods without gain their share is halved. */
const PATIENCE = 15;
/** Work from below, as a share of that from above. */
const BELOW = 0.15;

/** How much neighbourhoods and work from below are liked where no choice is open: there they do little for the proof. */
const PLAIN_LIKING = 0.15;

export class Learner extends Proof {
  private readonly liking: number;
  /** The tier that the counts below are of, and the work units given to each way of searching on it. */
  private worked = -1;
  private spentOn = { above: 0, near: 0, below: 0 };
  /** Neighbourhoods since the last better plan, and turns from below since the last risen bound. */
  private dry = 0;
  private stuck = 0;

  /**
   * @param problem a problem that `validateProblem` accepts
   * @param seed of the search's chance
   */
  constructor(problem: Problem, seed: number) {
    super(problem, seed);
    this.liking = problem.choices.length > 0 ? 1 : PLAIN_LIKING;
  }

  private begin(): void {
    this.worked = this.tier;
    this.spentOn = { above: 0, near: 0, below: 0 };
    this.dry = 0;
    this.stuck = 0;
  }

  /**
   * Works on for one slice: from above, near the best plan, or from below, each by its share of the work so far. The share of the
   * neighbourhoods falls while they find nothing, so that a long proof is left to itself.
   */
  improve(slice: Slice): Step {
    if (this.tier !== this.worked) this.begin();
    const spent = this.spentOn;
    const { core } = this.model;
    const before = core.work;
    const near = this.liking / (1 + (this.dry / PATIENCE) ** 2);
    const nearest = spent.near < spent.above * near;
    const below = spent.below < (spent.above * this.liking * BELOW) / (1 + this.stuck ** 2) && this.canRaise();
    let step: Step;
    if (this.best === null || this.problem.tiers.length === 0 || (!nearest && !below)) {
      step = this.descend(slice);
      spent.above += core.work - before;
    } else if (nearest) {
      step = this.nearby(slice);
      spent.near += core.work - before;
    } else {
      step = this.raise(slice);
      this.stuck = step === 'raised' ? 0 : this.stuck + 1;
      spent.below += core.work - before;
    }
    return step;
  }

  /** Small neighbourhoods until one is better or a part of the slice is used up. */
  private nearby(slice: Slice): Step {
    const { core } = this.model;
    const until = core.conflicts + slice.conflicts;
    const workUntil = core.work + Math.min(slice.work ?? Infinity, NEARBY_WORK);
    do {
      const conflicts = Math.min(NEARBY, until - core.conflicts);
      const step = this.relax({ ...slice, conflicts, work: workUntil - core.work });
      this.dry = step === 'improved' ? 0 : this.dry + 1;
      if (step !== 'spent') return step;
    } while (core.conflicts < until && core.work < workUntil);
    return 'spent';
  }

  /** A sum's bound rises a unit at a time, which leads nowhere over a wide range. */
  private canRaise(): boolean {
    const gap = this.values[this.tier]! - this.bounds[this.tier]!;
    return gap > 1 && this.model.tiers[this.tier]!.parts.length === 1;
  }
}
