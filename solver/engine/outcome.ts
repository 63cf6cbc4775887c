/** What can come back from the engine. */
import type { Problem } from './problem.ts';

/** One option a choice and one interval a task, in the order of the problem's lists; null for an absent task. */
export interface Solution {
  readonly choices: readonly number[];
  readonly tasks: readonly ({ readonly start: number; readonly end: number } | null)[];
}

/** A tier's value in the solution and what has been proved of it. `bound ≤ value`; `proven` is `bound === value` with all higher tiers proven. */
export interface TierOutcome {
  readonly id: string;
  readonly value: number;
  readonly bound: number;
  readonly proven: boolean;
}

/**
 * Why no plan can exist. `requirements` are the asker's own names (from lags) that clash together; `reason` tells the
 * certificate: a cycle of gaps, a demand over capacity, a fixed chain longer than the horizon, or an exhausted search.
 */
export interface Clash {
  readonly kind: 'cycle' | 'capacity' | 'horizon' | 'exhausted';
  readonly reason: string;
  readonly tasks: readonly string[];
  readonly requirements: readonly string[];
}

interface Common {
  /** The search was told to stop, or ran out of effort before it was done. */
  readonly stopped: boolean;
  /** Work units spent. */
  readonly work: number;
  /** Best first-tier value against work, one row an improvement of the value or the bound; where all tiers are told, of any of them. */
  readonly trace: readonly TraceRow[];
}
export interface TraceRow {
  readonly work: number;
  readonly value: number | null;
  readonly bound: number;
  /** Index of the tier worked on then; the number of tiers when all are settled. Told with `tiers`. */
  readonly tier?: number;
  /** What is known of each tier of the best plan, in the problem's order; absent before the first plan, and from an engine that does not tell. */
  readonly tiers?: readonly TierOutcome[];
}

export type Outcome =
  | (Common & {
      readonly kind: 'proven' | 'bounded';
      readonly solution: Solution;
      readonly tiers: readonly TierOutcome[];
    })
  | (Common & { readonly kind: 'impossible'; readonly clash: Clash })
  | (Common & { readonly kind: 'unknown' });

/** How a solve is asked for. Everything that comes from outside (when to stop, chance) is handed in. */
export interface SolveOptions {
  /** Seed of all chance, a 32-bit unsigned integer. Same problem, seed and effort give the same outcome on any machine. */
  readonly seed: number;
  /** Most work units to spend. */
  readonly effort: number;
  /** Most work units to spend while there is no plan, where that is more than `effort`; what gives the first plan is brought to its end. */
  readonly untilPlan?: number;
  /** Asked at least every few milliseconds; true ends the search with the best so far. */
  readonly shouldStop?: () => boolean;
  /** Called when the value or the bound of the first tier gets better (of any tier, where all are told); `solution` is the newest best plan. */
  readonly onProgress?: (row: TraceRow, solution: Solution | null) => void;
  /**
   * Called with false before the learner's model is built and with true once it stands, so that a caller with a clock can tell building from
   * search; not called where none is built.
   */
  readonly onModel?: (stands: boolean) => void;
  /** A plan to start from, if there is one (must be a solution of this problem, otherwise it is ignored). */
  readonly start?: Solution;
}

/** The engine's one entry. Faults of the problem itself (unknown ids, negative lengths, overflow) throw `ProblemFault` before search. */
export type Solve = (problem: Problem, options: SolveOptions) => Outcome;
