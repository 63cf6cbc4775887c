/**
 * Replanning: a running plan goes on from now. The past is fixed, hard limits hold first, then the least of
 * `finish + penalty × changed units`.
 *
 * Stages, each the ground of the next: the old plan carried on in its order (always the first answer where it keeps the limits);
 * where it does not, the fewest moves that mend it, or a plan built anew in the old order; moves on its critical chain; and where
 * the rest is small enough or the effort great enough, the learner on the whole question, which can prove the answer best. Work is
 * counted, so the same question gives the same answer on any machine.
 *
 * Papers: El Sakkout, Wallace 2000, "Probe backtrack search for minimal perturbation in dynamic scheduling"; Van de Vonder,
 * Ballestín, Demeulemeester, Herroelen 2007, "Heuristic procedures for reactive project scheduling".
 */
import { Budget } from '../budget.ts';
import { withTimes, type OrderArc } from '../explain/plan-order.ts';
import { startNode } from '../explain/taken.ts';
import { LEARNER_UNITS, Learner, SLICE } from '../learning/learner.ts';
import type { Clash, Solution } from '../outcome.ts';
import { solveTogether } from '../together.ts';
import { verifySolution } from '../verify-solution.ts';
import { OPEN, type ReplanAsked, type Worth } from './asked.ts';
import { boundsByFacts, carryOn } from './carry-on.ts';
import { condition } from './condition.ts';
import { exactProblem } from './exact.ts';
import { improve, type Going } from './improve.ts';
import { keptOrder, sequenceArcs, type KeptOrder } from './kept-order.ts';
import { buildCost } from './build-cost.ts';
import { leastBad } from './least-bad.ts';
import { leastFinish } from './least-finish.ts';
import { repair } from './repair.ts';
import { plansInOrder } from '../search/plans-in-order.ts';
import { settle, type Settled } from './settled.ts';
import { worthOf } from './worth.ts';

/** A limit that a plan breaks: the lag of the asked problem, or a length or the horizon by the task. */
export type BrokenLimit =
  | { readonly kind: 'lag'; readonly lag: number; readonly requirement?: string }
  | { readonly kind: 'length'; readonly task: string }
  | { readonly kind: 'horizon' }
  | { readonly kind: 'calendar'; readonly resource: string };

export type ReplanOutcome =
  | {
      readonly kind: 'proven' | 'bounded';
      readonly solution: Solution;
      readonly worth: Worth;
      /** No way to go on is worth less. */
      readonly bound: number;
      /** No way to go on finishes earlier. */
      readonly leastFinish: number;
      /** Worth of the old order carried on; null where it keeps not every limit. */
      readonly carriedOn: number | null;
      /** Limits that the past has broken already. */
      readonly broken: readonly BrokenLimit[];
      readonly stopped: boolean;
      readonly work: number;
    }
  | {
      /** `impossible` only after proof; `unknown`: no way to go on within every limit was found in the effort given. */
      readonly kind: 'impossible' | 'unknown';
      readonly clash: Clash | null;
      /** The old order carried on with some limits let go; null where not even that can be. */
      readonly leastBad: Solution | null;
      /** Limits that it breaks, and those that the past has broken. */
      readonly broken: readonly BrokenLimit[];
      readonly stopped: boolean;
      readonly work: number;
    };

/** Effort for the fewest moves that make the old order possible again, as a share of that asked. */
const REPAIR_SHARE = 0.25;
/** The same for plans built in the old order. */
const IN_ORDER_SHARE = 0.4;
/** Work of the learner's slices from nothing, its own units, and slices without gain after which it ends. */
const REORDER_WORK = 60_000;
const PATIENCE = 8;
/**
 * Replans.
 *
 * @throws Error where the old plan is no plan of the problem's tasks (a promise broken by the caller)
 */
export function replan(asked: ReplanAsked): ReplanOutcome {
  return new Replanning(asked).run();
}

class Replanning {
  private readonly settled: Settled;
  private readonly worth: (solution: Solution) => Worth;
  private readonly budget: Budget;
  private readonly order: KeptOrder;
  private readonly lower: Int32Array;
  private readonly arcs: readonly OrderArc[];
  private learnerWork = 0;
  private earliest = 0;

  constructor(private readonly asked: ReplanAsked) {
    this.settled = settle(asked);
    this.worth = worthOf(asked);
    this.budget = new Budget(asked.effort, asked.shouldStop);
    this.order = keptOrder(this.settled.problem, asked.old, asked.facts);
    this.lower = boundsByFacts(asked, (task) => asked.old.tasks[task] !== null);
    this.arcs = [...this.order.arcs, ...sequenceArcs(this.order.sequences)];
  }

  private get work(): number {
    return this.budget.spent + Math.floor(this.learnerWork / LEARNER_UNITS);
  }

  private get pastBroken(): readonly BrokenLimit[] {
    return this.settled.broken.map((lag) => this.lagLimit(lag));
  }

  private lagLimit(lag: number): BrokenLimit {
    const { requirement } = this.asked.problem.lags[lag]!;
    return { kind: 'lag', lag, ...(requirement === undefined ? {} : { requirement }) };
  }

  run(): ReplanOutcome {
    const { asked, settled } = this;
    const { problem } = settled;
    const sure = leastFinish(settled, asked.finish);
    const bound = sure ?? 0;
    this.earliest = bound;
    const carried = carryOn(asked, this.arcs, this.lower);
    let best: Going | null = null;
    if (carried.kind === 'times') {
      const solution = withTimes(asked.old, carried.times);
      if (verifySolution(problem, solution).length === 0) best = { solution, worth: this.worth(solution) };
    }
    const carriedOn = best?.worth.total ?? null;
    if (asked.effort <= 0) return best === null ? this.without(null, true) : this.outcome(best, carriedOn, bound);
    // Gaps that contradict each other whatever is chosen need no search.
    if (best === null && sure !== null && carried.kind === 'cycle') best = this.repaired(carried.arcs);
    if (best === null && sure !== null) best = this.inOldOrder();
    if (best === null && sure !== null) best = this.leastChanged(bound);
    if (best === null) {
      const found = this.fresh();
      if ('clash' in found) return this.without(found.clash, found.stopped);
      best = found;
    }
    if (this.isSettled(best, bound)) return this.outcome(best, carriedOn, best.worth.total);
    if (best.worth.changed.length === 0 && best.worth.finish <= (asked.goodEnough ?? -1))
      return this.outcome(best, carriedOn, bound);
    best = improve(
      asked,
      problem,
      best,
      this.worth,
      (choice) => settled.decided[choice] !== null,
      this.still(best),
      this.budget,
    );
    if (this.isSettled(best, bound)) return this.outcome(best, carriedOn, best.worth.total);
    return this.exactly(best, bound, carriedOn);
  }

  /** Whether nothing can be better. Orders that count as no change (in an oven, of washes) may still gain minutes, so a small gap is none. */
  private isSettled({ worth }: Going, bound: number): boolean {
    return worth.total <= bound;
  }

  /** Begun, or due soon. */
  private still({ solution }: Going): (task: number) => boolean {
    const { facts, frozenUntil } = this.asked;
    return (task) => {
      const start = solution.tasks[task]?.start;
      return facts[startNode(task)] !== OPEN || (start !== undefined && start < frozenUntil);
    };
  }

  private repaired(cycle: readonly OrderArc[]): Going | null {
    const { asked, settled } = this;
    const budget = new Budget(asked.effort * REPAIR_SHARE, asked.shouldStop);
    const mended = repair(
      asked,
      settled.problem,
      this.order,
      this.lower,
      cycle,
      this.worth,
      (choice) => settled.decided[choice] !== null,
      (task) => asked.facts[startNode(task)] !== OPEN,
      budget,
    );
    this.budget.spendAllOf(budget);
    return mended;
  }

  /** The best of some plans built in the old order. */
  private inOldOrder(): Going | null {
    const { asked, settled } = this;
    const small = condition(settled.problem, settled.decided);
    const budget = new Budget(asked.effort * IN_ORDER_SHARE, asked.shouldStop);
    const plans = plansInOrder(small.problem, small.narrow(asked.old), asked.seed, budget);
    this.budget.spendAllOf(budget);
    let best: Going | null = null;
    for (const plan of plans) {
      const going = this.closer(small.widen(plan));
      if (best === null || going.worth.total < best.worth.total) best = going;
    }
    return best;
  }

  /** A way to go on by the learner on the whole question, from nothing. */
  private leastChanged(bound: number): Going | null {
    const { asked, settled } = this;
    const { problem: whole } = settled;
    const exact = exactProblem(asked, whole, bound, whole.horizon);
    const { problem, widen } = condition(exact.problem, [...settled.decided, ...asked.units.map(() => null)]);
    const learner = new Learner(problem, asked.seed);
    const began = this.learnerWork;
    let misses = 0;
    while (!learner.done && !learner.impossible && !learner.model.tooLarge && misses < PATIENCE) {
      const left = asked.effort - Math.floor(learner.work / LEARNER_UNITS);
      if (left <= 0) break;
      const step = learner.improve({
        conflicts: SLICE,
        work: Math.min(left * LEARNER_UNITS, REORDER_WORK),
        ...(asked.shouldStop === undefined ? {} : { shouldStop: asked.shouldStop }),
      });
      if (step === 'stopped') break;
      misses = step === 'spent' ? misses + 1 : 0;
    }
    this.learnerWork = began + learner.work;
    return learner.best === null ? null : this.closer(exact.restrict(widen(learner.best)));
  }

  /** A way to go on where no few moves lead anywhere. */
  private fresh(): Going | { readonly clash: Clash | null; readonly stopped: boolean } {
    const { asked, settled } = this;
    const small = condition(settled.problem, settled.decided);
    const finish = asked.finish.map((node) => settled.problem.tasks[(node - 1) >> 1]!.id);
    const outcome = solveTogether(
      {
        ...small.problem,
        tiers: [
          {
            kind: 'latest',
            id: 'finish',
            terms: small.problem.tasks
              .filter(({ id }) => finish.includes(id))
              .map(({ id }) => ({ point: { task: id, at: 'end' } })),
          },
        ],
      },
      {
        seed: asked.seed,
        effort: asked.effort,
        ...(asked.shouldStop === undefined ? {} : { shouldStop: asked.shouldStop }),
      },
    );
    this.learnerWork += outcome.work * LEARNER_UNITS;
    switch (outcome.kind) {
      case 'impossible':
        return { clash: outcome.clash, stopped: false };
      case 'unknown':
        return { clash: null, stopped: outcome.stopped };
      case 'proven':
      case 'bounded': {
        return this.closer(small.widen(outcome.solution));
      }
    }
  }

  /** The learner on the whole question. */
  private exactly(start: Going, bound: number, carriedOn: number | null): ReplanOutcome {
    const { asked, settled } = this;
    const still = this.still(start);
    const decided = [...settled.decided];
    const position = new Map(settled.problem.choices.map((choice, index) => [choice.id, index]));
    const frozen = settled.problem.tasks.flatMap((task, index) => {
      if (start.solution.tasks[index] == null || asked.facts[startNode(index)] !== OPEN || !still(index)) return [];
      if (task.choice !== undefined) {
        const choice = position.get(task.choice)!;
        decided[choice] = start.solution.choices[choice]!;
      }
      return [{ task: task.id, at: start.solution.tasks[index].start }];
    });
    const exact = exactProblem(asked, settled.problem, bound, start.worth.total);
    const { problem, narrow, widen } = condition(
      {
        ...exact.problem,
        lags: [
          ...exact.problem.lags,
          ...frozen.flatMap(({ task, at }) => [
            { from: 'origin', to: { task, at: 'start' }, least: at } as const,
            { from: { task, at: 'start' }, to: 'origin', least: -at } as const,
          ]),
        ],
      },
      [...decided, ...asked.units.map(() => null)],
    );
    const cost = buildCost(problem);
    if (this.work + cost > asked.effort || this.budget.over()) return this.outcome(start, carriedOn, bound);
    this.learnerWork += cost * LEARNER_UNITS;
    const learner = new Learner(problem, asked.seed);
    if (!learner.offer(narrow(exact.extend(start.solution, start.worth.finish, start.worth.changed))))
      return this.outcome(start, carriedOn, bound);
    const began = this.learnerWork;
    let stopped = false;
    while (!learner.done && !learner.model.tooLarge) {
      const left = asked.effort - this.work;
      if (left <= 0) break;
      const step = learner.improve({
        conflicts: SLICE,
        work: left * LEARNER_UNITS,
        ...(asked.shouldStop === undefined ? {} : { shouldStop: asked.shouldStop }),
      });
      this.learnerWork = began + learner.work;
      if (step === 'stopped' || asked.shouldStop?.() === true) {
        stopped = true;
        break;
      }
    }
    const solution = exact.restrict(widen(learner.best!));
    const found = this.closer(solution);
    const proved = learner.done ? found.worth.total : bound + (learner.bounds[0] ?? 0);
    return this.outcome(found, carriedOn, Math.max(bound, Math.min(proved, found.worth.total)), stopped);
  }

  /** The same choices and orders at the times nearest the old ones. */
  private closer(solution: Solution): Going {
    const { asked, settled } = this;
    const order = keptOrder(settled.problem, solution, asked.facts);
    const lower = boundsByFacts(asked, (task) => solution.tasks[task] !== null);
    const carried = carryOn(asked, [...order.arcs, ...sequenceArcs(order.sequences)], lower);
    const plain = { solution, worth: this.worth(solution) };
    if (carried.kind === 'cycle') return plain;
    const near = withTimes(solution, carried.times);
    const worth = this.worth(near);
    return worth.total <= plain.worth.total && verifySolution(settled.problem, near).length === 0
      ? { solution: near, worth }
      : plain;
  }

  private outcome(best: Going, carriedOn: number | null, bound: number, stopped = this.budget.stopped): ReplanOutcome {
    const proven = this.isSettled(best, bound);
    return {
      kind: proven ? 'proven' : 'bounded',
      solution: best.solution,
      worth: best.worth,
      bound: proven ? best.worth.total : bound,
      leastFinish: this.earliest,
      carriedOn,
      broken: this.pastBroken,
      stopped: stopped && !proven,
      work: this.work,
    };
  }

  /** No way to go on within every limit. */
  private without(clash: Clash | null, stopped: boolean): ReplanOutcome {
    const { asked, settled } = this;
    const isFact = ({ why }: OrderArc): boolean => why.kind === 'lag' && why.lag >= settled.factLags;
    const bad = leastBad(asked, this.arcs, this.lower, isFact);
    const original = asked.problem.lags.flatMap((_, index) => (settled.broken.includes(index) ? [] : [index]));
    const limits = (bad?.broken ?? []).flatMap(({ why }): BrokenLimit[] => {
      switch (why.kind) {
        case 'lag':
          return [this.lagLimit(original[why.lag]!)];
        case 'length':
          return [{ kind: 'length', task: why.task }];
        case 'horizon':
          return [{ kind: 'horizon' }];
        case 'calendar':
          return [{ kind: 'calendar', resource: why.resource }];
        case 'resource':
        case 'state':
        case 'soil':
        case 'reservoir':
        case 'total':
        case 'tier':
          return [];
      }
    });
    return {
      kind: clash === null ? 'unknown' : 'impossible',
      clash,
      leastBad: bad === null ? null : withTimes(asked.old, bad.times),
      broken: [...this.pastBroken, ...limits],
      stopped,
      work: this.work,
    };
  }
}
