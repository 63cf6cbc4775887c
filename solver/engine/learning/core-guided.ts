/**
 * The least value of a count, from below: which of its summands cannot all be at their least together?
 *
 * Each summand is first raised to its own least value. Then all are asked to stay at their least at once. When that is refuted, the summands
 * that the refutation needs are made one sum, at least one higher than they are together; and so on, until the question has a plan for an
 * answer, which then is a best one. Refutations of few summands make better sums, so each is made smaller first.
 *
 * Everything found is added to the core as facts, so the tiers above must be proven and be facts there.
 *
 * Sources: Andres, Kaufmann, Matheis, Schaub (2012), Unsatisfiability-based optimization in clasp; Morgado, Dodaro, Marques-Silva (2014),
 * Core-guided MaxSAT with soft cardinality constraints; Gange, Berg, Demirović, Stuckey (2020), Core-guided and core-boosted search for CP.
 */
import { Restarts } from './restarts.ts';
import type { Verdict } from './core.ts';
import { sealedAtLeast } from './model/model.ts';
import type { Model } from './model/model.ts';
import type { CountedTier } from './model/tiers.ts';
import { Linear } from './propagators/linear.ts';

/** Conflicts of one question: about one summand, about all, and with one left out of a refutation. */
const ALONE = 2000;
const TOGETHER = 2000;
const WITHOUT = 500;
/** A question about all that is not answered is asked again with so many more. */
const GROWTH = 1.5;

/** Asks the core for a plan under literals, for no more than so many conflicts. */
export type Ask = (literals: readonly number[], conflicts: number, restarts: Restarts) => Verdict;

/** A summand held at a value that was its least. */
interface Held {
  readonly x: number;
  readonly value: number;
}

interface Question {
  readonly held: readonly Held[];
  left: number;
  readonly restarts: Restarts;
}

type Phase = { readonly kind: 'alone' | 'together' } | { readonly kind: 'without'; readonly place: number };

export class CoreGuided {
  private readonly model: Model;
  private readonly tier: CountedTier;
  /** Summands that make up the count now. */
  private terms: readonly number[];
  private spareUsed = 0;
  /** Summands still to be asked about alone. */
  private alone: number[];
  private phase: Phase = { kind: 'alone' };
  private question: Question | null = null;
  /** Questions about all that were not answered since the last that was. */
  stalls = 0;
  /** The last question had a plan for an answer, and what follows from that is still to be drawn: first the plan must be read. */
  private met: Question | null = null;
  /** A refutation being made smaller. */
  private refuted: readonly Held[] = [];
  private together = TOGETHER;

  constructor(model: Model, tier: CountedTier) {
    this.model = model;
    this.tier = tier;
    this.terms = tier.count.summands;
    this.alone = [...this.terms];
    model.core.tidyFacts();
  }

  /** The count is at least this. */
  get bound(): number {
    return this.terms.reduce((sum, x) => sum + this.least(x), this.tier.count.shift);
  }

  private least(x: number): number {
    return this.model.core.trail.root[2 * x]!;
  }

  /**
   * Works on for one slice.
   *
   * @param conflicts most conflicts of this slice
   * @param ask poses the questions
   * @returns `solution`: the core stands at a plan (the best there is when its count is `bound`). `refuted`: `bound` may have risen
   */
  work(conflicts: number, ask: Ask): Verdict {
    const { core } = this.model;
    if (this.met !== null) this.answered(this.met, 'solution');
    this.met = null;
    if (core.dead) return 'refuted';
    this.question ??= this.pose();
    const { question } = this;
    const before = core.conflicts;
    const literals = question.held.map((held) => this.literal(held)).filter((l) => l !== core.trail.alwaysTrue);
    const verdict = ask(literals, Math.min(conflicts, question.left), question.restarts);
    question.left -= core.conflicts - before;
    if (verdict === 'stopped' || core.dead) return verdict;
    if (verdict === 'spent' && question.left > 0) return verdict;
    this.question = null;
    if (verdict === 'solution') this.met = question;
    else this.answered(question, verdict);
    return verdict;
  }

  private literal({ x, value }: Held): number {
    const { trail } = this.model.core;
    return sealedAtLeast(trail, x, value + 1) ^ trail.negation;
  }

  /** The next question of the phase. */
  private pose(): Question {
    const { phase } = this;
    switch (phase.kind) {
      case 'alone':
        return question(this.atLeast(this.alone.slice(0, 1)), ALONE);
      case 'together':
        return question(this.atLeast(this.terms), this.together);
      case 'without':
        return question(
          this.refuted.filter((_, place) => place !== phase.place),
          WITHOUT,
        );
    }
  }

  private atLeast(variables: readonly number[]): Held[] {
    return variables.map((x) => ({ x, value: this.least(x) }));
  }

  private answered(question: Question, verdict: Verdict): void {
    const { phase } = this;
    switch (phase.kind) {
      case 'alone':
        if (verdict === 'refuted') this.raise(question.held);
        else this.alone.shift();
        if (this.alone.length > 0) return;
        this.model.core.tidyFacts();
        this.phase = { kind: 'together' };
        return;
      case 'together':
        if (verdict === 'refuted') this.shrink(question, 0);
        else this.together = Math.ceil(this.together * GROWTH);
        this.stalls = verdict === 'spent' ? this.stalls + 1 : 0;
        return;
      case 'without':
        if (verdict === 'refuted') this.shrink(question, 0);
        else this.shrink(null, phase.place + 1);
    }
  }

  /** One summand cannot be at the value. */
  private raise(held: readonly Held[]): void {
    const { core } = this.model;
    for (const { x, value } of held) core.addFact(sealedAtLeast(core.trail, x, value + 1));
  }

  /**
   * Tries to leave out of the refutation what stands from a place on; once nothing more can be tried, draws the conclusion.
   * @param question the refuted question, where there is a new one
   */
  private shrink(question: Question | null, place: number): void {
    if (question !== null) {
      const failed = new Set(this.model.core.failed);
      this.refuted = question.held.filter((held) => failed.has(this.literal(held)));
    }
    const { refuted } = this;
    if (refuted.length > 1 && place < refuted.length) {
      this.phase = { kind: 'without', place };
      return;
    }
    this.phase = { kind: 'together' };
    if (refuted.length === 1) this.raise(refuted);
    else if (refuted.length > 1) this.unite(refuted);
  }

  /** Makes one summand of several that cannot all be at their values together. */
  private unite(parts: readonly Held[]): void {
    const { core } = this.model;
    const whole = this.tier.count.spare[this.spareUsed++]!;
    const least = parts.reduce((sum, { value }) => sum + value, 1);
    const variables = parts.map(({ x }) => x);
    this.terms = [...this.terms.filter((x) => !variables.includes(x)), whole];
    core.extend([this.sum(variables, 1, whole, 0), this.sum(variables, -1, whole, 0), this.tierIsTheirSum()]);
    if (!core.dead) core.addFact(sealedAtLeast(core.trail, whole, least));
  }

  /** The tier is at least the sum of its terms. */
  private tierIsTheirSum(): Linear {
    const { parts, least, count } = this.tier;
    return this.sum(this.terms, 1, parts[0]!.x, least - count.shift);
  }

  /** Σ variables ≤ x + limit; the other way round with sign −1. */
  private sum(variables: readonly number[], sign: 1 | -1, x: number, limit: number): Linear {
    const { trail } = this.model.core;
    const [low, high] = sign === 1 ? [0, 1] : [1, 0];
    const terms = variables.map((variable) => ({ slot: 2 * variable + low, coefficient: 1 }));
    return new Linear(trail, [...terms, { slot: 2 * x + high, coefficient: 1 }], limit, trail.alwaysTrue);
  }
}

function question(held: readonly Held[], conflicts: number): Question {
  return { held, left: conflicts, restarts: new Restarts() };
}
