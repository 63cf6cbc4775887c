/**
 * Where the old order cannot be carried on within every limit: limits are let go, one of each contradiction at a time, until it
 * can. Work, order and facts are never let go, only what says "no longer than" or "no later than".
 *
 * Of the limits in a contradiction the first of these goes: the end of the horizon; a limit from the origin (a deadline, a fixed
 * start); a longest gap or length that leaves room; one that leaves none. Ties without a gap, by which two points are one, stay.
 */
import type { OrderArc } from '../explain/plan-order.ts';
import { carryOn } from './carry-on.ts';
import type { ReplanAsked } from './asked.ts';

export interface LeastBad {
  readonly times: Int32Array;
  readonly finish: number;
  /** Limits that the times break. */
  readonly broken: readonly OrderArc[];
}

const STEPS = 400;

const isStart = (node: number): boolean => node % 2 === 1;

/** How readily a limit is let go; −1: never. */
function readiness(arc: OrderArc, tied: (arc: OrderArc) => boolean, fact: (arc: OrderArc) => boolean): number {
  if (fact(arc)) return -1;
  switch (arc.why.kind) {
    case 'horizon':
      return arc.to === 0 ? 4 : -1;
    case 'lag':
      if (arc.from === 0 || arc.to === 0) return 3;
      if (arc.least > 0) return -1;
      if (arc.least < 0) return tied(arc) ? 1 : 2;
      // "At once" is told by two lags; the one back from a start to an end is the limit.
      return arc.why.requirement !== undefined && isStart(arc.from) && !isStart(arc.to) ? 2 : -1;
    case 'length':
      // Spans that things are held for may be as long as it takes; work takes what it takes.
      return arc.least < 0 && !tied(arc) ? 1 : -1;
    case 'calendar':
      return 0;
    case 'resource':
    case 'state':
    case 'soil':
    case 'reservoir':
    case 'total':
    case 'tier':
      return -1;
  }
}

/**
 * @param isFact arcs that say when a point was
 * @returns the least bad way to carry on; null where even work, order and facts contradict each other
 */
export function leastBad(
  asked: ReplanAsked,
  arcs: readonly OrderArc[],
  lower: Int32Array,
  isFact: (arc: OrderArc) => boolean,
): LeastBad | null {
  const gaps = new Map<string, number>();
  for (const { from, to, least } of arcs) {
    const name = `${from} ${to}`;
    gaps.set(name, Math.max(least, gaps.get(name) ?? -Infinity));
  }
  const tied = ({ from, to, least }: OrderArc): boolean => gaps.get(`${to} ${from}`) === -least;
  const dropped = new Set<OrderArc>();
  for (let step = 0; step < STEPS; step++) {
    const carried = carryOn(
      asked,
      arcs.filter((arc) => !dropped.has(arc)),
      lower,
    );
    if (carried.kind === 'times') {
      const { times, finish } = carried;
      return { times, finish, broken: [...dropped].filter(({ from, to, least }) => times[to]! - times[from]! < least) };
    }
    let [weakest, most] = [null as OrderArc | null, -1];
    for (const arc of carried.arcs) {
      const ready = readiness(arc, tied, isFact);
      if (ready > most) [weakest, most] = [arc, ready];
    }
    if (weakest === null) return null;
    dropped.add(weakest);
  }
  return null;
}
