/**
 * Limits let go: where gaps ask for more time than they give, one limit of each contradiction is widened by the minutes that are
 * missing, until times can be had. Work, order and facts are never widened, only what says "no longer than" or "no later than".
 *
 * Of the limits in a contradiction the first of these goes: the end of the horizon; a limit from the origin (a deadline, a fixed
 * start); a longest gap that the asker named, one that is guarded after all others; a longest gap or length that leaves room, which the
 * asker did not name; the hours of a resource. Ties without a gap, by which two points are one, stay.
 */
import type { OrderArc } from '../explain/plan-order.ts';
import type { Problem, Task } from '../problem.ts';
import { ArcTable } from './arc-table.ts';
import { pushRight } from './push-right.ts';

/** How readily a limit goes, the more the sooner; below 0: never. */
export const Readiness = { never: -1, hours: 0, within: 1, guarded: 2, named: 3, deadline: 4, horizon: 5 } as const;

export type Ready = (arc: OrderArc) => number;

/** Minutes that limits are widened by, beside a problem; positions are those of its lags. */
export interface LetGo {
  readonly lags: ReadonlyMap<number, number>;
  /** By task: of its longest length. */
  readonly lengths: ReadonlyMap<string, number>;
  readonly horizon: number;
  /** Resources that are there at all hours. */
  readonly hours: ReadonlySet<string>;
}

export const NOTHING: LetGo = { lags: new Map(), lengths: new Map(), horizon: 0, hours: new Set() };

export const isNothing = ({ lags, lengths, horizon, hours }: LetGo): boolean =>
  lags.size === 0 && lengths.size === 0 && horizon === 0 && hours.size === 0;

const isStart = (node: number): boolean => node % 2 === 1;

/**
 * @param arcs all that are to be kept, among which ties are found
 * @param isFact arcs that say when a point was, or that it lies ahead; and others that never go
 * @param isGuarded lags that go after all others of the asker's
 */
export function readinessAmong(
  arcs: readonly OrderArc[],
  isFact: (arc: OrderArc) => boolean,
  isGuarded: (lag: number) => boolean,
): Ready {
  // Few arcs are ever asked about, and none where nothing contradicts.
  const tied = ({ from, to, least }: OrderArc): boolean => {
    let most = -Infinity;
    for (const back of arcs) if (back.from === to && back.to === from && back.least > most) most = back.least;
    return most === -least;
  };
  return (arc) => {
    if (isFact(arc)) return Readiness.never;
    const { why, from, to, least } = arc;
    switch (why.kind) {
      case 'horizon':
        return to === 0 ? Readiness.horizon : Readiness.never;
      case 'lag': {
        const named = isGuarded(why.lag) ? Readiness.guarded : Readiness.named;
        if (from === 0 || to === 0) return least > 0 ? Readiness.never : Math.min(named + 1, Readiness.deadline);
        if (least > 0) return Readiness.never;
        if (least < 0) return tied(arc) || why.requirement === undefined ? Readiness.within : named;
        // "At once" is told by two lags; the one back from a start to an end is the limit.
        return why.requirement !== undefined && isStart(from) && !isStart(to) ? named : Readiness.never;
      }
      case 'length':
        // Spans that things are held for may be as long as it takes; work takes what it takes.
        return least < 0 && !tied(arc) ? Readiness.within : Readiness.never;
      case 'calendar':
        return Readiness.hours;
      case 'resource':
      case 'state':
      case 'soil':
      case 'reservoir':
      case 'total':
      case 'tier':
        return Readiness.never;
    }
  };
}

/** What is over in a contradiction: its arcs and the minutes that they ask for beyond what they give. */
export interface Contradiction {
  readonly arcs: readonly OrderArc[];
  readonly excess: number;
  /** The limit that goes; null where none can. */
  readonly goes: OrderArc | null;
}

export interface GaveWay {
  readonly letGo: LetGo;
  /** With the limits widened; null where a contradiction is left of which none can go. */
  readonly times: Int32Array | null;
  /** Every contradiction met, in order; where there are no times the last one is left. */
  readonly met: readonly Contradiction[];
}

const STEPS = 400;

/**
 * Widens limits until times can be had.
 *
 * @param most no time can be later than this without a contradiction, minutes
 * @param least only limits this ready go
 */
export function giveWay(
  arcs: readonly OrderArc[],
  lower: Int32Array,
  most: number,
  ready: Ready,
  least: number = Readiness.hours,
): GaveWay {
  const wide = [...arcs];
  const met: Contradiction[] = [];
  let positions: ReadonlyMap<OrderArc, number> | undefined;
  const widened = new Map<OrderArc, number>();
  const original = new Map<OrderArc, OrderArc>();
  let times: Int32Array | null = null;
  for (let step = 0; step < STEPS; step++) {
    const pushed = pushRight(lower.length, ArcTable.of(wide), lower, most);
    if (pushed.kind === 'times') {
      times = pushed.times;
      break;
    }
    const cycle = pushed.arcs.map((arc) => original.get(arc) ?? arc);
    const [first, last] = [pushed.arcs[0]!, pushed.arcs.at(-1)!];
    // A way that does not close begins at a lower bound.
    const from = last.from === first.to ? 0 : Math.max(0, lower[last.from]!);
    const excess = pushed.arcs.reduce((sum, arc) => sum + arc.least, from);
    const goes = readiest(cycle, ready, least);
    met.push({ arcs: cycle, excess, goes });
    if (goes === null || excess <= 0) break;
    const by = (widened.get(goes) ?? 0) + excess;
    const wider = { ...goes, least: goes.least - by };
    widened.set(goes, by);
    original.set(wider, goes);
    positions ??= new Map(arcs.map((arc, index) => [arc, index]));
    wide[positions.get(goes)!] = wider;
  }
  return { letGo: letGoOf(widened), times, met };
}

function readiest(cycle: readonly OrderArc[], ready: Ready, least: number): OrderArc | null {
  let [best, most] = [null as OrderArc | null, least - 1];
  for (const arc of cycle) {
    const own = ready(arc);
    if (own >= 0 && own > most) [best, most] = [arc, own];
  }
  return best;
}

function letGoOf(widened: ReadonlyMap<OrderArc, number>): LetGo {
  const lags = new Map<number, number>();
  const lengths = new Map<string, number>();
  const hours = new Set<string>();
  let horizon = 0;
  for (const [{ why }, by] of widened) {
    if (why.kind === 'lag') lags.set(why.lag, Math.max(by, lags.get(why.lag) ?? 0));
    else if (why.kind === 'length') lengths.set(why.task, Math.max(by, lengths.get(why.task) ?? 0));
    else if (why.kind === 'horizon') horizon = Math.max(horizon, by);
    else if (why.kind === 'calendar') hours.add(why.resource);
  }
  return { lags, lengths, horizon, hours };
}

/** Both widened, one after the other. */
export function both(a: LetGo, b: LetGo): LetGo {
  const sum = <K>(one: ReadonlyMap<K, number>, two: ReadonlyMap<K, number>): ReadonlyMap<K, number> => {
    const all = new Map(one);
    for (const [key, by] of two) all.set(key, by + (all.get(key) ?? 0));
    return all;
  };
  return {
    lags: sum(a.lags, b.lags),
    lengths: sum(a.lengths, b.lengths),
    horizon: a.horizon + b.horizon,
    hours: new Set([...a.hours, ...b.hours]),
  };
}

/** Arcs of an order with limits widened. Those of hours let go are left out. */
export function widerArcs(arcs: readonly OrderArc[], letGo: LetGo): readonly OrderArc[] {
  if (isNothing(letGo)) return arcs;
  const { lags, lengths, horizon, hours } = letGo;
  return arcs.flatMap((arc): readonly OrderArc[] => {
    const { why, least, to } = arc;
    let by = 0;
    if (why.kind === 'lag') by = lags.get(why.lag) ?? 0;
    else if (why.kind === 'length' && least < 0) by = lengths.get(why.task) ?? 0;
    else if (why.kind === 'horizon' && to === 0) by = horizon;
    else if (why.kind === 'calendar' && hours.has(why.resource)) return [];
    return [by === 0 ? arc : { ...arc, least: least - by }];
  });
}

/** A problem with limits widened. */
export function widerProblem(problem: Problem, letGo: LetGo): Problem {
  if (isNothing(letGo)) return problem;
  const { lags, lengths, horizon, hours } = letGo;
  return {
    ...problem,
    horizon: problem.horizon + horizon,
    lags: problem.lags.map((lag, index) => (lags.has(index) ? { ...lag, least: lag.least - lags.get(index)! } : lag)),
    tasks: problem.tasks.map((task): Task => {
      const by = lengths.get(task.id) ?? 0;
      if (by === 0) return task;
      return { ...task, modes: task.modes.map((mode) => mode && { ...mode, longest: mode.longest + by }) };
    }),
    resources: problem.resources.map((resource) => {
      const { calendar: _, ...always } = resource;
      return hours.has(resource.id) ? always : resource;
    }),
  };
}
