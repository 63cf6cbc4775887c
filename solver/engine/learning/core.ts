/**
 * The conflict-driven search: propagate to a fixpoint, decide, learn from what fails, restart.
 *
 * Decisions follow the activity of bound literals, on the side that the guide tells; before any conflict a `Branching` handed in chooses.
 * Assumptions are the first decisions; what is learned never depends on them. Work is counted, and the clock is the caller's.
 *
 * Source: Moskewicz et al. (2001), Chaff.
 */
import { Activity } from './activity.ts';
import { Analysis } from './analysis.ts';
import { Guide } from './guide.ts';
import { USUAL } from './manner.ts';
import { Propagation } from './propagation.ts';
import { Reasons } from './reasons.ts';
import { Restarts } from './restarts.ts';
import { Shaving } from './shaving.ts';
import { DECIDED } from './trail.ts';
import type { Manner } from './manner.ts';

/** Chooses a literal to decide when no active one is open. */
export interface Branching {
  /** @returns an undecided literal, or 0 when this branching has nothing left to decide */
  next(core: Core): number;
}

/** `solution`: all variables fixed, values readable. `refuted`: none under the assumptions. `spent`: the budget ended. */
export type Verdict = 'solution' | 'refuted' | 'spent' | 'stopped';

const CONFLICT_WORK = 50;
const POLL_WORK = 20_000;
/** Learned clauses above which half are dropped (measured on 30-task projects: half the conflicts of fewer). */
const LEARNED = 4000;

export class Core extends Propagation {
  readonly activity: Activity;
  readonly reasons: Reasons;
  readonly analysis: Analysis;
  readonly guide: Guide;

  conflicts = 0;
  decisions = 0;
  /** After `refuted`: assumptions that fail together; empty when nothing assumed is to blame. */
  failed: number[] = [];

  private learnedLimit = LEARNED;
  private readonly manner: Manner;
  private readonly shaving = new Shaving();
  /** Work when clauses were dropped last. */
  private droppedAt = 0;

  /**
   * @param largest no bound of any variable exceeds this in absolute value
   * @param manner how it searches
   */
  constructor(largest: number, manner: Manner = USUAL) {
    super(largest);
    this.manner = manner;
    this.activity = new Activity(this.trail, manner.growth);
    this.guide = new Guide(this.trail);
    this.reasons = new Reasons(this.trail, this.arcs, this.clauses, this.propagators);
    this.analysis = new Analysis(this.trail, this.reasons, this.activity, manner.named);
  }

  /** Work units so far: entries propagated, watches and arcs visited, propagator runs by their cost, 50 a conflict. */
  get work(): number {
    return this.propagated + CONFLICT_WORK * this.conflicts;
  }

  protected override widen(): void {
    this.activity.seal();
    this.analysis.seal();
    this.guide.seal();
  }

  private readonly undo = (level: number): void => {
    this.backtrack(level);
  };

  override backtrack(level: number): void {
    if (this.trail.level <= level) return;
    this.activity.restore(level);
    super.backtrack(level);
    this.guide.rescan();
  }

  private decide(literal: number): void {
    this.trail.newLevel();
    this.trail.setLiteral(literal, DECIDED);
    this.decisions++;
  }

  /**
   * Learns from the conflict and backjumps.
   * @param batch the level on which several assumptions stand, or −1
   * @returns false when the problem is refuted, or the assumptions are
   */
  private learnAndJump(batch: number): boolean {
    const { trail, analysis } = this;
    this.conflicts++;
    const level = trail.level === 0 ? 0 : analysis.learn(this.conflicts, this.undo, batch);
    if (level === 0) {
      this.dead = true;
      return false;
    }
    if (level === batch) {
      this.failed = analysis.failedTogether();
      this.activity.decay();
      this.backtrack(0);
      return false;
    }
    this.watch?.(analysis.clause, analysis.clauseSize);
    this.activity.decay();
    this.backtrack(analysis.backLevel);
    const literal = analysis.clause[0]!;
    if (analysis.clauseSize === 1) {
      if (!trail.setLiteral(literal, DECIDED) || !this.settleRoot()) {
        this.dead = true;
        return false;
      }
      return true;
    }
    const clause = this.clauses.add(analysis.clause, analysis.clauseSize, analysis.lbd, true, this.conflicts);
    trail.setLiteral(literal, clause << 2);
    return true;
  }
  /** Called with every learned clause, in tests. */
  watch: ((clause: Int32Array, size: number) => void) | null = null;

  /**
   * Searches for a solution under assumptions.
   * @param assumptions literals that must hold; what is learned holds without them
   * @param conflictBudget most conflicts of this call
   * @param workLimit the value of `work` at which to stop
   * @param restarts where the sequence of restarts stands, so that a search in slices restarts no more often than one in a piece
   * @param kept more assumptions, set all at once after the others: cheaper when there are many, but when they fail by themselves nothing is
   *   learned of it
   */
  solve(
    assumptions: readonly number[],
    branching: Branching,
    conflictBudget: number,
    workLimit: number,
    shouldStop: (() => boolean) | undefined,
    restarts: Restarts = new Restarts(),
    kept: readonly number[] = [],
  ): Verdict {
    const trail = this.trail;
    const batch = kept.length > 0 ? assumptions.length + 1 : -1;
    this.failed = [];
    this.backtrack(0);
    if (this.dead) return 'refuted';
    trail.reserveLevels(assumptions.length + 1);
    const lastConflict = this.conflicts + conflictBudget;
    let restartAt = this.conflicts + restarts.left;
    let pollAt = this.work + POLL_WORK;
    for (;;) {
      if (!this.propagate()) {
        if (!this.learnAndJump(batch)) return 'refuted';
        continue;
      }
      const work = this.work;
      if (work >= pollAt) {
        pollAt = work + POLL_WORK;
        if (shouldStop?.() === true) {
          this.backtrack(0);
          return 'stopped';
        }
      }
      if (this.conflicts >= lastConflict || work >= workLimit) {
        restarts.left = restartAt - this.conflicts;
        this.backtrack(0);
        return 'spent';
      }
      if (this.conflicts >= restartAt) {
        restartAt = this.conflicts + restarts.next();
        if (this.clauses.learnedCount > this.learnedLimit) {
          if (!this.dropLearned()) return 'refuted';
        } else this.backtrack(Math.max(assumptions.length, batch));
        continue;
      }
      if (trail.level < assumptions.length) {
        const literal = assumptions[trail.level]!;
        if (trail.isFalse(literal)) {
          this.failed = this.analysis.failed(literal);
          this.backtrack(0);
          return 'refuted';
        }
        this.decide(literal);
        continue;
      }
      if (trail.level < batch) {
        if (this.decideAll(kept)) continue;
        this.backtrack(0);
        return 'refuted';
      }
      const literal = this.choose(branching);
      if (literal === 0) return 'solution';
      this.decide(literal);
    }
  }

  /** Drops half the learned clauses, after new facts were sought with all of them; false when the core is dead. */
  private dropLearned(): boolean {
    this.backtrack(0);
    const share = this.manner.shaving;
    if (share > 0) this.shaving.run(this, this.work + share * (this.work - this.droppedAt));
    if (this.dead) return false;
    this.clauses.tidy(true);
    this.learnedLimit += this.manner.moreLearned;
    this.droppedAt = this.work;
    return true;
  }

  /** Makes an open literal false for good where propagation alone refutes it; returns whether it did. */
  shaves(literal: number): boolean {
    this.backtrack(0);
    this.decide(literal);
    if (this.propagate()) return false;
    this.learnAndJump(-1);
    return true;
  }

  /** Opens a level on which all the literals hold; false, with `failed` told, when one of them is false already. */
  private decideAll(literals: readonly number[]): boolean {
    this.trail.newLevel();
    this.decisions++;
    for (const literal of literals)
      if (!this.trail.setLiteral(literal, DECIDED)) {
        this.failed = this.analysis.failed(literal);
        return false;
      }
    return true;
  }

  /**
   * Sets literals all at once and lets the rest follow, without search.
   * @returns whether every variable is fixed without conflict; then values are readable
   */
  replay(literals: readonly number[], branching: Branching): boolean {
    this.backtrack(0);
    if (this.dead) return false;
    this.trail.reserveLevels(1);
    let fine = this.decideAll(literals);
    while (fine && (fine = this.propagate())) {
      const literal = this.choose(branching);
      if (literal === 0) return true;
      this.decide(literal);
    }
    this.backtrack(0);
    return false;
  }

  /** Next decision; 0 when every variable is fixed. */
  private choose(branching: Branching): number {
    const active = this.activity.next();
    if (active !== 0) return this.guide.side(active);
    return branching.next(this) || this.guide.next();
  }

  value(x: number): number {
    return this.trail.bound[2 * x]!;
  }
}
