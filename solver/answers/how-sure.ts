/**
 * How sure is a plan? Its lengths are drawn many times, its order is kept, and what comes of it is counted.
 *
 * Work by hand, waiting, boiling and heating vary by their kinds (`spread.ts`), each part of each step on its own. Samples are of
 * the plan's own order: nobody replans in them, so a kitchen that does is surer than this.
 */
import type { WallOffset } from '../checker/clock.ts';
import { planOrder, type PlanOrder } from '../engine/explain/plan-order.ts';
import { endNode, startNode } from '../engine/explain/taken.ts';
import type { Point, Problem } from '../engine/problem.ts';
import { OPEN } from '../engine/replan/asked.ts';
import { settle } from '../engine/replan/settled.ts';
import { simulate, type Simulated, type Varied } from '../engine/simulate/simulate.ts';
import { TICKS } from '../engine/simulate/two-piece.ts';
import type { InputFault } from '../kitchen/fault.ts';
import { wholeId, type Plan } from '../kitchen/plan.ts';
import type { SpreadKind } from '../kitchen/session.ts';
import { finishPoints } from '../translate/tiers.ts';
import type { Translated } from '../translate/legend.ts';
import { translatePlan } from './replan/translate-plan.ts';
import { stepUnits, type StepUnit } from './replan/units.ts';
import { kindOfWaiting, spreadOf } from './spread.ts';

export const DEFAULT_SAMPLES = 2_000;

export interface SureOptions {
  /** Minutes from the start of the session to ask the chance of finishing by; always asked: the planned finish, 5 and 10 min after it. */
  readonly by?: readonly number[];
  readonly samples?: number;
  readonly seed?: number;
  readonly shouldStop?: () => boolean;
  readonly wallOffset?: WallOffset;
}

export interface StepRisk {
  /** Id of the planned step. */
  readonly step: string;
  readonly name: string;
  /** Share of the samples in which one of its lengths lies on the longest chain, 0–1. */
  readonly critical: number;
  /** Minutes over plan that it brings into the finish, mean of all samples. */
  readonly delayMinutes: number;
}

export interface LimitRisk {
  /** The step that would be too late, and the one that it is reckoned from; the same for a wait that lasts too long. */
  readonly step: string;
  readonly since: string;
  /** As in the session's own requirements; null where the limit has no name. */
  readonly requirement: string | null;
  /** Share of the samples that break it, 0–1. */
  readonly chance: number;
}

export interface HowSure {
  readonly samples: number;
  readonly plannedFinish: number;
  /** Half of the samples finish by then, and nine in ten; minutes, rounded up. */
  readonly p50: number;
  readonly p90: number;
  readonly meanMinutes: number;
  /** By minute: the chance of finishing by then, 0–1, and how far chance alone may have it off (95 % of the time). */
  readonly by: readonly { readonly minute: number; readonly chance: number; readonly give: number }[];
  /** Steps that carry risk, the most first. */
  readonly steps: readonly StepRisk[];
  /** Limits that may break, the likeliest first. */
  readonly limits: readonly LimitRisk[];
  /** Chance that any limit breaks, 0–1. */
  readonly anyLimit: number;
  readonly stopped: boolean;
}

export type SureResult =
  ({ readonly kind: 'sure' } & HowSure) | { readonly kind: 'refused'; readonly faults: readonly InputFault[] };

/** Simulates a plan. The same plan, seed and number of samples give the same answer on any machine. */
export function howSure(plan: Plan, options: SureOptions = {}): SureResult {
  const read = translatePlan(plan, options.wallOffset);
  if (!read.ok) return { kind: 'refused', faults: read.faults };
  const { translated, planned } = read;
  const from = plan.lived?.now ?? 0;
  const facts = Int32Array.from(nodeTimes(planned), (time) => (time >= 0 && time < from ? time : OPEN));
  const problem =
    from > 0 ? settle({ problem: translated.problem, old: planned, facts, now: from }).problem : translated.problem;
  const order = planOrder(problem, planned);
  const units = stepUnits(translated).filter(({ id }) => plan.steps.some((step) => wholeId(step) === id));
  const position = new Map(problem.tasks.map((task, index) => [task.id, index]));
  const node = (point: Point): number =>
    point === 'origin'
      ? 0
      : point.at === 'start'
        ? startNode(position.get(point.task)!)
        : endNode(position.get(point.task)!);
  const limits = limitArcs(
    order,
    looksOf(translated).map((task) => startNode(position.get(task)!)),
  );
  const simulated = simulate({
    arcs: order.arcs,
    times: order.times,
    varied: variedArcs(translated, order, units, node, from),
    owners: units.length,
    finish: finishPoints(translated.translation)
      .map(node)
      .filter((each) => order.times[each]! >= 0),
    limits,
    from,
    samples: options.samples ?? DEFAULT_SAMPLES,
    seed: options.seed ?? 1,
    ...(options.shouldStop === undefined ? {} : { shouldStop: options.shouldStop }),
  });
  return { kind: 'sure', ...report(plan, options, problem, order, units, limits, simulated) };
}

const nodeTimes = ({
  tasks,
}: {
  readonly tasks: readonly ({ start: number; end: number } | null)[];
}): readonly number[] => [0, ...tasks.flatMap((at) => (at === null ? [-1, -1] : [at.start, at.end]))];

/** Looks and turns on the way, which may come a little late. */
const looksOf = ({ translation: t }: Translated): readonly string[] =>
  t.steps.flatMap(({ shapes }) =>
    shapes.flatMap(({ operations }) => operations.flat().flatMap(({ check, task }) => (check ? [task] : []))),
  );

/** Longest gaps and deadlines: arcs back in time, but lengths of held things, ties, and those of looks. */
function limitArcs({ arcs, times }: PlanOrder, looks: readonly number[]): readonly number[] {
  const gaps = new Map<string, number>();
  for (const { from, to, least } of arcs)
    gaps.set(`${from} ${to}`, Math.max(least, gaps.get(`${from} ${to}`) ?? -Infinity));
  return arcs.flatMap(({ from, to, least, why }, index) => {
    if (why.kind !== 'lag' || from === 0 || times[from]! < 0 || looks.includes(from)) return [];
    if (least < 0) return [index];
    // "At once" is told by two lags; the one back from a start to an end is the limit.
    const back = least === 0 && why.requirement !== undefined && from % 2 === 1 && to % 2 === 0;
    return back && gaps.get(`${to} ${from}`) === 0 ? [index] : [];
  });
}

/** Lengths that vary, each with the step whose risk it is. */
function variedArcs(
  { problem, translation: t }: Translated,
  { arcs, times }: PlanOrder,
  units: readonly StepUnit[],
  node: (point: Point) => number,
  from: number,
): readonly Varied[] {
  const between = new Map<string, number[]>();
  arcs.forEach((arc, index) => {
    const name = `${arc.from} ${arc.to}`;
    const list = between.get(name);
    if (list === undefined) between.set(name, [index]);
    else list.push(index);
  });
  const ownerOf = new Map(units.flatMap(({ tasks }, owner) => tasks.map((task) => [task, owner] as const)));
  const varied: Varied[] = [];
  const vary = (start: number, end: number, kind: SpreadKind, owner: number | undefined): void => {
    // What has begun is left as it stands.
    if (owner === undefined || times[start]! < from || times[end]! < 0) return;
    const forth = (between.get(`${start} ${end}`) ?? []).filter((index) => arcs[index]!.least > 0);
    const arc = forth.sort((a, b) => arcs[b]!.least - arcs[a]!.least)[0];
    if (arc === undefined) return;
    const { early, late } = spreadOf(t.session, kind);
    const ticks = (percent: number): number => Math.round((arcs[arc]!.least * TICKS * percent) / 100);
    varied.push({ arc, moves: between.get(`${end} ${start}`) ?? [], early: ticks(early), late: ticks(late), owner });
  };
  const hands = new Set(t.crew.map(({ id }) => `hands:${id}`));
  problem.tasks.forEach((task, index) => {
    if (task.modes.some((mode) => mode?.uses.some((use) => hands.has(use.resource))))
      vary(startNode(index), endNode(index), 'work', ownerOf.get(index));
  });
  for (const step of t.steps)
    for (const { parts, boundaries, ways } of step.shapes)
      parts.forEach((part, index) => {
        if (part.hands === 'on') return;
        const [start, end] = [node(boundaries[index]!), node(boundaries[index + 1]!)];
        const needs = step.needs.filter((need) => need.ways.some((way) => ways.includes(way))).map(({ need }) => need);
        const owner = ownerOf.get((start - 1) >> 1);
        vary(start, end, kindOfWaiting(needs, part.boilMl > 0 && part.shortest === 0), owner);
      });
  for (const pool of t.pools)
    for (const { heat } of pool.boils)
      for (const { to } of arcs.filter(
        (arc) => arc.from === node({ task: heat, at: 'start' }) && arc.why.kind === 'lag',
      ))
        vary(
          node({ task: heat, at: 'start' }),
          to,
          'boiling',
          ownerOf.get((node({ task: heat, at: 'start' }) - 1) >> 1),
        );
  for (const { fire } of t.ovens) {
    const on = node({ task: fire, at: 'start' });
    for (const { to } of arcs.filter((arc) => arc.from === on && arc.why.kind === 'lag'))
      vary(on, to, 'heating', ownerOf.get((to - 1) >> 1));
  }
  arcs.forEach((arc) => {
    if (arc.why.kind === 'state' && arc.least > 0) vary(arc.from, arc.to, 'heating', ownerOf.get((arc.to - 1) >> 1));
  });
  return varied;
}

function report(
  plan: Plan,
  options: SureOptions,
  problem: Problem,
  { arcs }: PlanOrder,
  units: readonly StepUnit[],
  limits: readonly number[],
  { finishes, critical, delay, broken, anyBroken, stopped }: Simulated,
): HowSure {
  const samples = finishes.length;
  const asked = [plan.finishMinutes, plan.finishMinutes + 5, plan.finishMinutes + 10, ...(options.by ?? [])];
  const quantile = (share: number): number =>
    samples === 0 ? plan.finishMinutes : Math.ceil(finishes[Math.max(0, Math.ceil(share * samples) - 1)]! / TICKS);
  const chanceBy = (minute: number): number => {
    let [low, high] = [0, samples];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (finishes[middle]! <= minute * TICKS) low = middle + 1;
      else high = middle;
    }
    return samples === 0 ? 0 : low / samples;
  };
  const ownerOf = new Map(units.flatMap(({ tasks, id }) => tasks.map((task) => [task, id] as const)));
  const nameOf = (id: string): string => plan.steps.find((step) => wholeId(step) === id)?.name ?? id;
  const taskOf = (node: number): string => {
    const task = (node - 1) >> 1;
    return node === 0 ? 'start' : (ownerOf.get(task) ?? problem.tasks[task]!.id);
  };
  return {
    samples,
    plannedFinish: plan.finishMinutes,
    p50: quantile(0.5),
    p90: quantile(0.9),
    meanMinutes: samples === 0 ? plan.finishMinutes : finishes.reduce((sum, each) => sum + each, 0) / samples / TICKS,
    by: [...new Set(asked)]
      .sort((a, b) => a - b)
      .map((minute) => {
        const chance = chanceBy(minute);
        return { minute, chance, give: samples === 0 ? 1 : 1.96 * Math.sqrt((chance * (1 - chance)) / samples) };
      }),
    steps: units
      .map(({ id }, owner): StepRisk => ({
        step: id,
        name: nameOf(id),
        critical: critical[owner]!,
        delayMinutes: delay[owner]!,
      }))
      .filter((risk) => risk.critical > 0)
      .sort((a, b) => b.delayMinutes - a.delayMinutes || b.critical - a.critical || (a.step < b.step ? -1 : 1)),
    limits: limits
      .map((index, at): LimitRisk => {
        const { from, to, why } = arcs[index]!;
        const requirement = why.kind === 'lag' ? (why.requirement ?? null) : null;
        return { step: taskOf(from), since: taskOf(to), requirement, chance: broken[at]! };
      })
      .filter(({ chance }) => chance > 0)
      .sort((a, b) => b.chance - a.chance || (a.step < b.step ? -1 : 1)),
    anyLimit: anyBroken,
    stopped,
  };
}
