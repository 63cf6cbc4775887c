/**
 * Clauses, arcs and propagators over one trail, brought to a fixpoint; what holds at level 0 becomes facts.
 *
 * What is declared, said and posted joins when the whole is sealed, and more may join later. Nothing is decided here: a search opens levels on the
 * trail, and leaves them by `backtrack`.
 */
import { Arcs } from './arcs.ts';
import { Clauses } from './clauses.ts';
import { DECIDED, Trail } from './trail.ts';
import { Wakes } from './wakes.ts';
import type { Propagator } from './propagator.ts';

export abstract class Propagation {
  readonly trail: Trail;
  readonly clauses: Clauses;
  readonly arcs: Arcs;
  private readonly wakes = new Wakes();

  /** True once no solution exists whatever is assumed. */
  dead = false;

  private readonly rootClauses: number[][] = [];
  private readonly rootUnits: number[] = [];
  /** Propagators that have run on the facts. */
  private settled = 0;
  private head = 0;
  private propagatorWork = 0;
  private entryWork = 0;

  /** @param largest no bound of any variable exceeds this in absolute value */
  constructor(largest: number) {
    this.trail = new Trail(largest);
    this.clauses = new Clauses(this.trail);
    this.arcs = new Arcs(this.trail);
  }

  /** Makes room for what a sealed trail has now: told whenever the whole is sealed. */
  protected abstract widen(): void;

  /** Work units so far: entries propagated, watches and arcs visited, propagator runs by their cost. */
  protected get propagated(): number {
    return this.entryWork + this.clauses.visits + this.arcs.visits + this.propagatorWork;
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
   * Ends building: sizes the arrays, adds the clauses, propagates the facts. What was declared, said and posted since the last time joins what
   * was sealed before; learned clauses stay.
   */
  seal(): void {
    const trail = this.trail;
    this.backtrack(0);
    trail.seal();
    trail.reserveLevels(64);
    this.clauses.seal();
    this.arcs.seal();
    this.widen();
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

  /** Adds propagators over variables there are already; all is dead when they contradict the facts. */
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

  /** Undoes everything above a level. */
  backtrack(level: number): void {
    const trail = this.trail;
    if (trail.level <= level) return;
    trail.backtrack(level);
    this.arcs.backtrack(level);
    if (this.head > trail.entries) this.head = trail.entries;
    this.wakes.backtrack(level);
  }

  /** Propagates at level 0 and makes the result facts. */
  protected settleRoot(): boolean {
    if (!this.propagate()) return false;
    this.trail.absorbRoot();
    this.head = 0;
    return true;
  }

  /** Adds facts at level 0; all is dead when they contradict. */
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
}
