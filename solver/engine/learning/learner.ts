/**
 * The learner that an outer search drives in slices: a proof that chooses how to work on. Hand in plans with `offer`, call `improve`
 * until it is `done`, and read `best`, `values`, `bounds` and `outcomes` at any time.
 */
import { Proof } from './proof.ts';
import { isLargeProject } from '../project/large.ts';
import { Target } from './target.ts';
import type { SolveOptions } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import type { Slice, Step } from './proof.ts';

/** The learner's work units are this much smaller than the ensemble's, in which effort is counted (measured on kitchen problems). */
export const LEARNER_UNITS = 20;
/** Conflicts between looks at the effort and the caller, where both are looked at often. */
export const SLICE = 250;

/** Conflicts of one neighbourhood, and work units of a turn of them. */
const NEARBY = 200;
const NEARBY_WORK = 2_000_000;
/** After so many neighbourhoods without gain their share is halved. */
const PATIENCE = 15;

/** Work on a count from below, as a multiple of all other on it: there lies the proof. It falls while answers from below fail to come (1 to 2 are alike over 16 seeds of a household). */
const RAISING = 1;

/** Conflicts from above after which the search turns from the best plan or back to it (measured on household kitchens, ten seeds). */
const LEAVING = 600;

/** Conflicts on the first tier after which it is worth a linear program to know what can be in progress together. */
const LONG_PROOF = 750;

/** How much neighbourhoods are liked where no choice is open: there they do little for the proof (and targets nothing, measured on 30-task projects). */
const PLAIN_LIKING = 0.15;
/** And where the project is large: neither a proof nor a better plan far from the best one is to be hoped for there. */
const LARGE_LIKING = 4;
const LARGE_PATIENCE = 150;

export class Learner extends Proof {
  private readonly liking: number;
  private readonly patience: number;
  /** Whether targets between bound and value are worth their work. */
  private readonly aims: boolean;
  /** The tier that the counts below are of, and the work units given to each way of searching on it. */
  private worked = -1;
  private spentOn = { above: 0, near: 0, aimed: 0, raised: 0 };
  /** Conflicts from above on the tier. */
  private conflictsAbove = 0;
  /** Neighbourhoods since the last better plan. */
  private dry = 0;
  private target = new Target();
  /** Whether the proof was already long enough to be weighed. */
  private weighed = false;

  /**
   * @param problem a problem that `validateProblem` accepts
   * @param seed of the search's chance
   */
  constructor(problem: Problem, seed: number) {
    super(problem, seed);
    const large = isLargeProject(problem);
    this.aims = problem.choices.length > 0;
    this.liking = large ? LARGE_LIKING : this.aims ? 1 : PLAIN_LIKING;
    this.patience = large ? LARGE_PATIENCE : PATIENCE;
  }

  private begin(): void {
    this.worked = this.tier;
    this.spentOn = { above: 0, near: 0, aimed: 0, raised: 0 };
    this.conflictsAbove = 0;
    this.dry = 0;
    this.target = new Target();
  }

  /**
   * Works on for one slice: from below where the tier is a count, at a target between bound and value where it is not, near the best plan, or
   * from above, each by its share of the work so far.
   * The shares of targets and neighbourhoods fall while they lead nowhere, so that a long proof is left to itself.
   */
  improve(slice: Slice): Step {
    if (this.tier !== this.worked) this.begin();
    if (this.best === null || this.done || this.problem.tiers.length === 0) return this.descend(slice);
    const { core } = this.model;
    if (this.isLong) {
      this.weighed = true;
      this.weigh(slice.shouldStop);
      if (this.done) return 'done';
    }
    const spent = this.spentOn;
    const before = core.work;
    const value = this.values[this.tier]!;
    const bound = this.bounds[this.tier]!;
    const near = this.liking / (1 + (this.dry / this.patience) ** 2);
    let step: Step;
    // Targets in between teach little of a count: asking from below has them all in it.
    const counted = this.raisable;
    if (counted && spent.raised <= (RAISING / (1 + this.stalls)) * (spent.above + spent.near + spent.aimed)) {
      step = this.raise(slice);
      spent.raised += core.work - before;
    } else if (
      this.aims &&
      !counted &&
      value - bound > 1 &&
      spent.aimed <= (spent.above + spent.near) * this.target.share
    ) {
      const aim = this.aim.bind(this);
      step = this.target.ask(bound, value, slice, aim, () => core.conflicts);
      spent.aimed += core.work - before;
    } else if (spent.near < spent.above * near) {
      step = this.nearby(slice);
      spent.near += core.work - before;
    } else {
      step = this.fromAbove(slice);
      spent.above += core.work - before;
    }
    return step;
  }

  /** Whether a project's proof on the first tier has become long. */
  private get isLong(): boolean {
    const { core } = this.model;
    return !this.weighed && this.tier === 0 && core.conflicts >= LONG_PROOF && this.problem.choices.length === 0;
  }

  /** On a count the search leaves the best plan now and then: fewest changes may ask for quite another order. */
  private fromAbove(slice: Slice): Step {
    const { core } = this.model;
    const before = core.conflicts;
    core.guide.goesLow = this.raisable && Math.floor(this.conflictsAbove / LEAVING) % 2 === 0;
    const step = this.descend(slice);
    core.guide.goesLow = false;
    this.conflictsAbove += core.conflicts - before;
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
}

/**
 * A learner with its model built, which `onModel` is told of.
 *
 * @param problem a problem that `validateProblem` accepts
 */
export function builtLearner(problem: Problem, { seed, onModel }: SolveOptions): Learner {
  onModel?.(false);
  const learner = new Learner(problem, seed);
  onModel?.(true);
  return learner;
}
