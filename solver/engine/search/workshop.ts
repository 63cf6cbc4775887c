/** The parts of one solve put together: compiled problem, store, rules, chance and budget. */
import type { Budget } from '../budget.ts';
import { compileProblem } from '../compile-problem.ts';
import type { Compiled } from '../compiled.ts';
import type { Solution, SolveOptions } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import { loosen, type Loosened } from '../interchangeable.ts';
import { Propagation } from '../propagation/propagation.ts';
import { Store } from '../propagation/store.ts';
import { Random } from '../random.ts';
import { readStructure, type Structure } from '../structure.ts';
import { verifySolution } from '../verify-solution.ts';
import { Dive, type DiveOrders } from './dive.ts';
import { compareValues, movedBy, planOf, solutionOf, type Plan } from './plan.ts';
import { keysOf, ruleFacts, thumbKeys, type PriorityRule, type RuleFacts } from './priority-rules.ts';

/** What a problem is read into before search. */
export interface Parts {
  readonly loosened: Loosened;
  readonly compiled: Compiled;
  readonly structure: Structure;
  readonly propagation: Propagation;
}

/**
 * Reads a problem into the parts of a workshop. On large problems this takes a while, so the asker is asked in between.
 *
 * @returns null where the asker said stop
 */
export function prepare(problem: Problem, budget: Budget): Parts | null {
  const goOn = (): boolean => !budget.poll();
  const loosened = loosen(problem);
  const compiled = goOn() ? compileProblem(loosened.problem, goOn) : null;
  const structure = compiled !== null && goOn() ? readStructure(compiled) : null;
  if (compiled === null || structure === null || !goOn()) return null;
  return { loosened, compiled, structure, propagation: new Propagation(new Store(compiled), structure.block) };
}

/** How a dive by a priority rule goes. */
export interface RuleDive {
  /** Dead ends allowed. */
  readonly failLimit: number;
  /** Times to decide by chance among open options, per cent (0), and the same for choices that decide which tasks there are (as `whim`). */
  readonly whim?: number;
  readonly shapeWhim?: number;
  /** For each task what is taken off its key, so that it goes earlier. */
  readonly boost?: Float64Array;
  /** How much later goes what soils most, in the measure of the keys (0). */
  readonly soilWeight?: number;
  /** See `DiveOrders`. */
  readonly strides?: boolean;
}

export class Workshop {
  private readonly loosened: Loosened;
  readonly compiled: Compiled;
  readonly structure: Structure;
  readonly store: Store;
  readonly propagation: Propagation;
  readonly random: Random;
  readonly dive: Dive;
  /** False when propagation alone found a contradiction before search. */
  readonly consistent: boolean;
  /** The best plan so far. */
  best: Plan | null = null;
  private facts: RuleFacts | undefined;

  constructor(
    readonly problem: Problem,
    readonly budget: Budget,
    options: Pick<SolveOptions, 'seed'>,
    parts: Parts,
    private readonly onBetter: (plan: Plan) => void = () => undefined,
  ) {
    ({
      loosened: this.loosened,
      compiled: this.compiled,
      structure: this.structure,
      propagation: this.propagation,
    } = parts);
    this.store = this.propagation.store;
    this.random = new Random(options.seed);
    this.dive = new Dive(this.propagation, this.structure, this.random, budget);
    this.consistent = this.propagation.start();
  }

  ruleFacts(): RuleFacts {
    this.facts ??= ruleFacts(this.store, this.structure);
    return this.facts;
  }

  /** Free choice everywhere. */
  noGuide(): Int32Array {
    return new Int32Array(this.compiled.optionCount.length).fill(-1);
  }

  /**
   * One dive by a rule; a backward one is pulled forward again. While there is no plan, one from the end back is offered before that, only
   * moved as a whole: to pull it forward takes as long again.
   *
   * @returns the plan or null
   */
  planByRule(rule: PriorityRule, { failLimit, ...ways }: RuleDive): Plan | null {
    const { whim = 0, shapeWhim = whim, boost, soilWeight = 0, strides = false } = ways;
    const backward = rule.direction === 'backward';
    const facts = this.ruleFacts();
    const key =
      rule.measure === 'thumb'
        ? thumbKeys(this.store, this.structure, facts, rule.firstResources ?? [])
        : keysOf(rule.measure, facts, backward, this.random, soilWeight);
    if (boost !== undefined) key.forEach((value, task) => (key[task] = value - (boost[task] as number)));
    const parallel = rule.scheme === 'parallel';
    const guide = this.noGuide();
    const plan = this.build({ backward, parallel, key, guide, whim, shapeWhim, failLimit, givesUp: true, strides });
    if (plan === null) return null;
    if (!backward) {
      this.offer(plan);
      return plan;
    }
    // A plan built from the end back lies at the end of the horizon.
    const early = this.movedToStart(plan);
    if (this.best === null) this.offer(early);
    const shifted = this.shift(plan, false, failLimit);
    if (shifted !== null) return shifted;
    this.offer(early);
    return early;
  }

  /**
   * The plan as a whole so much earlier that its first task starts at minute 0; the plan itself where that is no plan, because of what
   * stands at a fixed time, or is worth less.
   */
  movedToStart(plan: Plan): Plan {
    let first = Infinity;
    for (const start of plan.start) if (start >= 0 && start < first) first = start;
    if (first === 0 || first === Infinity) return plan;
    const early = movedBy(this.compiled, plan, -first);
    if (compareValues(early.values, plan.values) >= 0) return plan;
    return verifySolution(this.problem, this.solution(early)).length === 0 ? early : plan;
  }

  /** Rebuilds a plan in its own order, towards the front or the back, with the same choices. */
  shift(plan: Plan, backward: boolean, failLimit: number): Plan | null {
    const key = Float64Array.from(plan.start, (start, task) => (backward ? -(plan.end[task] as number) : start));
    return this.diveOnce({ backward, parallel: false, key, guide: plan.choices, whim: 0, shapeWhim: 0, failLimit });
  }

  /** One dive from the store's present state, undone afterwards; a plan found is checked and offered as the best. */
  diveOnce(orders: DiveOrders): Plan | null {
    const plan = this.build(orders);
    if (plan !== null) this.offer(plan);
    return plan;
  }

  private build(orders: DiveOrders): Plan | null {
    const end = this.dive.run(orders);
    const plan = end === 'plan' ? planOf(this.store) : null;
    this.dive.unwind();
    return plan;
  }

  /** The plan as a solution of the problem that was asked. */
  solution(plan: Plan): Solution {
    return this.loosened.renumber(solutionOf(plan));
  }

  /** Takes the plan as the best when it is; every plan that comes by is verified. @returns true when it was better */
  offer(plan: Plan): boolean {
    if (this.best !== null && compareValues(plan.values, this.best.values) >= 0) return false;
    const faults = verifySolution(this.problem, this.solution(plan));
    if (faults.length > 0) throw new Error(`search built a plan that is none: ${faults.join('; ')}`);
    this.best = plan;
    this.onBetter(plan);
    return true;
  }
}
