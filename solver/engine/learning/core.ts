/**
 * The conflict-driven search: propagate to a fixpoint, decide, learn from what fails, restart.
 *
 * Decisions follow the activity of bound literals, with the side of the best plan first (solution-guided search), or the lower side where
 * the caller wants to leave that plan (rephasing); before any conflict a `Branching` handed in chooses. Assumptions are the first
 * decisions; what is learned never depends on them. Work is counted, and the clock is the caller's.
 *
 * Sources: Moskewicz et al. (2001); Beck (2007), Solution-guided multi-point constructive search; Demirović, Chu, Stuckey (2018);
 * Biere & Fleury (2020), Chasing target phases, for rephasing.
 */
import { Activity } from './activity.ts';
import { Analysis } from './analysis.ts';
import { Arcs } from './arcs.ts';
import { Clauses } from './clauses.ts';
import { USUAL } from './manner.ts';
import { Restarts } from './restarts.ts';
import { Shaving } from './shaving.ts';
import { DECIDED, Trail } from './trail.ts';
import { Wakes } from './wakes.ts';
import { widened } from './widened.ts';
import type { Manner } from './manner.ts';
import type { Propagator } from './propagator.ts';

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

export class Core {
  readonly trail: Trail;
  readonly clauses: Clauses;
  readonly arcs: Arcs;
  private readonly wakes = new Wakes();
  readonly activity: Activity;
  readonly analysis: Analysis;

  /** True once no solution exists whatever is assumed. */
  dead = false;
  conflicts = 0;
  decisions = 0;
  /** Value each variable has in the plan that guides the search; `guided` says whether there is one. */
  guide = new Int32Array(0);
  guided = false;
  /** Decisions take the lower side of each variable, not that of the guide. */
  goesLow = false;
  /** After `refuted`: assumptions that fail together; empty when nothing assumed is to blame. */
  failed: number[] = [];

  private readonly rootClauses: number[][] = [];
  private readonly rootUnits: number[] = [];
  /** Propagators that have run on the facts. */
  private settled = 0;
  private head = 0;
  private propagatorWork = 0;
  private entryWork = 0;
  private learnedLimit = LEARNED;
  private readonly manner: Manner;
  private readonly shaving = new Shaving();
  /** Work when clauses were dropped last. */
  private droppedAt = 0;
  private scan = 0;

  /**
   * @param largest no bound of any variable exceeds this in absolute value
   * @param manner how it searches
   */
  constructor(largest: number, manner: Manner = USUAL) {
    this.manner = manner;
    this.trail = new Trail(largest);
    this.clauses = new Clauses(this.trail);
    this.arcs = new Arcs(this.trail);
    this.activity = new Activity(this.trail, manner.growth);
    this.analysis = new Analysis(
      this.trail,
      this.arcs,
      this.clauses,
      this.wakes.propagators,
      this.activity,
      manner.named,
    );
  }

  /** Work units so far: entries propagated, watches and arcs visited, propagator runs by their cost, 50 a conflict. */
  get work(): number {
    return (
      this.entryWork + this.clauses.visits + this.arcs.visits + this.propagatorWork + CONFLICT_WORK * this.conflicts
    );
  }

  /** Adds a clause while building. */
  clause(...literals: number[]): void {
    const { alwaysTrue, alwaysFalse, negation } = this.trail;
    const kept: number[] = [];
    for (const literal of literals) {
      if (literal === alwaysTrue || kept.includes(literal ^ negation)) return;
      if (literal !== alwaysFalse && !kept.includes(literal)) kept.push(literal);
    }
    if (kept.length === 0) this.dead = true;
    else if (kept.length === 1) this.rootUnits.push(kept[0]!);
    else this.rootClauses.push(kept);
  }

  get propagators(): readonly Propagator[] {
    return this.wakes.propagators;
  }

  post(propagator: Propagator): void {
    this.wakes.post(propagator);
  }

  /**
   * Ends building: sizes the arrays, adds the clauses, propagates the facts. What was declared, said and posted since the last time joins a core
   * that was sealed before, which keeps all it has learned.
   */
  seal(): void {
    const trail = this.trail;
    this.backtrack(0);
    trail.seal();
    trail.reserveLevels(64);
    this.clauses.seal();
    this.arcs.seal();
    this.activity.seal();
    this.analysis.seal();
    this.guide = widened(this.guide, trail.variables);
    this.wakes.seal(trail.variables);
    for (const clause of this.rootClauses.splice(0)) this.addUnderFacts(clause);
    if (this.dead) return;
    for (const unit of this.rootUnits.splice(0))
      if (!trail.setLiteral(unit, DECIDED)) {
        this.dead = true;
        return;
      }
    // Clauses falsified or made unit by these are met when their watches are visited.
    this.dead = !this.arcs.propagateAll();
    for (const p of this.wakes.propagators.slice(this.settled)) this.wakes.wakeWhole(p);
    this.settled = this.wakes.propagators.length;
    if (!this.dead && !this.settleRoot()) this.dead = true;
  }

  /** Adds a clause of the problem without what is a fact already. */
  private addUnderFacts(clause: readonly number[]): void {
    const { root, negation, valueBits, mask, offset } = this.trail;
    let kept = clause;
    for (const literal of clause) {
      if (root[literal >>> valueBits]! >= (literal & mask) - offset) return;
      const off = literal ^ negation;
      if (root[off >>> valueBits]! >= (off & mask) - offset) kept = kept.filter((other) => other !== literal);
    }
    if (kept.length === 0) this.dead = true;
    else if (kept.length === 1) this.rootUnits.push(kept[0]!);
    else this.clauses.add(kept, kept.length, 1, false, 0);
  }

  /** Adds propagators over variables there are already; the core is dead when they contradict the facts. */
  extend(propagators: readonly Propagator[]): void {
    this.backtrack(0);
    if (this.dead) return;
    for (const p of propagators) this.post(p);
    this.settled = this.wakes.propagators.length;
    this.wakes.seal(this.trail.variables);
    for (const p of propagators) this.wakes.wakeWhole(p);
    if (!this.settleRoot()) this.dead = true;
  }

  /** Propagates to a fixpoint; false on conflict, told to the trail. */
  propagate(): boolean {
    const trail = this.trail;
    for (;;) {
      while (this.head < trail.entries) {
        const i = this.head++;
        this.entryWork++;
        const slot = trail.entrySlot[i]!;
        const old = trail.entryOld[i]!;
        const now = trail.entryNew[i]!;
        if (!this.clauses.propagate(slot, old, now)) return false;
        if (trail.last[slot] === i && !this.arcs.propagate(slot)) return false;
        if (!this.arcs.release(slot, old, now)) return false;
        this.wakes.wake(slot);
      }
      const p = this.wakes.next();
      if (p === null) return true;
      this.propagatorWork += p.cost;
      if (!p.propagate()) return false;
    }
  }

  private readonly undo = (level: number): void => {
    this.backtrack(level);
  };

  backtrack(level: number): void {
    const trail = this.trail;
    if (trail.level <= level) return;
    this.activity.restore(level);
    trail.backtrack(level);
    this.arcs.backtrack(level);
    if (this.head > trail.entries) this.head = trail.entries;
    this.wakes.backtrack(level);
    this.scan = 0;
  }

  /** Propagates at level 0 and makes the result facts. */
  private settleRoot(): boolean {
    if (!this.propagate()) return false;
    this.trail.absorbRoot();
    this.head = 0;
    return true;
  }

  /** Adds facts at level 0; the core is dead when they contradict. */
  addFact(literal: number): void {
    this.backtrack(0);
    if (this.dead) return;
    if (!this.trail.setLiteral(literal, DECIDED) || !this.settleRoot()) this.dead = true;
  }

  /** Drops clauses that the facts satisfy and literals that they falsify. */
  tidyFacts(): void {
    this.backtrack(0);
    if (!this.dead) this.clauses.tidy(false);
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
    const trail = this.trail;
    const active = this.activity.next();
    if (active !== 0) {
      const x = active >>> (trail.valueBits + 1);
      return !this.goesLow && this.guide[x]! >= trail.valueOf(active) ? active : active ^ trail.negation;
    }
    const next = branching.next(this);
    if (next !== 0) return next;
    // What is left follows the guide, or goes low.
    for (; this.scan < trail.variables; this.scan++) {
      const low = trail.bound[2 * this.scan]!;
      const high = -trail.bound[2 * this.scan + 1]!;
      if (low === high) continue;
      const aim = this.guided && !this.goesLow ? Math.min(high, Math.max(low, this.guide[this.scan]!)) : low;
      if (aim < high) return trail.literal(2 * this.scan + 1, -aim);
      return trail.literal(2 * this.scan, aim);
    }
    return 0;
  }

  /** After `solution`: makes the values the guide. */
  adoptGuide(): void {
    for (let x = 0; x < this.trail.variables; x++) this.guide[x] = this.trail.bound[2 * x]!;
    this.guided = true;
  }

  /** Whether a literal is true in the guide. */
  guides(literal: number): boolean {
    const slot = this.trail.slotOf(literal);
    const value = this.guide[slot >> 1]!;
    return ((slot & 1) === 0 ? value : -value) >= this.trail.valueOf(literal);
  }

  value(x: number): number {
    return this.trail.bound[2 * x]!;
  }
}
