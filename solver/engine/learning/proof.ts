/**
 * A resumable proof: takes plans from outside, finds better ones, and closes one objective tier after the other. Four ways to work
 * on: from above (`descend`), near the best plan (`relax`), at a target in between (`aim`) and, where the tier is a count, from below by what
 * it is made of (`raise`); `learner.ts` chooses among them.
 *
 * "Better than v" is the assumption ⟦tier ≤ v − 1⟧ and a finished tier's value is the assumption ⟦tier ≤ v⟧, so what is learned stays true
 * throughout. A refuted assumption is a bound.
 */
import { less, tierValues } from '../tier-values.ts';
import { verifySolution } from '../verify-solution.ts';
import { CoreGuided } from './core-guided.ts';
import { Restarts } from './restarts.ts';
import type { Verdict } from './core.ts';
import { Random } from '../random.ts';
import { neighbourhood, orderOf } from './neighbourhood.ts';
import { Model, sealedAtLeast } from './model/model.ts';
import type { Problem } from '../problem.ts';
import type { Solution, TierOutcome } from '../outcome.ts';

/**
 * `improved`: a better plan was found (read `best`). `closed`: a tier was proven and the next begins. `raised`: a bound rose. `done`: every
 * modelled tier is proven. `impossible`: there is no plan. `spent`, `stopped`: nothing new within the budget, or told to stop.
 */
export type Step = 'improved' | 'closed' | 'raised' | 'done' | 'impossible' | 'spent' | 'stopped';

export interface Slice {
  /** Most conflicts of this slice. */
  readonly conflicts: number;
  /** Most work units of this slice; no limit where not given. */
  readonly work?: number;
  readonly shouldStop?: () => boolean;
}

/** Most conflicts and work units to find the values that a plan leaves open. */
const REPLAY_CONFLICTS = 200;
const REPLAY_WORK = 10_000_000;

/** Most conflicts to refute a value by propagation, as good as without search. */
const FEW_CONFLICTS = 3;

export class Proof {
  readonly problem: Problem;
  readonly model: Model;
  best: Solution | null = null;
  /** Tier values of `best`. */
  values: number[] = [];
  /** Proven lower bound of each tier, given the best of the tiers above. */
  readonly bounds: number[];
  impossible = false;
  /** The tier being worked on; the number of tiers when all are done. */
  tier = 0;

  protected readonly random: Random;
  private readonly restarts = new Restarts();
  /** Share of the tasks that a neighbourhood frees. */
  private freeShare = 0.2;
  /** Whether the guide is the best plan in full. */
  private guideWhole = false;
  /** Of the tier worked on, once it was asked from below. */
  private guided: CoreGuided | null = null;

  /**
   * @param problem a problem that `validateProblem` accepts
   * @param seed of small differences in activity and of the neighbourhoods, so that several do not search alike
   */
  constructor(problem: Problem, seed: number) {
    this.problem = problem;
    this.random = new Random(seed);
    this.model = new Model(problem, false, false);
    this.bounds = this.model.tiers.map((tier) => tier.least);
    if (!this.model.tooLarge) {
      this.model.core.activity.sprinkle(seed);
      this.impossible = this.model.core.dead;
      this.readRoot();
    }
  }

  /** Work units spent so far. */
  get work(): number {
    return this.model.core.work;
  }

  get done(): boolean {
    return this.best !== null && this.tier >= this.problem.tiers.length;
  }

  /**
   * Takes a plan found elsewhere; it becomes the guide and the bound when it is better than the best so far.
   * @returns false when it is not a solution of this problem or no better
   */
  offer(solution: Solution): boolean {
    if (verifySolution(this.problem, solution).length > 0) return false;
    const values = tierValues(this.problem, solution);
    if (this.best !== null && !less(values, this.values)) return false;
    this.accept(solution, values);
    this.guideBy(solution);
    return true;
  }

  /** Puts a plan's full assignment into the guide by replaying it. */
  private guideBy(solution: Solution): void {
    const { core, branching, tooLarge } = this.model;
    if (tooLarge || core.dead) return;
    const literals = this.model.literalsOf(solution);
    this.guideWhole =
      core.replay(literals, branching) ||
      core.solve(literals, branching, REPLAY_CONFLICTS, core.work + REPLAY_WORK, undefined) === 'solution';
    if (this.guideWhole) {
      core.guide.adopt();
      return;
    }
    // Refuted here only where symmetric work stands in another order: the plan's own variables still guide.
    core.guide.follow(literals);
  }

  private accept(solution: Solution, values: number[]): void {
    const changed = this.best === null ? 0 : values.findIndex((value, k) => value !== this.values[k]);
    this.best = solution;
    this.values = values;
    // Bounds below the tier that got better were proved for another ground.
    for (let k = changed + 1; k < values.length; k++) {
      this.bounds[k] = this.model.tiers[k]!.least;
      this.tier = Math.min(this.tier, changed + 1);
    }
    this.readRoot();
    this.skipProven();
  }

  /** Lower bounds that are facts. */
  private readRoot(): void {
    this.model.tiers.forEach((tier, k) => {
      const { root } = this.model.core.trail;
      const fact = tier.parts.reduce((sum, part) => sum + part.factor * root[2 * part.x]!, tier.least);
      // Of two parts the fine one may stand high for no reason of the tier's, so only the coarse one counts.
      const sure = tier.parts.length === 1 ? fact : tier.least;
      this.bounds[k] = Math.max(this.bounds[k]!, sure);
    });
  }

  /** Moves on from tiers that are proven; ends at one that cannot be modelled, since those below it cannot be asked about. */
  private skipProven(): void {
    if (this.model.tooLarge) return;
    while (this.best !== null && this.tier < this.values.length) {
      const last = this.tier === this.values.length - 1;
      const proven = this.values[this.tier]! <= this.bounds[this.tier]!;
      if (this.model.tiers[this.tier]!.parts.length === 0 && !(proven && last)) this.deepen();
      if (this.model.tiers[this.tier]!.parts.length === 0) this.tier = this.values.length;
      else if (proven) this.tier++;
      else return;
    }
  }

  /** Gives the model the tiers that it was first built without. */
  private deepen(): void {
    if (this.best !== null && this.model.addChanges()) this.guideBy(this.best);
  }

  /** Gives up on the current tier's proof: the next one is worked on under its best value. */
  pass(): void {
    if (this.best === null || this.done) return;
    this.tier++;
    this.skipProven();
  }

  /** Literals that together say that tier k is at most the value. */
  private atMost(k: number, value: number): number[] {
    const { trail } = this.model.core;
    const { parts, least } = this.model.tiers[k]!;
    let left = value - least;
    return parts.map(({ x, factor }) => {
      const share = Math.floor(left / factor);
      left -= share * factor;
      return sealedAtLeast(trail, x, share + 1) ^ trail.negation;
    });
  }

  private assumptions(): number[] {
    const list = this.upperTiers();
    if (this.best !== null && this.tier < this.values.length)
      list.push(...this.atMost(this.tier, this.values[this.tier]! - 1));
    return list.filter((literal) => literal !== this.model.core.trail.alwaysTrue);
  }

  /** The tiers above the current one, at most at their values. */
  private upperTiers(): number[] {
    const list: number[] = [];
    for (let k = 0; k < this.tier; k++) if (this.best !== null) list.push(...this.atMost(k, this.values[k]!));
    return list.filter((literal) => literal !== this.model.core.trail.alwaysTrue);
  }

  /** The plan that the core stands at becomes the best. */
  private take(): Step {
    this.model.core.guide.adopt();
    this.guideWhole = true;
    const solution = this.model.solution();
    const values = tierValues(this.problem, solution);
    if (this.best !== null && !less(values, this.values))
      throw new Error(`a plan no better than the best was found: ${values.join()} after ${this.values.join()}`);
    const tier = this.tier;
    this.accept(solution, values);
    if (this.tier === tier && this.problem.tiers[tier]?.kind === 'latest') this.pushEarly();
    return 'improved';
  }

  /**
   * Keeps the choices and orders of the best plan, just found, and lets everything be as early as they let it; that becomes the best where it
   * is better. Search guided by a plan stops at the first gain, often one minute, where the same orders would give a hundred.
   */
  private pushEarly(): void {
    const { core, branching } = this.model;
    if (this.best === null) return;
    core.guide.goesLow = true;
    const stands = core.replay(orderOf(this.model, this.best), branching);
    core.guide.goesLow = false;
    if (!stands) return;
    const solution = this.model.solution();
    const values = tierValues(this.problem, solution);
    if (!less(values, this.values)) return;
    core.guide.adopt();
    this.accept(solution, values);
  }

  /** Why there is nothing to ask; null where there is. */
  private get idle(): 'spent' | 'impossible' | 'done' | null {
    if (this.model.tooLarge) return 'spent';
    if (this.impossible) return 'impossible';
    return this.done ? 'done' : null;
  }

  /** Asks the core for a solution under a goal for one slice. */
  private ask(goal: readonly number[], slice: Slice, restarts: Restarts, kept: readonly number[] = []): Verdict {
    const { core, branching } = this.model;
    const workLimit = slice.work === undefined ? Infinity : core.work + slice.work;
    return core.solve(goal, branching, slice.conflicts, workLimit, slice.shouldStop, restarts, kept);
  }

  /** Works on for one slice. */
  descend(slice: Slice): Step {
    if (this.idle !== null) return this.idle;
    const verdict = this.ask(this.assumptions(), slice, this.restarts);
    switch (verdict) {
      case 'solution':
        return this.take();
      case 'refuted':
        return this.refuted();
      case 'spent':
      case 'stopped':
        this.readRoot();
        this.skipProven();
        return verdict;
    }
  }

  /**
   * Asks for one slice for a plan whose current tier is at most `target`: refuted, the bound rises above it; found, the plan is the best.
   * @param target from the tier's bound to one below its value
   * @param restarts of the whole question, when it is asked in several slices
   */
  aim(target: number, slice: Slice, restarts: Restarts): Step {
    if (this.idle !== null) return this.idle;
    const verdict = this.ask([...this.upperTiers(), ...this.atMost(this.tier, target)], slice, restarts);
    switch (verdict) {
      case 'solution':
        return this.take();
      case 'refuted':
        if (this.model.core.dead) return this.refuted();
        this.bounds[this.tier] = Math.max(this.bounds[this.tier]!, target + 1);
        this.readRoot();
        return this.best !== null && this.bounds[this.tier]! >= this.values[this.tier]! ? this.nextTier() : 'raised';
      case 'spent':
      case 'stopped':
        return verdict;
    }
  }

  /** Whether the tier can be raised: it is a count, and all tiers above are proven. */
  get raisable(): boolean {
    return (
      this.best !== null &&
      this.tier < this.values.length &&
      this.model.tiers[this.tier]!.count !== undefined &&
      this.values.every((value, k) => k >= this.tier || value <= this.bounds[k]!)
    );
  }

  /** How often in a row the tier was asked from below without an answer. */
  protected get stalls(): number {
    return this.guided?.stalls ?? 0;
  }

  /** Raises the bound of a `raisable` tier for one slice; finds a best plan where it meets one. */
  raise(slice: Slice): Step {
    if (this.idle !== null) return this.idle;
    const { core } = this.model;
    if (this.guided === null) {
      for (const literal of this.upperTiers()) core.addFact(literal);
      if (core.dead) return this.refuted();
      const tier = this.model.tiers[this.tier]!;
      this.guided = new CoreGuided(this.model, { ...tier, count: tier.count! });
    }
    const verdict = this.guided.work(slice.conflicts, (literals, conflicts, restarts) =>
      this.ask(literals, { ...slice, conflicts }, restarts),
    );
    if (core.dead) return this.refuted();
    if (verdict === 'solution' && less(tierValues(this.problem, this.model.solution()), this.values))
      return this.take();
    return this.raiseTo(this.guided.bound) ?? (verdict === 'stopped' ? 'stopped' : 'spent');
  }

  /** @returns null where the bound is no higher than it was */
  private raiseTo(bound: number): Step | null {
    if (bound <= this.bounds[this.tier]!) return null;
    this.bounds[this.tier] = bound;
    const { parts, least } = this.model.tiers[this.tier]!;
    this.model.core.addFact(sealedAtLeast(this.model.core.trail, parts[0]!.x, bound - least));
    return bound >= this.values[this.tier]! ? this.nextTier() : 'raised';
  }

  /**
   * Looks for a better plan near the best one for one slice: most of its orders and choices are kept.
   * @returns `spent` also when there is none near
   */
  relax(slice: Slice): Step {
    if (this.model.tooLarge || this.best === null || this.done) return this.descend(slice);
    const goal = this.assumptions();
    const kept = this.guideWhole ? neighbourhood(this.model, this.best, this.freeShare, this.random) : [];
    const verdict = this.ask(goal, slice, new Restarts(), kept);
    // Fully searched: look wider; not even that: narrower.
    if (verdict === 'refuted') this.freeShare = Math.min(0.8, this.freeShare * 1.03);
    if (verdict === 'spent') this.freeShare = Math.max(0.03, this.freeShare * 0.97);
    switch (verdict) {
      case 'solution':
        return this.take();
      case 'refuted':
        // The goal alone is to blame: no plan anywhere is better.
        return this.model.core.failed.every((literal) => goal.includes(literal)) ? this.refuted() : 'spent';
      case 'spent':
      case 'stopped':
        return verdict;
    }
  }

  /**
   * Adds to a long proof what can be in progress together (see `Model.addEnergyWindows`), and raises the bound as far as that alone does. For
   * the first tier, once there is a plan.
   */
  protected weigh(shouldStop?: () => boolean): void {
    if (!this.model.addEnergyWindows(shouldStop)) return;
    while (this.aim(this.bounds[0]!, { conflicts: FEW_CONFLICTS }, new Restarts()) === 'raised');
  }

  private refuted(): Step {
    if (this.best === null) {
      this.impossible = true;
      return 'impossible';
    }
    this.bounds[this.tier] = this.values[this.tier]!;
    return this.nextTier();
  }

  private nextTier(): Step {
    this.guided = null;
    this.skipProven();
    if (this.done) return 'done';
    this.model.core.activity.reset();
    return 'closed';
  }

  /** Each tier's value and bound; only while there is a plan. */
  outcomes(): TierOutcome[] {
    let above = true;
    return this.problem.tiers.map((tier, k) => {
      const value = this.values[k]!;
      const bound = Math.min(value, this.bounds[k]!);
      const proven = above && bound === value;
      above = proven;
      return { id: tier.id, value, bound, proven };
    });
  }
}
