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
import { Budget, STEPS } from '../budget.ts';
import { withTimes, type OrderArc } from '../explain/plan-order.ts';
import { startNode } from '../explain/by-number.ts';
import type { Clash, Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import { verifySolution } from '../verify-solution.ts';
import { OPEN, type ReplanAsked, type Worth } from './asked.ts';
import { ArcTable } from './arc-table.ts';
import { keptLags, limitsBroken } from './broken-limits.ts';
import { boundsByFacts, carryOn } from './carry-on.ts';
import { closer } from './closer.ts';
import { exactly } from './exactly.ts';
import { byBoth, byLearner, type FromNothing } from './from-nothing.ts';
import { improve, type Going } from './improve.ts';
import { inOldOrder, type InOldOrder } from './in-old-order.ts';
import { keptOrder, sequenceArcs, type KeptOrder } from './kept-order.ts';
import { leastBad, minutesOver } from './least-bad.ts';
import { both, giveWay, NOTHING, widerArcs, widerProblem, type LetGo } from './let-go.ts';
import { withoutMeetings } from './met.ts';
import type { NoneWithin, ReplanOutcome, WayOn } from './outcome.ts';
import { pushRight } from './push-right.ts';
import { surelyBroken, type SurelyBroken } from './surely-broken.ts';
import { repair } from './repair.ts';
import { shutHours } from './shut-hours.ts';
import { settle, type Settled } from './settled.ts';
import { worthOf } from './worth.ts';

/** Effort for the fewest moves that make the old order possible again, as a share of that asked. */
const REPAIR_SHARE = 0.125;
/** Least effort left for a search from nothing: with less it has never been seen to find what the stages before did not. */
const FROM_NOTHING = 60_000;

/** What a minute over a limit that might be kept weighs. */
const OVER = 1000;

/**
 * Replans.
 *
 * @throws Error where the old plan is no plan of the problem's tasks (a promise broken by the caller)
 */
export function replan(asked: ReplanAsked): ReplanOutcome {
  return new Replanning(asked).run();
}

interface Found {
  readonly going: Going | null;
  readonly clash: Clash | null;
  readonly stopped: boolean;
}

class Replanning {
  private readonly settled: Settled;
  private readonly worth: (solution: Solution) => Worth;
  private readonly budget: Budget;
  private readonly order: KeptOrder;
  private readonly lower: Int32Array;
  private readonly sure: SurelyBroken;
  /** Hours that the old plan does not keep. */
  private readonly shut: ReadonlySet<string>;
  /** Limits that surely break, and those hours; all that is searched keeps the rest. */
  private readonly letGo: LetGo;
  /** Settled, without what is let go. */
  private readonly problem: Problem;
  private readonly arcs: readonly OrderArc[];

  constructor(private readonly asked: ReplanAsked) {
    this.settled = settle(asked);
    this.worth = worthOf(asked);
    const effort = this.settled.hasMetSoil ? (asked.effortIfSoiled ?? asked.effort) : asked.effort;
    this.budget = new Budget(effort, asked.shouldStop);
    this.sure = surelyBroken(asked, this.settled);
    this.shut = shutHours(this.settled.problem, asked.old);
    this.letGo = both(this.sure.letGo, { ...NOTHING, hours: this.shut });
    this.problem = widerProblem(this.settled.problem, this.letGo);
    // Soil that it meets and hours that it does not keep are for what is searched to keep: its order tells nothing of them.
    const readable = widerProblem(this.settled.problem, { ...NOTHING, hours: this.shut });
    const order = keptOrder(withoutMeetings(readable, asked.old), asked.old, asked.facts);
    this.order = { ...order, arcs: widerArcs(order.arcs, this.letGo) };
    this.lower = boundsByFacts(asked, (task) => asked.old.tasks[task] !== null);
    this.arcs = [...this.order.arcs, ...sequenceArcs(this.order.sequences)];
  }

  run(): ReplanOutcome {
    const outcome = this.wayOn();
    if ('clash' in outcome || this.keepsHours(outcome.solution)) return outcome;
    const inTime = this.atTheEarliest();
    if (inTime !== null) return this.outcome(inTime, null, outcome.bound, outcome.stopped);
    const hours = shutHours(this.settled.problem, outcome.solution);
    return this.broken(null, outcome.solution, both(this.sure.letGo, { ...NOTHING, hours }), outcome.stopped);
  }

  /** The old order at the earliest times, as which it may keep hours that it did not keep; null where it does not. */
  private atTheEarliest(): Going | null {
    const { asked, problem, sure } = this;
    const pushed = pushRight(this.lower.length, ArcTable.of(this.arcs), this.lower, 4 * problem.horizon);
    if (pushed.kind === 'cycle') return null;
    const solution = withTimes(asked.old, pushed.times);
    const isKept = verifySolution(widerProblem(this.settled.problem, sure.letGo), solution).length === 0;
    return isKept && sure.clash === null ? { solution, worth: this.worth(solution) } : null;
  }

  private keepsHours(solution: Solution): boolean {
    return this.shut.size === 0 || shutHours(this.settled.problem, solution).size === 0;
  }

  private wayOn(): ReplanOutcome {
    const { asked, problem, sure } = this;
    const bound = sure.leastFinish;
    const carried = carryOn(asked, ArcTable.of(this.arcs), this.lower);
    let best: Going | null = null;
    if (carried.kind === 'times') {
      const solution = withTimes(asked.old, carried.times);
      if (verifySolution(problem, solution).length === 0) best = { solution, worth: this.worth(solution) };
    }
    const isWithin = best !== null && sure.clash === null && this.keepsHours(best.solution);
    const carriedOn = isWithin ? best!.worth.total : null;
    let { clash } = sure;
    let stopped = false;
    if (best === null && asked.effort > 0 && sure.possible) {
      const found = this.within(carried.kind === 'cycle' ? carried.arcs : null, bound, clash !== null);
      best = found.going;
      clash ??= found.clash;
      stopped = found.stopped;
    }
    if (best === null) return this.without(clash, stopped || asked.effort <= 0);
    if (clash === null && this.isSettled(best, bound)) return this.outcome(best, carriedOn, best.worth.total);
    if (clash === null && (asked.effort <= 0 || this.isGoodEnough(best))) return this.outcome(best, carriedOn, bound);
    const better = asked.effort <= 0 ? best : this.improved(problem, best, this.worth);
    if (clash !== null) return this.broken(clash, better.solution, this.letGo, stopped);
    if (this.isSettled(better, bound)) return this.outcome(better, carriedOn, better.worth.total);
    return this.exactly(better, bound, carriedOn);
  }

  /** A way to go on where the old order leads nowhere, by one stage after the other. */
  private within(cycle: readonly OrderArc[] | null, bound: number, isSure: boolean): Found {
    const { asked, budget, problem, settled } = this;
    const none = { clash: null, stopped: false };
    if (cycle !== null) {
      const mended = this.repaired(problem, this.order, cycle);
      if (mended !== null) return { going: mended, ...none };
    }
    const { going, clash } = this.inOldOrder(problem);
    if (going !== null || clash !== null) return { going, clash, stopped: false };
    if (isSure || budget.left < FROM_NOTHING) return { going: null, clash: null, stopped: true };
    const learnt = this.counted(byLearner(asked, problem, settled.decided, bound, Math.floor(budget.left / 2)));
    if (learnt.solution !== null) return { going: this.closer(learnt.solution), ...none };
    if (learnt.clash !== null || learnt.stopped || budget.left < FROM_NOTHING / 2) return { going: null, ...learnt };
    const found = this.counted(byBoth(asked, problem, settled.decided, budget.left));
    return { ...found, going: found.solution === null ? null : this.closer(found.solution) };
  }

  private counted(found: FromNothing): FromNothing {
    this.budget.spend(found.work * STEPS);
    return found;
  }

  private improved(problem: Problem, from: Going, worth: (solution: Solution) => Worth): Going {
    return improve(
      this.asked,
      problem,
      from,
      worth,
      (choice) => this.settled.decided[choice] !== null,
      this.still(from),
      this.order.arcs.length,
      this.budget,
    );
  }

  /** Whether nothing can be better. Orders that count as no change (in an oven, of washes) may still gain minutes, so a small gap is none. */
  private isSettled({ worth }: Going, bound: number): boolean {
    return worth.total <= bound;
  }

  private isGoodEnough({ worth }: Going): boolean {
    return worth.changed.length === 0 && worth.finish <= (this.asked.goodEnough ?? -1);
  }

  /** Begun, or due soon. */
  private still({ solution }: Going): (task: number) => boolean {
    const { facts, frozenUntil } = this.asked;
    return (task) => {
      const start = solution.tasks[task]?.start;
      return facts[startNode(task)] !== OPEN || (start !== undefined && start < frozenUntil);
    };
  }

  private repaired(problem: Problem, order: KeptOrder, cycle: readonly OrderArc[]): Going | null {
    const { asked, settled } = this;
    const budget = new Budget(Math.min(this.budget.left, asked.effort * REPAIR_SHARE), asked.shouldStop);
    const mended = repair(
      asked,
      problem,
      order,
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

  private inOldOrder(problem: Problem): InOldOrder {
    return inOldOrder(this.asked, problem, this.settled.decided, this.worth, this.budget);
  }

  private closer(solution: Solution): Going {
    return closer(this.asked, this.problem, solution, this.worth, this.budget);
  }

  /** The learner on the whole question, where what is left of the effort is enough for it. */
  private exactly(start: Going, bound: number, carriedOn: number | null): WayOn {
    const { asked, budget, problem, settled } = this;
    const learnt = exactly(asked, problem, settled.decided, start, this.still(start), bound, budget);
    if (learnt === null) return this.outcome(start, carriedOn, bound);
    const found = this.closer(learnt.solution);
    const proved = learnt.proven ? found.worth.total : bound + learnt.bound;
    return this.outcome(found, carriedOn, Math.max(bound, Math.min(proved, found.worth.total)), learnt.stopped);
  }

  private outcome(best: Going, carriedOn: number | null, bound: number, stopped = this.budget.stopped): WayOn {
    const proven = this.isSettled(best, bound);
    return {
      kind: proven ? 'proven' : 'bounded',
      solution: best.solution,
      worth: best.worth,
      bound: proven ? best.worth.total : bound,
      leastFinish: this.sure.leastFinish,
      carriedOn,
      broken: limitsBroken(this.asked, this.settled, NOTHING),
      stopped: stopped && !proven,
      work: this.budget.spent,
    };
  }

  /** No way to go on within every limit that might have been kept was found: more of them go. */
  private without(clash: Clash | null, stopped: boolean): ReplanOutcome {
    const { asked, sure, problem } = this;
    const bad = leastBad({
      asked,
      problem,
      order: this.order,
      lower: this.lower,
      ready: sure.ready,
      isKept: keptLags(asked, this.settled),
      repaired: asked.effort <= 0 ? () => null : (wider, order, cycle) => this.repaired(wider, order, cycle),
      inOldOrder: asked.effort <= 0 ? () => null : (wider) => this.inOldOrder(wider).going,
    });
    if (bad === null) return { ...this.broken(clash, null, this.letGo, stopped), inTheWay: this.inTheWay() };
    const letGo = both(this.letGo, bad.letGo);
    if (!bad.keepsTheRest) return { ...this.broken(clash, bad.solution, letGo, stopped), leastBad: null };
    if (asked.effort <= 0) return this.broken(clash, bad.solution, letGo, stopped);
    // Minutes over a limit that might be kept weigh more than all that is lost by keeping it.
    const over = minutesOver(problem, bad.letGo);
    const worth = (solution: Solution): Worth => {
      const plain = this.worth(solution);
      return { ...plain, total: plain.total + OVER * over(solution) };
    };
    const better = this.improved(
      widerProblem(problem, bad.letGo),
      { solution: bad.solution, worth: worth(bad.solution) },
      worth,
    );
    return this.broken(clash, better.solution, letGo, stopped);
  }

  /** Tasks of the contradiction in the old order that no limit let go resolves. */
  private inTheWay(): readonly number[] {
    const { met } = giveWay(this.arcs, this.lower, 4 * this.problem.horizon, this.sure.ready);
    const nodes = (met.at(-1)?.arcs ?? []).flatMap(({ from, to }) => [from, to]).filter((node) => node > 0);
    return [...new Set(nodes.map((node) => (node - 1) >> 1))].sort((a, b) => a - b);
  }

  private broken(clash: Clash | null, solution: Solution | null, letGo: LetGo, stopped: boolean): NoneWithin {
    return {
      kind: clash === null ? 'unknown' : 'impossible',
      clash,
      leastBad: solution,
      nearest: solution,
      inTheWay: [],
      broken: limitsBroken(this.asked, this.settled, letGo, solution),
      stopped,
      work: this.budget.spent,
    };
  }
}
