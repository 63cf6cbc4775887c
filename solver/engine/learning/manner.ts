/**
 * How a core searches, by what problems of a kind were seen to ask for: with no choice open every reason of a conflict tells of times that compete,
 * and it pays to look at all of them; where rooms, tools and changes are chosen, reasons name much that is beside the point.
 */

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

/** Measured on kitchens. */
export const WITH_CHOICES: Manner = { named: 0, growth: 1 / 0.95, moreLearned: 1000, shaving: 0 };

/** Measured on hard 30-task projects, three seeds each: a fifth less work than in the other manner. */
export const PLAIN: Manner = { named: 2, growth: 1 / 0.93, moreLearned: 500, shaving: 0.02 };
