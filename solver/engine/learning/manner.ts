/**
 * How a core searches, by what problems of a kind were seen to ask for: where tasks compete for shared capacity alone, it pays to look at all that the
 * reasons of a conflict name; where rooms, tools and changes are chosen, or machines take one job at a time, reasons name much that is beside the
 * point.
 */
import type { Problem } from '../problem.ts';

export interface Manner {
  /** Activity that a literal gains each time a reason in a conflict names it; it gains 1 when resolved on or learned. */
  readonly named: number;
  /** How much each conflict counts beside the one before it. */
  readonly growth: number;
  /** How many more learned clauses are allowed after each time half are dropped. */
  readonly moreLearned: number;
  /** Work on shaving, as a share of all; 0 for none. */
  readonly shaving: number;
}

/** Measured on kitchens and shops. */
export const USUAL: Manner = { named: 0, growth: 1 / 0.95, moreLearned: 1000, shaving: 0 };

/** Measured on hard 30-task projects, three seeds each: a fifth less work than in the usual manner. */
export const SHARED: Manner = { named: 2, growth: 1 / 0.93, moreLearned: 500, shaving: 0.02 };

/** The manner that suits a problem. */
export function mannerFor(problem: Problem): Manner {
  const shares = problem.resources.some(({ capacity }) => capacity > 1);
  return problem.choices.length === 0 && shares ? SHARED : USUAL;
}
