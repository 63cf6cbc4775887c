/** Plans as a person or a simple program would make them, by one priority rule and without improvement, to compare ours with. */
import { Budget } from './budget.ts';
import type { Solution } from './outcome.ts';
import type { Problem } from './problem.ts';
import { findPlanByRule } from './search/first-plans.ts';
import type { PriorityRule } from './search/priority-rules.ts';
import { prepare, Workshop } from './search/workshop.ts';
import { validateProblem } from './validate-problem.ts';

export interface RuleOptions {
  /** Seed of the rules that mix chance in, and of ties between options; 1 where not given. */
  readonly seed?: number;
  /** Most work units; 2,000,000 where not given. */
  readonly effort?: number;
}

/** Times a rule is tried anew, what made it fail going first, before it counts as failed. */
const TRIES = 60;

/**
 * One plan by one rule. Where the rule runs into a dead end it is tried again with what failed brought forward.
 *
 * @returns a solution that `verifySolution` accepts, or null when the rule gives none within its tries and effort
 * @throws ProblemFault for faults of the problem itself
 */
export function planByRule(problem: Problem, rule: PriorityRule, options: RuleOptions = {}): Solution | null {
  validateProblem(problem);
  const budget = new Budget(options.effort ?? 2_000_000, undefined);
  const parts = prepare(problem, budget);
  const workshop = parts === null ? null : new Workshop(problem, budget, { seed: options.seed ?? 1 }, parts);
  if (workshop?.consistent !== true) return null;
  const plan = findPlanByRule(workshop, rule, TRIES);
  return plan === null ? null : workshop.solution(plan);
}

/**
 * The rule of thumb of a kitchen: whenever something is free, the longest job on the named resources is begun first, then whatever has
 * the longest work still to come. Nothing is improved afterwards.
 *
 * `firstResources` are the ids of the resources whose jobs go first (the oven's racks).
 */
export function ruleOfThumb(
  problem: Problem,
  { firstResources, ...options }: RuleOptions & { readonly firstResources: readonly string[] },
): Solution | null {
  return planByRule(
    problem,
    { name: 'rule of thumb', scheme: 'parallel', direction: 'forward', measure: 'thumb', firstResources },
    options,
  );
}
