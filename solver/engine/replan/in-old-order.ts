/** The best of some plans built anew in the old order. */
import { Budget, STEPS } from '../budget.ts';
import { NO_PLACE } from '../exhausted.ts';
import type { Clash, Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import { plansInOrder } from '../search/plans-in-order.ts';
import type { ReplanAsked, Worth } from './asked.ts';
import { readCost } from './build-cost.ts';
import { closer } from './closer.ts';
import { condition } from './condition.ts';
import type { Going } from './improve.ts';

/** Effort for the plans themselves, as a share of that asked. */
const SHARE = 0.125;
/** Plans whose times are drawn near the old ones, those of least worth. */
const DRAWN_NEAR = 3;

export interface InOldOrder {
  readonly going: Going | null;
  /** Why there is no plan at all; null where there may be one. */
  readonly clash: Clash | null;
}

/** Whether two solutions of a problem take the same options at the same times. */
const isSame = (a: Solution, b: Solution): boolean =>
  a.choices.every((option, choice) => option === b.choices[choice]) &&
  a.tasks.every((at, task) => at?.start === b.tasks[task]?.start && at?.end === b.tasks[task]?.end);

/**
 * @param problem settled, perhaps with limits let go
 * @param decided by choice: the option that facts decide, or null
 * @param budget of the whole replan; where it is too little to read the problem, nothing is tried
 */
export function inOldOrder(
  asked: ReplanAsked,
  problem: Problem,
  decided: readonly (number | null)[],
  worth: (solution: Solution) => Worth,
  budget: Budget,
): InOldOrder {
  const small = condition(problem, decided);
  const cost = readCost(small.problem) * STEPS;
  if (!budget.allows(cost)) return { going: null, clash: null };
  budget.spend(cost);
  const own = new Budget(Math.min(budget.left, asked.effort * SHARE), asked.shouldStop);
  const { plans, impossible } = plansInOrder(small.problem, small.narrow(asked.old), asked.seed, own);
  budget.spendAllOf(own);
  const wide = plans
    .map((plan) => small.widen(plan))
    .map((solution) => ({ solution, total: worth(solution).total }))
    .sort((a, b) => a.total - b.total);
  let going: Going | null = null;
  for (const [index, { solution, total }] of wide.slice(0, DRAWN_NEAR).entries()) {
    // Dives often end in the same plan.
    const before = wide[index - 1];
    if (before?.total === total && isSame(before.solution, solution)) continue;
    const each = closer(asked, problem, solution, worth, budget);
    if (going === null || each.worth.total < going.worth.total) going = each;
  }
  return { going, clash: impossible ? NO_PLACE : null };
}
