/** The engine's entry: first plans by rules, improvement by neighbourhoods, lower bounds, and an honest word on what was proved. */
import { Budget } from './budget.ts';
import type { Outcome, Solve, SolveOptions, TraceRow } from './outcome.ts';
import type { Problem } from './problem.ts';
import { findFirstPlans } from './search/first-plans.ts';
import { Improver } from './search/improve.ts';
import { planOfSolution } from './search/plan.ts';
import { Workshop } from './search/workshop.ts';
import { tierValues } from './tier-values.ts';
import { validateProblem } from './validate-problem.ts';
import { verifySolution } from './verify-solution.ts';

export const solve: Solve = (problem: Problem, options: SolveOptions): Outcome => {
  validateProblem(problem);
  const budget = new Budget(options.effort, options.shouldStop);
  const trace: TraceRow[] = [];
  const workshop = new Workshop(problem, budget, options, (plan) => {
    const row = { work: budget.spent, value: plan.values[0] ?? 0, bound: 0 };
    const last = trace[trace.length - 1];
    if (last !== undefined && last.value === row.value && last.bound === row.bound) return;
    trace.push(row);
    options.onProgress?.(row, workshop.solution(plan));
  });
  if (options.start !== undefined && verifySolution(problem, options.start).length === 0)
    workshop.offer(planOfSolution(workshop.compiled, options.start));
  if (workshop.consistent) {
    findFirstPlans(workshop, 6, Infinity);
    if (workshop.best !== null) {
      const improver = new Improver(workshop, workshop.best);
      while (!budget.over()) improver.step();
    }
  }
  const common = { stopped: budget.over(), work: budget.spent, trace };
  if (workshop.best === null) return { kind: 'unknown', ...common };
  const solution = workshop.solution(workshop.best);
  const values = tierValues(problem, solution);
  const tiers = problem.tiers.map((tier, k) => ({ id: tier.id, value: values[k] ?? 0, bound: 0, proven: false }));
  return { kind: 'bounded', solution, tiers, ...common };
};
