/** The engine's entry: first plans by rules, improvement by neighbourhoods, lower bounds, and an honest word on what was proved. */
import { Budget } from './budget.ts';
import type { Outcome, Solve, SolveOptions, TraceRow } from './outcome.ts';
import type { Problem } from './problem.ts';
import { priorityRules } from './search/priority-rules.ts';
import { planOfSolution, solutionOf } from './search/plan.ts';
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
    options.onProgress?.(row, solutionOf(plan));
  });
  if (options.start !== undefined && verifySolution(problem, options.start).length === 0)
    workshop.offer(planOfSolution(workshop.compiled, options.start));
  if (workshop.consistent) {
    for (let round = 0; !budget.over() && (workshop.best === null || round < priorityRules.length); round++) {
      const rule = priorityRules[round % priorityRules.length];
      if (rule !== undefined) workshop.planByRule(rule, 40 + 20 * round, round < 10 ? 0 : 20);
      if (budget.spend(100)) break;
    }
  }
  const common = { stopped: budget.over(), work: budget.spent, trace };
  if (workshop.best === null) return { kind: 'unknown', ...common };
  const solution = solutionOf(workshop.best);
  const values = tierValues(problem, solution);
  const tiers = problem.tiers.map((tier, k) => ({ id: tier.id, value: values[k] ?? 0, bound: 0, proven: false }));
  return { kind: 'bounded', solution, tiers, ...common };
};
