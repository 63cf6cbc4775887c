/**
 * The ensemble and the learner together. Schedule generation and neighbourhoods give the first plans and good ones soon, on multi-mode
 * and large projects an evolution; the conflict-learning engine takes them over, improves them and proves. They take turns, each turn
 * longer than the one before, and hand each other the best plan. Effort is counted, not timed: the same problem, seed and effort give the same outcome.
 */
import { builtLearner, LEARNER_UNITS, SLICE } from './learning/learner.ts';
import type { Learner } from './learning/learner.ts';
import { RULED_OUT } from './exhausted.ts';
import type { Outcome, Solution, Solve, SolveOptions, TierOutcome, TraceRow } from './outcome.ts';
import type { Problem } from './problem.ts';
import { EvolutionTurns } from './project/turns.ts';
import { solveValid as solveByEnsemble } from './solve.ts';
import { tierValues } from './tier-values.ts';
import { BIG_OPENING, TurnLengths } from './turn-lengths.ts';
import { validateProblem } from './validate-problem.ts';
import { verifySolution } from './verify-solution.ts';

/** Share of the effort left that a tier may take before the next one gets its turn. */
const TIER_SHARE = 0.7;

/**
 * Solves a problem with both engines.
 *
 * @param problem see `problem.ts`; faults throw `ProblemFault`
 * @param options effort and seed decide everything; see `SolveOptions`
 * @returns proven or bounded with a plan; impossible after proof; unknown where nothing was found
 */
export const solveTogether: Solve = (problem, options) => new Team(problem, options).run();

class Team {
  readonly #trace: TraceRow[] = [];
  #ensembleWork = 0;
  #best: Solution | null = null;
  #firstBound = 0;
  #learner: Learner | null = null;
  /** Of a multi-mode project or a large plain one; takes the ensemble's turns from the second on. */
  #evolution: EvolutionTurns | null;
  readonly #turns: TurnLengths;

  constructor(
    private readonly problem: Problem,
    private readonly options: SolveOptions,
  ) {
    this.#best = options.start ?? null;
    validateProblem(problem);
    this.#evolution = EvolutionTurns.ofModes(problem, options.seed);
    this.#turns = new TurnLengths(problem, this.#best !== null || this.#evolution !== null);
  }

  get #spent(): number {
    return this.#ensembleWork + Math.floor((this.#learner?.work ?? 0) / LEARNER_UNITS);
  }

  get #left(): number {
    return this.options.effort - this.#spent;
  }

  #told(): boolean {
    return this.options.shouldStop?.() === true;
  }

  run(): Outcome {
    const turns = this.#turns;
    /** Spent when the tier that the learner works on began. */
    let ground = 0;
    for (let round = 0; ; round++) {
      const ended =
        this.#evolution === null || round === 0
          ? this.#ensembleTurn(Math.min(turns.ensemble, this.#left), round)
          : null;
      if (ended !== null) return ended;
      // Where schedule generation finds no plan, search that can step back goes on.
      if (turns.isLarge && this.#best !== null && round === 0)
        this.#evolution = EvolutionTurns.ofPlain(this.problem, this.options.seed);
      const evolution = this.#evolution;
      if (evolution !== null)
        this.#evolutionTurn(evolution, Math.min(round === 0 ? turns.evolutionOpening : turns.ensemble, this.#left));
      // The ensemble's bounds may settle what the learner would have to prove by itself.
      if (turns.isLarge && this.#meetsFirstBound) {
        const settled = this.#ensembleTurn(Math.min(BIG_OPENING, this.#left), round);
        if (settled !== null) return settled;
      }
      this.#learner ??= builtLearner(this.problem, this.options);
      const learner = this.#learner;
      const gains = this.#best !== null && learner.offer(this.#best);
      ground = this.#learnerTurn(learner, turns.learner, ground);
      if (learner.done || learner.impossible || this.#left <= 0 || this.#told()) break;
      turns.next(gains, evolution !== null, !learner.model.tooLarge);
    }
    return this.#outcome(this.#learner);
  }

  get #meetsFirstBound(): boolean {
    return this.#best !== null && tierValues(this.problem, this.#best)[0]! <= this.#firstBound;
  }

  /** @returns the outcome, where the ensemble has settled it all or there is nothing left to spend */
  #ensembleTurn(effort: number, round: number): Outcome | null {
    // Once the first tier is proved, the learner does better alone.
    if ((this.#learner?.tier ?? 0) > 0 || effort <= 0) return null;
    const { options } = this;
    const outcome = solveByEnsemble(this.problem, {
      seed: (options.seed + round) >>> 0,
      effort,
      ...(this.#best === null && this.#evolution === null
        ? { untilPlan: Math.min(this.#turns.untilPlan, this.#left) }
        : {}),
      ...(options.shouldStop === undefined ? {} : { shouldStop: options.shouldStop }),
      ...(this.#best === null ? {} : { start: this.#best }),
      onProgress: (row, solution) =>
        this.#report({ work: this.#spent + row.work, value: row.value, bound: row.bound, solution }),
    });
    this.#ensembleWork += outcome.work;
    if ('solution' in outcome) {
      this.#best = outcome.solution;
      this.#firstBound = Math.max(this.#firstBound, outcome.tiers[0]?.bound ?? 0);
    }
    const settled = outcome.kind === 'proven' || outcome.kind === 'impossible';
    return settled || this.#told() || this.#left <= 0 ? this.#withOwnCount(outcome) : null;
  }

  #evolutionTurn(evolution: EvolutionTurns, effort: number): void {
    const best = this.#best !== null && verifySolution(this.problem, this.#best).length === 0 ? this.#best : null;
    const enough = Math.max(this.#firstBound, this.#learner?.bounds[0] ?? 0);
    this.#ensembleWork += evolution.take(best === null ? Infinity : tierValues(this.problem, best)[0]!, {
      effort,
      enough,
      shouldStop: () => this.#told(),
      onBetter: (solution, value, work) => {
        this.#best = solution;
        this.#report({ work: this.#spent + work, value, bound: enough, solution });
      },
    });
  }

  #withOwnCount(outcome: Outcome): Outcome {
    const learner = this.#learner;
    if (learner !== null && learner.best !== null && 'solution' in outcome) {
      learner.offer(outcome.solution);
      if (outcome.kind !== 'proven') return this.#outcome(learner);
    }
    return { ...outcome, work: this.#spent, trace: this.#trace };
  }

  /** @returns what was spent when the tier now worked on began */
  #learnerTurn(learner: Learner, turn: number, ground: number): number {
    const { options } = this;
    const until = this.#spent + Math.min(turn, this.#left);
    while (!learner.done && !learner.impossible && !learner.model.tooLarge && this.#spent < until && !this.#told()) {
      const last = learner.tier + 1 >= this.problem.tiers.length;
      const share = last ? Infinity : ground + TIER_SHARE * (options.effort - ground);
      const step = learner.improve({
        conflicts: SLICE,
        work: Math.max(1, (Math.min(until, share) - this.#spent) * LEARNER_UNITS),
        ...(options.shouldStop === undefined ? {} : { shouldStop: options.shouldStop }),
      });
      if (step === 'closed') ground = this.#spent;
      if (step === 'spent' && learner.best !== null && this.#spent >= share) {
        learner.pass();
        ground = this.#spent;
      }
      this.#best = learner.best ?? this.#best;
      const [value = null] = learner.values;
      this.#report({ work: this.#spent, value, bound: learner.bounds[0] ?? 0, solution: learner.best, learner });
    }
    return ground;
  }

  #report({ work, value, bound, solution, learner }: News): void {
    const before = this.#trace.at(-1);
    const known = value === null ? (before?.value ?? null) : Math.min(value, before?.value ?? value);
    const most = Math.max(bound, before?.bound ?? 0);
    const first = { work, value: known, bound: known === null ? most : Math.min(most, known) };
    const tiers = solution === null ? null : this.#tiersOf(solution, first.bound, learner);
    const open = tiers?.findIndex(({ proven }) => !proven) ?? -1;
    const row: TraceRow =
      tiers === null ? first : { ...first, tier: Math.max(learner?.tier ?? 0, open < 0 ? tiers.length : open), tiers };
    if (before !== undefined && sameRow(before, row)) return;
    this.#trace.push(row);
    this.options.onProgress?.(row, solution);
  }

  /** What is known of each tier of the best plan; of the ensemble's only the first bound counts, for later ones are drawn anew with every plan. */
  #tiersOf(solution: Solution, firstBound: number, learner: Learner | undefined): readonly TierOutcome[] {
    const told = learner?.outcomes() ?? tierValues(this.problem, solution).map((value) => ({ value, bound: 0 }));
    let above = true;
    return told.map(({ value, bound }, index): TierOutcome => {
      const least = index === 0 ? Math.min(value, Math.max(bound, firstBound)) : bound;
      above = above && least === value;
      return { id: this.problem.tiers[index]!.id, value, bound: least, proven: above };
    });
  }

  #outcome(learner: Learner): Outcome {
    const common = { work: this.#spent, trace: this.#trace };
    if (learner.impossible && learner.best === null) {
      return { kind: 'impossible', stopped: false, ...common, clash: RULED_OUT };
    }
    if (learner.best === null) return { kind: 'unknown', stopped: true, ...common };
    let sure = true;
    const tiers = learner.outcomes().map((tier, index): TierOutcome => {
      // A bound on a later tier stands only under the values above it; the first tier's stands always.
      const bound = index === 0 ? Math.min(tier.value, Math.max(tier.bound, this.#firstBound)) : tier.bound;
      sure = sure && bound === tier.value;
      return { ...tier, bound, proven: sure };
    });
    return { kind: sure ? 'proven' : 'bounded', stopped: !sure, ...common, solution: learner.best, tiers };
  }
}

interface News {
  readonly work: number;
  readonly value: number | null;
  readonly bound: number;
  readonly solution: Solution | null;
  /** Whose bounds those of the tiers are; absent: the ensemble tells it. */
  readonly learner?: Learner;
}

/** Whether two rows tell the same, however much work lies between. */
function sameRow(a: TraceRow, b: TraceRow): boolean {
  const same = a.value === b.value && a.bound === b.bound && a.tier === b.tier && a.tiers?.length === b.tiers?.length;
  return (
    same &&
    (a.tiers ?? []).every(({ value, bound }, index) => {
      const other = b.tiers![index]!;
      return value === other.value && bound === other.bound;
    })
  );
}
