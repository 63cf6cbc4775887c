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
import { NO_PLACE } from '../exhausted.ts';
import { Budget } from '../budget.ts';
import { withTimes, type OrderArc } from '../explain/plan-order.ts';
import { byNumber, startNode } from '../explain/by-number.ts';
import { LEARNER_UNITS, Learner, SLICE } from '../learning/learner.ts';
import type { Clash, Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import { verifySolution } from '../verify-solution.ts';
import { OPEN, type ReplanAsked, type Worth } from './asked.ts';
import { ArcTable } from './arc-table.ts';
import { boundsByFacts, carryOn } from './carry-on.ts';
import { condition, tasksLeft } from './condition.ts';
import { exactProblem } from './exact.ts';
import { improve, type Going } from './improve.ts';
import { keptOrder, sequenceArcs, type KeptOrder } from './kept-order.ts';
import { buildCost } from './build-cost.ts';
import { byBoth, byLearner } from './from-nothing.ts';
import { isOverIn, leastBad, minutesOver } from './least-bad.ts';
import { both, giveWay, NOTHING, widerArcs, widerProblem, type LetGo } from './let-go.ts';
import { withoutMeetings } from './met.ts';
import { pushRight } from './push-right.ts';
import { surelyBroken, type SurelyBroken } from './surely-broken.ts';
import { repair } from './repair.ts';
import { plansInOrder } from '../search/plans-in-order.ts';
import { shutHours } from './shut-hours.ts';
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
      /** A way to go on with some limits let go that keeps all else; null where none was found. */
      readonly leastBad: Solution | null;
      /**
       * The least bad; where there is none, the old order with limits let go, though it breaks what can never go (soil, a level, a look on the way). No way
       * to go on: it tells what stands against one. null where not even times could be had.
       */
      readonly nearest: Solution | null;
      /** Where not even times could be had: positions of the tasks that stand in each other's way, limits let go. */
      readonly inTheWay: readonly number[];
      /** Limits that either breaks, and those that the past has broken. */
      readonly broken: readonly BrokenLimit[];
      readonly stopped: boolean;
      readonly work: number;
    };

type NoneWithin = Extract<ReplanOutcome, { readonly clash: unknown }>;

/** Effort for the fewest moves that make the old order possible again, as a share of that asked. */
const REPAIR_SHARE = 0.25;
/** The same for plans built in the old order. */
const IN_ORDER_SHARE = 0.25;
/** Plans built in the old order whose times are drawn near the old ones, those of least worth. */
const DRAWN_NEAR = 3;
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

/** Whether two solutions of a problem take the same options at the same times. */
const isSame = (a: Solution, b: Solution): boolean =>
  a.choices.every((option, choice) => option === b.choices[choice]) &&
  a.tasks.every((at, task) => at?.start === b.tasks[task]?.start && at?.end === b.tasks[task]?.end);

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
  private otherWork = 0;

  constructor(private readonly asked: ReplanAsked) {
    this.settled = settle(asked);
    this.worth = worthOf(asked);
    this.budget = new Budget(asked.effort, asked.shouldStop);
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

  private get work(): number {
    return this.budget.spent + this.otherWork;
  }

  private get left(): number {
    return this.asked.effort - this.work;
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
    const { asked, problem, settled } = this;
    const none = { clash: null, stopped: false };
    if (cycle !== null) {
      const mended = this.repaired(problem, this.order, cycle);
      if (mended !== null) return { going: mended, ...none };
    }
    const { going, clash } = this.inOldOrder(problem);
    if (going !== null || clash !== null) return { going, clash, stopped: false };
    if (isSure || this.left < FROM_NOTHING) return { going: null, clash: null, stopped: true };
    const learnt = byLearner(asked, problem, settled.decided, bound, Math.floor(this.left / 2));
    this.otherWork += learnt.work;
    if (learnt.solution !== null) return { going: this.closer(learnt.solution), ...none };
    if (learnt.clash !== null || learnt.stopped || this.left < FROM_NOTHING / 2) return { going: null, ...learnt };
    const found = byBoth(asked, problem, settled.decided, this.left);
    this.otherWork += found.work;
    return { ...found, going: found.solution === null ? null : this.closer(found.solution) };
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
    const budget = new Budget(Math.min(this.left, asked.effort * REPAIR_SHARE), asked.shouldStop);
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

  /** The best of some plans built in the old order. */
  private inOldOrder(problem: Problem): { readonly going: Going | null; readonly clash: Clash | null } {
    const { asked, settled } = this;
    const small = condition(problem, settled.decided);
    const budget = new Budget(Math.min(this.left, asked.effort * IN_ORDER_SHARE), asked.shouldStop);
    const { plans, impossible } = plansInOrder(small.problem, small.narrow(asked.old), asked.seed, budget);
    this.budget.spendAllOf(budget);
    const wide = plans
      .map((plan) => small.widen(plan))
      .map((solution) => ({ solution, total: this.worth(solution).total }))
      .sort((a, b) => a.total - b.total);
    let going: Going | null = null;
    for (const [index, { solution, total }] of wide.slice(0, DRAWN_NEAR).entries()) {
      // Dives often end in the same plan.
      const before = wide[index - 1];
      if (before?.total === total && isSame(before.solution, solution)) continue;
      const each = this.closer(solution, problem);
      if (going === null || each.worth.total < going.worth.total) going = each;
    }
    return { going, clash: impossible ? NO_PLACE : null };
  }

  /** The learner on the whole question. */
  private exactly(start: Going, bound: number, carriedOn: number | null): ReplanOutcome {
    const { asked, settled, problem: whole } = this;
    if (this.left <= 0 || this.budget.over()) return this.outcome(start, carriedOn, bound);
    const still = this.still(start);
    const decided = [...settled.decided];
    const position = byNumber(whole).choices;
    const frozen = whole.tasks.flatMap((task, index) => {
      if (start.solution.tasks[index] == null || asked.facts[startNode(index)] !== OPEN || !still(index)) return [];
      if (task.choice !== undefined) {
        const choice = position.get(task.choice)!;
        decided[choice] = start.solution.choices[choice]!;
      }
      return [{ task: task.id, at: start.solution.tasks[index].start }];
    });
    // What the question adds takes no resource.
    const cost = buildCost(tasksLeft(whole, decided));
    if (cost > this.left) return this.outcome(start, carriedOn, bound);
    const exact = exactProblem(asked, whole, bound, start.worth.total);
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
    this.otherWork += cost;
    const learner = new Learner(problem, asked.seed);
    if (!learner.offer(narrow(exact.extend(start.solution, start.worth.finish, start.worth.changed))))
      return this.outcome(start, carriedOn, bound);
    const began = this.otherWork;
    let stopped = false;
    while (!learner.done && !learner.model.tooLarge) {
      const left = asked.effort - this.work;
      if (left <= 0) break;
      const step = learner.improve({
        conflicts: SLICE,
        work: left * LEARNER_UNITS,
        ...(asked.shouldStop === undefined ? {} : { shouldStop: asked.shouldStop }),
      });
      this.otherWork = began + Math.floor(learner.work / LEARNER_UNITS);
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
  private closer(solution: Solution, problem = this.problem): Going {
    const { asked } = this;
    const order = keptOrder(problem, solution, asked.facts);
    const lower = boundsByFacts(asked, (task) => solution.tasks[task] !== null);
    const carried = carryOn(asked, ArcTable.of(order.arcs).along(order.sequences), lower);
    const plain = { solution, worth: this.worth(solution) };
    if (carried.kind === 'cycle') return plain;
    const near = withTimes(solution, carried.times);
    const worth = this.worth(near);
    return worth.total <= plain.worth.total && verifySolution(problem, near).length === 0
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
      leastFinish: this.sure.leastFinish,
      carriedOn,
      broken: this.limitsBroken(NOTHING),
      stopped: stopped && !proven,
      work: this.work,
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
      isKept: this.isKept(),
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

  /** Facts, and lags that the asker never lets go. */
  private isKept(): (lag: number) => boolean {
    const { asked, settled } = this;
    const original = asked.problem.lags.flatMap((_, index) => (settled.broken.includes(index) ? [] : [index]));
    return (lag) => lag >= settled.factLags || asked.kept?.has(original[lag]!) === true;
  }

  private broken(clash: Clash | null, solution: Solution | null, letGo: LetGo, stopped: boolean): NoneWithin {
    return {
      kind: clash === null ? 'unknown' : 'impossible',
      clash,
      leastBad: solution,
      nearest: solution,
      inTheWay: [],
      broken: this.limitsBroken(letGo, solution),
      stopped,
      work: this.work,
    };
  }

  /** Those that the past has broken, and of those let go the ones that a way to go on does not keep. */
  private limitsBroken(letGo: LetGo, solution: Solution | null = null): readonly BrokenLimit[] {
    const { asked, settled } = this;
    const lagLimit = (lag: number): BrokenLimit => {
      const { requirement } = asked.problem.lags[lag]!;
      return { kind: 'lag', lag, ...(requirement === undefined ? {} : { requirement }) };
    };
    const kept = asked.problem.lags.flatMap((_, index) => (settled.broken.includes(index) ? [] : [index]));
    const isOver = solution === null ? () => true : isOverIn(settled.problem, solution);
    return [
      ...settled.broken.map(lagLimit),
      ...[...letGo.lags.keys()].filter((lag) => isOver({ kind: 'lag', lag })).map((lag) => lagLimit(kept[lag]!)),
      ...[...letGo.lengths.keys()]
        .filter((task) => isOver({ kind: 'length', task }))
        .map((task) => ({ kind: 'length', task }) as const),
      ...(letGo.horizon > 0 ? [{ kind: 'horizon' } as const] : []),
      ...[...letGo.hours].map((resource) => ({ kind: 'calendar', resource }) as const),
    ];
  }
}
