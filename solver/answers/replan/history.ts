/**
 * What has happened by now, from what was planned and what was told.
 *
 * Steps are gone through in the order of their planned starts. A step that nothing was told of began when it was planned, or as soon
 * after as what it waits for was over: who is still peeling has not begun to chop. So a step waits for those before it in the plan's
 * order only, and a longest gap never moves what has already been done.
 */
import type { OrderArc } from '../../engine/explain/plan-order.ts';
import { endNode, startNode } from '../../engine/explain/taken.ts';
import { OPEN } from '../../engine/replan/asked.ts';
import { wholeId, type Lived } from '../../kitchen/plan.ts';
import type { LiveEvent } from './events.ts';
import type { StepUnit } from './units.ts';

/** One segment of a planned step, checks apart, or one piece of interrupted work; minutes as planned. */
export interface PlannedPart {
  readonly start: number;
  readonly end: number;
  /** Done by hand it takes what it takes; else it waits for a hand at its end. */
  readonly byHand: boolean;
}

export interface PlannedUnit extends StepUnit {
  /** First to last; empty: it is not in the plan. */
  readonly parts: readonly PlannedPart[];
  /** The parts are pieces of interrupted work: each is told of on its own, as `step~2`. */
  readonly inPieces: boolean;
}

export interface History {
  /** Minutes by node, or `OPEN`. */
  readonly facts: Int32Array;
  /** By unit: minutes of its segments that turned out or will turn out otherwise; null: as its component says. */
  readonly minutes: ReadonlyMap<string, readonly (number | null)[]>;
  /** By unit of interrupted work: minutes of the pieces that were told of; null: not told of. */
  readonly pieces: ReadonlyMap<string, readonly (number | null)[]>;
  /** Steps told to be late that have not begun. */
  readonly notBegun: readonly string[];
}

/**
 * @param planned minutes by node as planned; −1 for absent tasks
 * @param arcs of the plan's order
 * @param known what was told at an earlier replan: what was before its minute is how it was
 */
export function historyOf(
  units: readonly PlannedUnit[],
  planned: Int32Array,
  arcs: readonly OrderArc[],
  now: number,
  events: readonly LiveEvent[],
  known?: Lived,
): History {
  const knownUntil = known?.now ?? -Infinity;
  const knownSteps = new Set(known?.steps.map(({ step }) => step));
  const unitOf = new Int32Array(planned.length).fill(-1);
  const nodes = units.map((unit, index): readonly number[] => {
    const own: number[] = [];
    for (const task of unit.tasks) {
      if (planned[startNode(task)]! < 0) continue;
      own.push(startNode(task));
      if (!unit.elastic.includes(task)) own.push(endNode(task));
    }
    for (const node of own) unitOf[node] = index;
    return own.sort((a, b) => planned[a]! - planned[b]! || a - b);
  });
  const into = new Map<number, OrderArc[]>();
  for (const arc of arcs) {
    const list = into.get(arc.to);
    if (list === undefined) into.set(arc.to, [arc]);
    else list.push(arc);
  }
  const was = planned.slice();
  const facts = new Int32Array(planned.length).fill(OPEN);
  const minutes = new Map<string, readonly (number | null)[]>();
  const pieces = new Map<string, readonly (number | null)[]>();
  const told = new Set<number>([0]);
  const order = units
    .map((_, index) => index)
    .filter((index) => nodes[index]!.length > 0)
    .sort((a, b) => planned[nodes[a]![0]!]! - planned[nodes[b]![0]!]! || a - b);

  const notBegun: string[] = [];
  for (const index of order) {
    const unit = units[index]!;
    const own = nodes[index]!;
    const reported = events.filter((event) => wholeId({ id: event.step }) === unit.id);
    const first = own[0]!;
    const shift = (from: number, by: number): void => {
      for (const node of own) if (was[node]! >= from) was[node]! += by;
    };
    moveStart(reported, first, was[own.at(-1)!]! - was[first]!, was, shift);
    const isStarted = reported.some((event) => event.kind === 'started');
    const over = Math.max(-1, ...reported.map((event) => (event.kind === 'done' ? event.at : -1)));
    for (const node of own) {
      if ((isStarted && was[node] === was[first]) || was[node]! < knownUntil) continue;
      for (const { from, least } of into.get(node) ?? []) {
        if (unitOf[from] === index || !told.has(from)) continue;
        const ready = was[from]! + least;
        // What is known to be over did not wait.
        if (ready > was[node]! && was[node]! > over) shift(was[node]!, ready - was[node]!);
      }
    }
    if (reported.some((event) => event.kind === 'waiting') && was[first]! < now) shift(-Infinity, now - was[first]!);
    if (was[first]! < now || isStarted || over >= 0) {
      const turned = tellParts(unit, own, reported, { planned, was, facts, now, shift });
      // Told in this very minute to be over, it has not come undone.
      if (knownSteps.has(unit.id) && isOverBy(unit.parts, knownUntil))
        for (const node of own) if (was[node]! <= now) facts[node] = was[node]!;
      if (turned.minutes.some((each) => each !== null)) minutes.set(unit.id, turned.minutes);
      if (turned.pieces.some((each) => each !== null)) pieces.set(unit.id, turned.pieces);
    } else if (reported.some((event) => event.kind === 'late')) notBegun.push(unit.id);
    for (const node of own) told.add(node);
  }
  tellElastic(planned, arcs, was, unitOf, facts, now);
  return { facts, minutes, pieces, notBegun };
}

/** Whether all parts of a step were over by a minute. */
export const isOverBy = (parts: readonly PlannedPart[], minute: number): boolean =>
  parts.every(({ end }) => end <= minute);

/**
 * Moves a step to when it was told to have begun; or, told only that it is over before it was to begin, to have ended then. Nothing begins
 * before the session does: who is done sooner than it takes was quicker.
 */
function moveStart(
  reported: readonly LiveEvent[],
  first: number,
  length: number,
  was: Int32Array,
  shift: (from: number, by: number) => void,
): void {
  const started = reported.find((event) => event.kind === 'started');
  const done = reported.find((event) => event.kind === 'done');
  if (started !== undefined) shift(-Infinity, started.at - was[first]!);
  else if (done !== undefined && was[first]! >= done.at) shift(-Infinity, Math.max(0, done.at - length) - was[first]!);
}

interface Telling {
  readonly planned: Int32Array;
  readonly was: Int32Array;
  readonly facts: Int32Array;
  readonly now: number;
  readonly shift: (from: number, by: number) => void;
}

/** How a step turned out: as in `LivedStep`. */
interface Turned {
  readonly minutes: readonly (number | null)[];
  readonly pieces: readonly (number | null)[];
}

/**
 * Parts of a step that has begun: those over, the one under way, those to come.
 * @returns minutes of segments that are not as the component says; of pieces, their sum, and those of each that was told of
 */
function tellParts(
  { parts, inPieces }: PlannedUnit,
  own: readonly number[],
  reported: readonly LiveEvent[],
  { planned, was, facts, now, shift }: Telling,
): Turned {
  const moved = (minute: number): number => {
    const node = own.find((each) => planned[each] === minute);
    return node === undefined ? minute + was[own[0]!]! - planned[own[0]!]! : was[node]!;
  };
  const starts = parts.map(({ start }) => moved(start));
  const ends = parts.map(({ end }) => moved(end));
  const list: (number | null)[] = parts.map(() => null);
  let sum = 0;
  for (const event of reported) {
    if (event.kind !== 'done' && event.kind !== 'late') continue;
    const at = event.kind === 'done' ? event.at : now;
    const piece = inPieces ? Number(event.step.match(/~(\d+)$/)?.[1] ?? parts.length) - 1 : -1;
    const running =
      piece >= 0
        ? piece
        : Math.max(
            0,
            starts.findLastIndex((start) => (event.kind === 'done' ? start < at : start <= at)),
          );
    if (inPieces && event.kind === 'done' && starts[running]! > at) {
      // A piece over before it was to begin is none any more, and the whole is not held until it would have been.
      const over = Math.max(at, ends[running - 1] ?? at);
      for (const node of own) {
        if (was[node]! < starts[running]! || was[node]! > ends[running]!) continue;
        was[node] = over;
        if (over <= now) facts[node] = over;
      }
      sum -= ends[running]! - starts[running]!;
      list[running] = 0;
      continue;
    }
    const until = Math.max(starts[running]!, event.kind === 'done' ? at : now + event.remaining);
    sum += until - ends[running]!;
    list[running] = until - starts[running]!;
    const [before, end] = [ends[running]!, until];
    if (event.kind === 'done' && !inPieces) {
      // Nothing of it is left.
      for (let later = running + 1; later < parts.length; later++) list[later] = 0;
      for (const node of own) if (was[node]! >= Math.min(before, end)) was[node] = Math.max(was[own[0]!]!, end);
      for (const node of own) facts[node] = was[node]!;
      continue;
    }
    shift(before, end - before);
    if (parts[running]!.byHand || event.kind === 'done')
      for (const node of own) if (was[node] === end && isEnd(node)) facts[node] = end;
  }
  for (const node of own) if (was[node]! < now) facts[node] = was[node]!;
  if (!inPieces) return { minutes: list, pieces: [] };
  const whole = parts.reduce((minutes, { start, end }) => minutes + end - start, sum);
  return { minutes: [sum === 0 ? null : whole], pieces: list };
}

const isEnd = (node: number): boolean => node > 0 && node % 2 === 0;

/** Ends of what is held, and ovens: they end with what ties them, or as planned where that is not too early. */
function tellElastic(
  planned: Int32Array,
  arcs: readonly OrderArc[],
  was: Int32Array,
  unitOf: Int32Array,
  facts: Int32Array,
  now: number,
): void {
  const open = Array.from(planned, (time, node) => (time >= 0 && unitOf[node]! < 0 && node > 0 ? node : 0)).filter(
    (node) => node > 0,
  );
  const free = new Set(open);
  const nodes = planned.length;
  const gaps = new Map<number, number>();
  // Only gaps to and from what is free are asked for.
  const about = arcs.filter(({ from, to }) => free.has(to) || free.has(from));
  for (const { from, to, least } of about)
    gaps.set(from * nodes + to, Math.max(least, gaps.get(from * nodes + to) ?? -Infinity));
  for (let round = 0; round < 3; round++)
    for (const { from, to, least } of about) {
      if (!free.has(to)) continue;
      if (from !== 0 && gaps.get(to * nodes + from) === -least && !free.has(from)) was[to] = was[from]! + least;
      else if (was[from]! + least > was[to]!) was[to] = was[from]! + least;
    }
  for (const node of free) if (was[node]! < now) facts[node] = was[node]!;
}
