/**
 * The numbers behind a plan's steps, each with its working: minutes by hand, to the boil, of cooling, of an oven that heats or makes
 * up for a cold load, afterheat, and the limits that safety rules set.
 */
import { readPlan, type PieceReading, type Reading } from '../checker/reading.ts';
import { cooledComposition, withoutFood, type CooledFood } from '../food/cooling-minutes.ts';
import { coolingWorking } from '../food/cooling-working.ts';
import { afterheatWorking } from '../heat/afterheat.ts';
import { sourceOfFit } from '../heat/oven-calibration.ts';
import { ovenHeat, type OvenHeat } from '../heat/oven-heat.ts';
import { recoveryWorkingOfNeed } from '../heat/oven-load.ts';
import { heatUpWorking } from '../heat/oven-model.ts';
import type { Cools } from '../kitchen/cools.ts';
import type { Plan, PlannedStep } from '../kitchen/plan.ts';
import { BOXES, boxedComponents } from '../kitchen/session-components.ts';
import type { Need, Segment } from '../kitchen/step.ts';
import { workWorking } from '../kitchen/work-working.ts';
import { coreRule, fridgeDeadline, hotHolding, leastOvenC } from '../safety/limits.ts';
import { limitWorking } from '../safety/rule-behind.ts';
import { boilWorking, kettleWorking } from '../water/workings.ts';
import type { Working } from '../working.ts';

export interface StepFigure {
  /** What the number is of, such as `peel` or `to the boil`. */
  readonly label: string;
  readonly working: Working;
}

const figure = (label: string, working: Working | null): readonly StepFigure[] =>
  working === null ? [] : [{ label, working }];

/**
 * The figures of a plan's steps.
 *
 * @param plan a valid plan
 * @returns by id of the planned step; steps without any are left out
 */
export function stepFigures(plan: Plan): Readonly<Record<string, readonly StepFigure[]>> {
  const reading = readPlan(plan);
  const all: [string, readonly StepFigure[]][] = [
    ...reading.steps.flatMap(({ pieces }) =>
      pieces.map((piece): [string, readonly StepFigure[]] => [piece.planned.id, pieceFigures(piece, reading)]),
    ),
    ...plan.steps
      .filter(({ kind }) => kind === 'preheat' || kind === 'water')
      .map((step): [string, readonly StepFigure[]] => [step.id, addedFigures(step, plan)]),
  ];
  return Object.fromEntries(all.filter(([, figures]) => figures.length > 0));
}

/** The segments of the way that a piece was planned with. */
function segmentsOf({ instance, planned }: PieceReading): readonly Segment[] {
  const { step } = instance;
  return planned.alternative === 0 ? step.segments : (step.alternatives?.[planned.alternative - 1]?.segments ?? []);
}

function pieceFigures(piece: PieceReading, reading: Reading): readonly StepFigure[] {
  const { planned } = piece;
  // Of work in pieces the first tells how long it is in all.
  const first = planned.piece === undefined || planned.piece === 1;
  return [
    ...(first ? segmentsOf(piece).flatMap((segment, index) => segmentFigures(segment, index, piece, reading)) : []),
    ...piece.uses.flatMap(({ need, place }) =>
      need.use === 'oven' ? ovenFigures(need, place.oven ?? '', planned, reading.plan) : [],
    ),
    ...limitFigures(piece, reading),
    ...boxFigures(piece, reading),
  ].filter(({ label }, index, list) => list.findIndex((other) => other.label === label) === index);
}

function segmentFigures(
  segment: Segment,
  index: number,
  { instance, way, uses }: PieceReading,
  { plan }: Reading,
): readonly StepFigure[] {
  const { component, portions } = instance;
  const name = segment.name ?? instance.step.name;
  if (segment.hands === 'on') return figure(`${name}, by hand`, workWorking(segment.work, component, portions));
  const part = way?.parts[index];
  const boils = part?.hands === 'off' ? part.boilMl : 0;
  const cools = segment.cools;
  return [
    ...(boils > 0 ? figure(`${name}: to the boil`, boilFigure(boils, uses, plan)) : []),
    ...(cools === undefined ? [] : coolingFigure(name, cools, [component])),
  ];
}

function coolingFigure(name: string, cools: Cools, food: CooledFood): readonly StepFigure[] {
  const composition = cooledComposition(cools, food);
  return composition === null ? [] : figure(`${name}: cooling`, coolingWorking(withoutFood(cools), composition));
}

/** How the boxes cool, which the session says. */
function boxFigures({ instance, planned }: PieceReading, { plan }: Reading): readonly StepFigure[] {
  const cools = plan.session.packing?.cooling?.cools;
  if (cools === undefined || instance.component.id !== BOXES || !planned.places.some(({ kind }) => kind === 'cooling'))
    return [];
  return coolingFigure(planned.name, cools, boxedComponents(plan.session, plan.components));
}

/** Null where the kitchen's own measurements stand in place of the model. */
function boilFigure(ml: number, uses: PieceReading['uses'], { kitchen }: Plan): Working | null {
  if (uses.some(({ need }) => need.use === 'kettle'))
    return kitchen.kettle === undefined || kitchen.kettle.minutesPerLitre !== undefined
      ? null
      : kettleWorking(kitchen, kitchen.kettle, ml);
  const on = uses.find(({ need }) => need.use === 'burner')?.place.id;
  const burner = kitchen.hob.burners.find(({ id }) => id === on);
  const pan = kitchen.pans.find(({ id }) => uses.some(({ place }) => place.kind === 'pan' && place.id === id));
  if (burner === undefined || pan === undefined || burner.boilMinutesPerLitre !== undefined) return null;
  return boilWorking(kitchen, burner, pan, ml, pan.lid);
}

function ovenFigures(
  need: Extract<Need, { use: 'oven' }>,
  id: string,
  planned: PlannedStep,
  plan: Plan,
): readonly StepFigure[] {
  const heat = heatOf(plan, id);
  if (heat === null) return [];
  if (need.afterheat === true) {
    const off = plan.ovens.find(({ oven }) => oven === id)?.settings.find(({ celsius }) => celsius === null);
    const offC = off === undefined ? null : celsiusAt(plan, id, off.minute);
    return offC === null ? [] : figure('afterheat', afterheatWorking(heat, Math.floor(offC), need.leastC));
  }
  return figure(`made up for by the oven in ${planned.name}`, recoveryWorkingOfNeed(heat, need));
}

function heatOf(plan: Plan, id: string): OvenHeat | null {
  const oven = plan.kitchen.ovens.find((each) => each.id === id);
  return oven === undefined ? null : ovenHeat(oven, plan.kitchen.roomC);
}

/** What the drawn line of an oven has at a minute, °C; null outside it. */
function celsiusAt(plan: Plan, id: string, minute: number): number | null {
  const line = plan.ovens.find(({ oven }) => oven === id)?.line ?? [];
  const after = line.findIndex((point) => point.minute >= minute);
  if (after < 0) return null;
  const [to, from] = [line[after]!, line[after - 1] ?? line[after]!];
  const share = to.minute === from.minute ? 1 : (minute - from.minute) / (to.minute - from.minute);
  return from.celsius + (to.celsius - from.celsius) * share;
}

function limitFigures({ instance, planned }: PieceReading, { plan, rules }: Reading): readonly StepFigure[] {
  const { step, component } = instance;
  const through = step.cooksThrough;
  const core = through === undefined ? null : coreRule(rules, through);
  const least = through === undefined ? null : leastOvenC(rules, through);
  const hot = step.hotHold === undefined ? null : hotHolding(rules);
  const away = component.fridge?.from === step.id ? fridgeDeadline(rules, component.storage, plan.kitchen.roomC) : null;
  const oven = planned.places.some(({ kind }) => kind === 'rack');
  return [
    ...(core === null || through === undefined
      ? []
      : figure(
          'read in the middle',
          limitWorking('Core temperature to be read', { value: through.coreC, unit: '°C', rule: core }),
        )),
    ...(least === null || !oven ? [] : figure('least oven setting', limitWorking('Least oven setting', least))),
    ...(hot === null ? [] : figure('kept hot at', limitWorking('Least temperature of food kept hot', hot))),
    ...(away === null ? [] : figure('into the fridge within', limitWorking('Most minutes to the fridge', away))),
  ];
}

/** Of work that the planner added: an oven heating up, a pool coming to the boil. */
function addedFigures(step: PlannedStep, plan: Plan): readonly StepFigure[] {
  const { kitchen, session } = plan;
  if (step.kind === 'preheat') {
    const heat = heatOf(plan, step.component);
    const from = celsiusAt(plan, step.component, step.start);
    const to = celsiusAt(plan, step.component, step.end);
    if (heat === null || from === null || to === null || heat.oven.heating !== undefined) return [];
    const [fromC, toC] = [Math.round(from), Math.round(to)];
    const fit = heat.fit();
    return figure('heating up', heatUpWorking(fit.model, kitchen.roomC, fromC, toC, sourceOfFit(fit)));
  }
  const pool = session.pools?.find(({ id }) => id === step.component);
  const course = plan.pools.find((each) => each.pool === step.component);
  const boil = course?.boils.find(({ onHeat }) => onHeat === step.end || (onHeat >= step.start && onHeat <= step.end));
  const burner = kitchen.hob.burners.find(({ id }) => id === boil?.burner);
  const pan = kitchen.pans.find(({ id }) => id === course?.pan);
  if (pool === undefined || boil === undefined || boil.water === 'again') return [];
  if (burner === undefined || pan === undefined || burner.boilMinutesPerLitre !== undefined) return [];
  return figure('to the boil', boilWorking(kitchen, burner, pan, pool.waterMl, pan.lid));
}
