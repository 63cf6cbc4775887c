/**
 * The least bad way to go on where none that keeps every limit was found: limits go, as few minutes of them as the order needs.
 *
 * First only deadlines and longest gaps that the asker named go, and only then lengths and unnamed gaps. Where a contradiction has no
 * limit that may go (a pan waits for hands that are elsewhere), or what follows breaks what can never go, an order goes instead: by moves
 * from there, or in a plan built anew with those limits wide open, whose order then tells by how much they break.
 */
import { withTimes, type OrderArc } from '../explain/plan-order.ts';
import { endNode, startNode } from '../explain/taken.ts';
import type { Solution } from '../outcome.ts';
import type { Point, Problem, Task } from '../problem.ts';
import { verifySolution } from '../verify-solution.ts';
import type { ReplanAsked } from './asked.ts';
import { ArcTable } from './arc-table.ts';
import { boundsByFacts, carryOn } from './carry-on.ts';
import type { Going } from './improve.ts';
import { keptOrder, sequenceArcs, type KeptOrder } from './kept-order.ts';
import {
  both,
  giveWay,
  NOTHING,
  Readiness,
  widerArcs,
  widerProblem,
  type GaveWay,
  type LetGo,
  type Ready,
} from './let-go.ts';
import { shutHours } from './shut-hours.ts';
import { timesOf } from './worth.ts';

export interface LeastBad {
  readonly solution: Solution;
  readonly letGo: LetGo;
  /** Whether it keeps all that was not let go: soil, levels and looks on the way are not limits that could be. */
  readonly keepsTheRest: boolean;
}

export interface BadGround {
  readonly asked: ReplanAsked;
  /** Settled, what surely breaks let go. */
  readonly problem: Problem;
  readonly order: KeptOrder;
  readonly lower: Int32Array;
  readonly ready: Ready;
  /** Lags of the problem that never go. */
  readonly isKept: (lag: number) => boolean;
  readonly repaired: (problem: Problem, order: KeptOrder, cycle: readonly OrderArc[]) => Going | null;
  readonly inOldOrder: (problem: Problem) => Going | null;
}

/** @returns null where even work, order and facts contradict each other; what keeps not all the rest only where nothing found does */
export function leastBad(ground: BadGround): LeastBad | null {
  let fallback: LeastBad | null = null;
  for (const least of [Readiness.guarded, Readiness.hours]) {
    const { straight, anew } = letting(ground, least);
    if (straight?.keepsTheRest === true) return straight;
    if (anew !== null) return anew;
    fallback ??= straight;
  }
  for (const unnamed of [false, true]) {
    const going = ground.inOldOrder(widerProblem(ground.problem, everyLimit(ground, unnamed)));
    const tight = going === null ? null : tightened(ground, going.solution, Readiness.hours);
    if (tight !== null) return tight;
  }
  return fallback;
}

/** May take longer than it must. */
const isElastic = ({ modes }: Task): boolean => modes.some((mode) => mode !== null && mode.longest > mode.shortest);

/** Every longest gap and the end of the horizon wide open, ties apart; where `unnamed`, those that the asker did not name, too. */
function everyLimit({ problem, isKept }: BadGround, unnamed: boolean): LetGo {
  const name = (from: Point, to: Point): string =>
    [from, to].map((point) => (point === 'origin' ? '' : `${point.task} ${point.at}`)).join('\n');
  const gaps = new Map<string, number>();
  for (const { from, to, least } of problem.lags)
    gaps.set(name(from, to), Math.max(least, gaps.get(name(from, to)) ?? -Infinity));
  const wide = 2 * problem.horizon;
  return {
    ...NOTHING,
    lags: new Map(
      problem.lags.flatMap(({ from, to, least, requirement }, lag): [number, number][] => {
        // "At once" is told by two lags; the one back from a start to an end is the limit.
        const atOnce = least === 0 && requirement !== undefined && from !== 'origin' && to !== 'origin';
        const limit = atOnce
          ? from.at === 'start' && to.at === 'end'
          : least < 0 && gaps.get(name(to, from)) !== -least && (unnamed || requirement !== undefined);
        return limit && !isKept(lag) ? [[lag, wide]] : [];
      }),
    ),
    lengths: new Map(unnamed ? problem.tasks.filter(isElastic).map(({ id }) => [id, wide]) : []),
    horizon: problem.horizon,
  };
}

/** Ways to go on that let go limits this ready only: in the old order, and where that keeps not all else, in another. */
function letting(ground: BadGround, least: number): { straight: LeastBad | null; anew: LeastBad | null } {
  const { asked, problem, order, lower } = ground;
  const arcs = [...order.arcs, ...sequenceArcs(order.sequences)];
  const gave = giveWay(arcs, lower, 4 * problem.horizon, ground.ready, least);
  const straight = inThisOrder(ground, asked.old, arcs, lower, gave);
  if (straight?.keepsTheRest === true) return { straight, anew: null };
  const open = wideOpen(problem, gave.letGo);
  const wider = widerProblem(problem, open);
  const cycle = gave.times === null ? gave.met.at(-1)!.arcs : null;
  const going =
    (cycle === null ? null : ground.repaired(wider, { ...order, arcs: widerArcs(order.arcs, open) }, cycle)) ??
    ground.inOldOrder(wider);
  return { straight, anew: going === null ? null : tightened(ground, going.solution, least) };
}

/** Limits open to the end, so that only what else is asked decides. */
const wideOpen = (problem: Problem, { lags, ...rest }: LetGo): LetGo => ({
  ...rest,
  lags: new Map([...lags.keys()].map((lag) => [lag, 2 * problem.horizon])),
});

/** Times near the old ones in an order, with the limits let go that it asks to. */
function inThisOrder(
  { asked, problem }: BadGround,
  solution: Solution,
  arcs: readonly OrderArc[],
  lower: Int32Array,
  gave: GaveWay,
): LeastBad | null {
  if (gave.times === null) return null;
  const carried = carryOn(asked, ArcTable.of(widerArcs(arcs, gave.letGo)), lower);
  if (carried.kind === 'cycle') return null;
  const timed = withTimes(solution, carried.times);
  const keepsTheRest = verifySolution(widerProblem(problem, gave.letGo), timed).length === 0;
  return { solution: timed, letGo: gave.letGo, keepsTheRest };
}

/** A plan made with limits wide open, with them as narrow as its order allows. */
function tightened(ground: BadGround, solution: Solution, least: number): LeastBad | null {
  const { asked } = ground;
  // Of hours that were let go nothing can be read out of its order.
  const shut: LetGo = { ...NOTHING, hours: shutHours(ground.problem, solution) };
  const problem = widerProblem(ground.problem, shut);
  const order = keptOrder(problem, solution, asked.facts);
  const arcs = [...order.arcs, ...sequenceArcs(order.sequences)];
  const lower = boundsByFacts(asked, (task) => solution.tasks[task] !== null);
  const gave = giveWay(arcs, lower, 4 * problem.horizon, ground.ready, least);
  const tight = inThisOrder({ ...ground, problem }, solution, arcs, lower, gave);
  if (tight?.keepsTheRest === true) return { ...tight, letGo: both(shut, tight.letGo) };
  // Its own times are a way to go on, too, however far they go over.
  const over = overOf(problem, solution);
  return verifySolution(widerProblem(problem, over), solution).length === 0
    ? { solution, letGo: both(shut, over), keepsTheRest: true }
    : null;
}

type Limit = { readonly kind: 'lag'; readonly lag: number } | { readonly kind: 'length'; readonly task: string };

function gapsIn(problem: Problem, solution: Solution): (lag: number) => number {
  const times = timesOf(solution);
  const position = new Map(problem.tasks.map((task, index) => [task.id, index]));
  const at = (point: Point): number => {
    if (point === 'origin') return 0;
    const task = position.get(point.task)!;
    return times[point.at === 'start' ? startNode(task) : endNode(task)]!;
  };
  return (lag) => {
    const { from, to, least } = problem.lags[lag]!;
    const [a, b] = [at(from), at(to)];
    return a < 0 || b < 0 ? 0 : Math.max(0, least - (b - a));
  };
}

/** Minutes that named lags without a condition lack in a solution. */
function overOf(problem: Problem, solution: Solution): LetGo {
  const over = gapsIn(problem, solution);
  return {
    ...NOTHING,
    lags: new Map(
      problem.lags.flatMap(({ least, requirement }, lag): [number, number][] => {
        const by = least > 0 || requirement === undefined ? 0 : over(lag);
        return by > 0 ? [[lag, by]] : [];
      }),
    ),
  };
}

/** @returns a function: minutes by which a solution goes over those limits of the problem that were let go */
export function minutesOver(problem: Problem, { lags, lengths }: LetGo): (solution: Solution) => number {
  const position = new Map(problem.tasks.map((task, index) => [task.id, index]));
  return (solution) => {
    const over = gapsIn(problem, solution);
    let sum = 0;
    for (const lag of lags.keys()) sum += over(lag);
    for (const task of lengths.keys()) sum += lengthOver(problem, solution, position.get(task)!);
    return sum;
  };
}

/** Minutes over the longest length of any mode. */
function lengthOver(problem: Problem, { tasks }: Solution, task: number): number {
  const at = tasks[task] ?? null;
  if (at === null) return 0;
  const longest = problem.tasks[task]!.modes.reduce((most, mode) => Math.max(most, mode?.longest ?? 0), 0);
  return Math.max(0, at.end - at.start - longest);
}

/** @returns a function: whether a solution goes over a limit of the problem */
export function isOverIn(problem: Problem, solution: Solution): (limit: Limit) => boolean {
  const position = new Map(problem.tasks.map((task, index) => [task.id, index]));
  const over = gapsIn(problem, solution);
  return (limit) =>
    limit.kind === 'lag' ? over(limit.lag) > 0 : lengthOver(problem, solution, position.get(limit.task)!) > 0;
}
