/**
 * The arcs that a plan's order takes from each kind of constraint, by the definitions of `problem.ts`.
 *
 * Every function returns arcs that the solution keeps, and that together are enough for the constraints of their kind.
 */
import type { Mode, Problem, Resource } from '../problem.ts';
import { allHold, byNumber } from './by-number.ts';
import { matchTokens, type TokenEvent } from './match-tokens.ts';
import type { ArcReason, OrderArc } from './plan-order.ts';
import { ORIGIN, endNode, startNode, type Taken, type TakenTask } from './taken.ts';
import { whole } from '../whole.ts';

type Precedes = (before: number, after: number) => boolean;

const follows = (before: TakenTask, after: TakenTask, least: number, why: ArcReason): OrderArc => ({
  from: endNode(before.index),
  to: startNode(after.index),
  least,
  why,
});

/** The session's first and last minute, and the lengths that the modes taken allow. */
export function lengthArcs(problem: Problem, taken: Taken): readonly OrderArc[] {
  const { lengths } = byNumber(problem);
  const arcs: OrderArc[] = [];
  for (const { index, id, mode, option } of taken.tasks)
    arcs.push(...(lengths[index]![option] ??= lengthsOf(problem, index, id, mode)));
  return arcs;
}

function lengthsOf({ horizon }: Problem, index: number, task: string, mode: Mode): readonly OrderArc[] {
  const start = startNode(index);
  const end = endNode(index);
  const why: ArcReason = { kind: 'length', task };
  return [
    { from: ORIGIN, to: start, least: 0, why: { kind: 'horizon' } },
    { from: end, to: ORIGIN, least: -horizon, why: { kind: 'horizon' } },
    { from: start, to: end, least: mode.shortest, why },
    { from: end, to: start, least: whole(-mode.longest), why },
  ];
}

/** Lags whose tasks are present and whose literals hold. */
export function lagArcs(problem: Problem, taken: Taken): readonly OrderArc[] {
  const arcs: OrderArc[] = [];
  for (const lag of byNumber(problem).lags) {
    if (lag === null) continue;
    const { arc } = lag;
    if (taken.isThere(arc.from) && taken.isThere(arc.to) && allHold(lag.if, taken.choices)) arcs.push(arc);
  }
  return arcs;
}

/** The lengths of tasks that sum to a total are kept as they are. */
export function totalArcs(problem: Problem, taken: Taken): readonly OrderArc[] {
  return problem.totals.flatMap((total, index) => {
    if (!taken.holds(total.if)) return [];
    const why: ArcReason = { kind: 'total', total: index };
    return total.tasks.flatMap((id) => {
      const task = taken.task(id);
      return task === undefined ? [] : keptLength(task, why);
    });
  });
}

const keptLength = (task: TakenTask, why: ArcReason): OrderArc[] => {
  const length = task.end - task.start;
  return [
    { from: startNode(task.index), to: endNode(task.index), least: length, why },
    { from: endNode(task.index), to: startNode(task.index), least: whole(-length), why },
  ];
};

/** For each pair of uses of a state that may not overlap, the one that comes first and the gap after it. */
export function stateArcs(problem: Problem, taken: Taken): readonly OrderArc[] {
  return problem.states.flatMap((state) => {
    const users = taken.tasks.filter((task) => task.mode.state?.state === state.id);
    return users.flatMap((a, position) =>
      users.slice(position + 1).flatMap((b): OrderArc[] => {
        const classA = a.mode.state?.class ?? 0;
        const classB = b.mode.state?.class ?? 0;
        const forth = state.gap[classA]?.[classB] ?? null;
        const back = state.gap[classB]?.[classA] ?? null;
        if (forth === null || back === null) return [];
        if (b.start >= a.end + forth)
          return [follows(a, b, forth, { kind: 'state', state: state.id, from: classA, to: classB })];
        return [follows(b, a, back, { kind: 'state', state: state.id, from: classB, to: classA })];
      }),
    );
  });
}

/** For each use that leaves what another avoids: the clean one first, or the cleaning between the two that asks for least. */
export function soilArcs(taken: Taken, precedes: Precedes): readonly OrderArc[] {
  const soils = new Map<string, { readonly task: TakenTask; readonly leaves: readonly string[] }[]>();
  const avoided = new Map<string, { readonly task: TakenTask; readonly avoids: readonly string[] }[]>();
  const cleaners = new Map<string, TakenTask[]>();
  const listed = <T>(lists: Map<string, T[]>, key: string): T[] => {
    let list = lists.get(key);
    if (list === undefined) lists.set(key, (list = []));
    return list;
  };
  for (const task of taken.tasks)
    for (const { resource, leaves, avoids, cleans } of task.mode.uses) {
      if (leaves !== undefined && leaves.length > 0) listed(soils, resource).push({ task, leaves });
      if (avoids !== undefined && avoids.length > 0) listed(avoided, resource).push({ task, avoids });
      if (cleans === true) listed(cleaners, resource).push(task);
    }
  const arcs: OrderArc[] = [];
  for (const [resource, uses] of soils)
    for (const { task: dirty, leaves } of uses)
      for (const { task: clean, avoids } of avoided.get(resource) ?? []) {
        if (dirty === clean || !leaves.some((mark) => avoids.includes(mark))) continue;
        if (clean.end <= dirty.start) {
          arcs.push(follows(clean, dirty, 0, { kind: 'soil', resource, cleaner: null }));
          continue;
        }
        const between = (cleaners.get(resource) ?? []).filter(
          (task) => task.start >= dirty.end && task.end <= clean.start,
        );
        const asks = (task: TakenTask): number =>
          Number(!precedes(endNode(dirty.index), startNode(task.index))) +
          Number(!precedes(endNode(task.index), startNode(clean.index)));
        const cleaner = between.sort((a, b) => asks(a) - asks(b) || a.start - b.start || a.index - b.index)[0];
        if (cleaner === undefined) throw new Error(`${clean.id} meets what ${dirty.id} left on ${resource}`);
        const why: ArcReason = { kind: 'soil', resource, cleaner: cleaner.id };
        arcs.push(follows(dirty, cleaner, 0, why), follows(cleaner, clean, 0, why));
      }
  return arcs;
}

/** Precedences that keep every resource within its capacity, minute by minute. A use of no length keeps none. */
export function resourceArcs(resource: Resource, horizon: number, taken: Taken, precedes: Precedes): OrderArc[] {
  const arcs: OrderArc[] = [];
  const events: TokenEvent[] = [];
  for (const { task, amount } of taken.users(resource.id)) {
    if (task.start === task.end) {
      if (task.mode.longest > 0) arcs.push(...keptLength(task, { kind: 'resource', resource: resource.id }));
      continue;
    }
    events.push({ node: startNode(task.index), offset: 0, time: task.start, amount: -amount });
    events.push({ node: endNode(task.index), offset: 0, time: task.end, amount });
  }
  if (events.length === 0) return arcs;
  const { most, missing } = calendarOf(resource, horizon);
  for (const { from, until, amount } of missing) {
    events.push({ node: ORIGIN, offset: from, time: from, amount: -amount });
    events.push({ node: ORIGIN, offset: until, time: until, amount });
  }
  for (const { giver, taker } of matchTokens(most, events, precedes)) {
    const fixed = giver.node === ORIGIN || taker.node === ORIGIN;
    arcs.push({
      from: giver.node,
      to: taker.node,
      least: giver.offset - taker.offset,
      why: { kind: fixed ? 'calendar' : 'resource', resource: resource.id },
    });
  }
  return arcs;
}

/** The largest capacity within the horizon, and how much of it is missing when. */
function calendarOf(
  resource: Resource,
  horizon: number,
): { readonly most: number; readonly missing: readonly { from: number; until: number; amount: number }[] } {
  const pieces: { from: number; until: number; capacity: number }[] = [];
  let now = 0;
  for (const entry of resource.calendar ?? []) {
    const from = Math.max(now, Math.min(entry.from, horizon));
    const until = Math.max(from, Math.min(entry.until, horizon));
    if (from > now) pieces.push({ from: now, until: from, capacity: resource.capacity });
    if (until > from) pieces.push({ from, until, capacity: entry.capacity });
    now = until;
  }
  if (now < horizon) pieces.push({ from: now, until: horizon, capacity: resource.capacity });
  const most = Math.max(0, ...pieces.map((piece) => piece.capacity));
  return {
    most,
    missing: pieces
      .filter((piece) => piece.capacity < most)
      .map(({ from, until, capacity }) => ({ from, until, amount: most - capacity })),
  };
}

/** Precedences that keep a level from falling below nothing, and from rising above its capacity where it has one. */
export function reservoirArcs(
  reservoir: Problem['reservoirs'][number],
  taken: Taken,
  times: Int32Array,
  precedes: Precedes,
): readonly OrderArc[] {
  const events = reservoir.events.flatMap((event): TokenEvent[] => {
    const node = taken.node(event.point);
    if (node < 0 || event.amount === 0 || !taken.holds(event.if)) return [];
    return [{ node, offset: 0, time: times[node]!, amount: event.amount }];
  });
  const flows = [...matchTokens(reservoir.initial, events, precedes)];
  if (reservoir.capacity !== undefined) {
    const room = reservoir.capacity - reservoir.initial;
    const mirrored = events.map((event) => ({ ...event, amount: -event.amount }));
    // What is there too much at first has to be drawn in the first minute.
    if (room < 0) mirrored.push({ node: ORIGIN, offset: 0, time: 0, amount: room });
    flows.push(...matchTokens(Math.max(0, room), mirrored, precedes));
  }
  return flows.map(({ giver, taker }) => ({
    from: giver.node,
    to: taker.node,
    least: 0,
    why: { kind: 'reservoir', reservoir: reservoir.id },
  }));
}
