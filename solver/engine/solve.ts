/** The engine's entry: first plans by rules, improvement by neighbourhoods, lower bounds, and an honest word on what was proved. */
import { Budget } from './budget.ts';
import type { Outcome, Solve, SolveOptions, TierOutcome, TraceRow } from './outcome.ts';
import { NO_PLACE } from './exhausted.ts';
import { findClash, findOverload } from './bounds/certificates.ts';
import { LowerBounds } from './bounds/lower-bounds.ts';
import type { Problem } from './problem.ts';
import { Evolution } from './project/evolve.ts';
import { asPlainProject, type PlainProject } from './project/plain-project.ts';
import { findFirstPlans } from './search/first-plans.ts';
import { Improver } from './search/improve.ts';
import { planOfSolution, planOfStarts, type Plan } from './search/plan.ts';
import { prepare, Workshop, type Parts } from './search/workshop.ts';
import { tierValues } from './tier-values.ts';
import { validateProblem } from './validate-problem.ts';
import { verifySolution } from './verify-solution.ts';

/** Rules tried before improvement begins, where the first few already give a plan. */
const FIRST_RULES = 6;

export const solve: Solve = (problem: Problem, options: SolveOptions): Outcome => {
  validateProblem(problem);
  return solveValid(problem, options);
};

/** The same for a problem that `validateProblem` has accepted before. */
export const solveValid: Solve = (problem: Problem, options: SolveOptions): Outcome => {
  const budget = new Budget(Math.max(options.effort, options.untilPlan ?? 0), options.shouldStop);
  const parts = prepare(problem, budget);
  return parts === null ? stoppedAtOnce(problem, options, budget) : new Solving(problem, options, budget, parts).run();
};

/** Told to stop before search began: what there is, is the plan to start from. */
function stoppedAtOnce(problem: Problem, { start }: SolveOptions, budget: Budget): Outcome {
  const common = { stopped: true, work: budget.spent, trace: [] };
  if (start === undefined || verifySolution(problem, start).length > 0) return { kind: 'unknown', ...common };
  return { kind: 'bounded', ...common, solution: start, tiers: tierOutcomes(problem, tierValues(problem, start), []) };
}

function tierOutcomes(
  problem: Problem,
  values: readonly number[],
  bounds: { readonly [tier: number]: number },
): TierOutcome[] {
  let all = true;
  return problem.tiers.map((tier, k): TierOutcome => {
    const value = values[k] ?? 0;
    const bound = bounds[k] ?? 0;
    if (bound > value) throw new Error(`tier ${tier.id} has the bound ${bound} above its value ${value}`);
    all &&= bound === value;
    return { id: tier.id, value, bound, proven: all };
  });
}

class Solving {
  private readonly workshop: Workshop;
  private readonly trace: TraceRow[] = [];
  private bounds: LowerBounds | null = null;

  constructor(
    private readonly problem: Problem,
    private readonly options: SolveOptions,
    private readonly budget: Budget,
    parts: Parts,
  ) {
    this.workshop = new Workshop(problem, budget, options, parts, () => this.report());
  }

  run(): Outcome {
    const { problem, options, workshop, budget } = this;
    if (budget.poll()) return stoppedAtOnce(problem, options, budget);
    const clash = findClash(workshop);
    if (clash !== null) return { kind: 'impossible', clash, ...this.common(false) };
    if (!workshop.consistent)
      return { kind: 'impossible', clash: findOverload(workshop) ?? NO_PLACE, ...this.common(false) };
    this.bounds = new LowerBounds(workshop);
    if (options.start !== undefined && verifySolution(problem, options.start).length === 0)
      workshop.offer(planOfSolution(workshop.compiled, options.start));
    const project = asPlainProject(workshop.compiled);
    if (project !== null && this.evolve(project, this.bounds)) return this.outcome(false);
    // Bounds and facts of a large problem take a while, too, and are not counted.
    if (budget.poll()) return this.outcome(true);
    if (workshop.best === null) findFirstPlans(workshop, FIRST_RULES, 2 * FIRST_RULES, options.effort);
    if (workshop.best === null) {
      const overload = findOverload(workshop);
      if (overload !== null) return { kind: 'impossible', clash: overload, ...this.common(false) };
      findFirstPlans(workshop, FIRST_RULES, Infinity, options.effort);
    }
    budget.limitTo(options.effort);
    this.bounds.restart(0);
    const finished = workshop.best !== null && this.improve(workshop.best, this.bounds);
    return this.outcome(!finished);
  }

  /**
   * Plans of a classical project. Where there are other tiers, part of the effort is left for them.
   *
   * @returns true when every tier is proved
   */
  private evolve(project: PlainProject, bounds: LowerBounds): boolean {
    const { workshop, budget, options } = this;
    const evolution = new Evolution(project, workshop.random);
    if (workshop.best !== null) evolution.adopt(workshop.best.start, workshop.best.values[0] as number);
    const share = bounds.bounds.length > 1 ? options.effort / 2 : options.effort;
    // Refutation on many tasks is dear beside a plan.
    let nextRefined = project.count > 60 ? 800 : 100;
    for (let round = 0; !budget.spend(evolution.step()) && budget.spent < share; round++) {
      if (evolution.best < (workshop.best?.values[0] ?? Infinity))
        workshop.offer(planOfStarts(workshop.compiled, evolution.bestStart));
      if (workshop.best === null) {
        // Lists that all pass the horizon: leave it to search that can step back.
        if (round > 300) return false;
        continue;
      }
      if (round === nextRefined) {
        nextRefined *= 16;
        if (bounds.refine(0, workshop.best.values)) this.report();
      }
      if (bounds.bounds[0] === workshop.best.values[0]) return bounds.bounds.length === 1;
    }
    return false;
  }

  /** @returns true when every tier is proved */
  private improve(plan: Plan, bounds: LowerBounds): boolean {
    const { workshop, budget } = this;
    const improver = new Improver(workshop, plan);
    const last = bounds.bounds.length - 1;
    let known: Float64Array = plan.values;
    let stale = true;
    for (let round = 0; !budget.over(); round++) {
      const { values } = workshop.best ?? plan;
      if (values !== known) {
        // Bounds of later tiers were drawn under values that no longer stand.
        bounds.restart(firstDifference(values, known));
        known = values;
        stale = true;
      }
      let proven = bounds.provenTiers(values);
      if (stale && round % 64 === 0) {
        stale = false;
        for (let tier = proven; tier <= last; tier++) bounds.refine(tier, values);
        this.report();
        proven = bounds.provenTiers(values);
      }
      if (proven > last) return true;
      improver.target = proven;
      const refuted = improver.step();
      if (refuted >= 0 && bounds.raise(refuted, values[refuted] as number)) this.report();
    }
    return false;
  }

  private report(): void {
    const { workshop, trace, options, budget } = this;
    const plan = workshop.best;
    const row = {
      work: budget.spent,
      value: plan === null ? null : (plan.values[0] ?? 0),
      bound: this.bounds?.bounds[0] ?? 0,
    };
    const last = trace[trace.length - 1];
    if (last !== undefined && last.value === row.value && last.bound >= row.bound) return;
    trace.push(row);
    options.onProgress?.(row, plan === null ? null : workshop.solution(plan));
  }

  private common(stopped: boolean): { stopped: boolean; work: number; trace: readonly TraceRow[] } {
    return { stopped, work: this.budget.spent, trace: this.trace };
  }

  private outcome(stopped: boolean): Outcome {
    const { problem, workshop } = this;
    if (workshop.best === null) return { kind: 'unknown', ...this.common(stopped) };
    const solution = workshop.solution(workshop.best);
    const tiers = tierOutcomes(problem, tierValues(problem, solution), this.bounds?.bounds ?? []);
    const all = tiers.every((tier) => tier.proven);
    return { kind: all ? 'proven' : 'bounded', solution, tiers, ...this.common(stopped) };
  }
}

function firstDifference(a: Float64Array, b: Float64Array): number {
  let k = 0;
  while (k < a.length && a[k] === b[k]) k++;
  return k;
}
