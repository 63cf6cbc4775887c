/** Order and limits: gaps between steps, days before, the fridge, the table, pins and absences. */
import type { Point } from '../engine/problem.ts';
import { BOXES } from '../kitchen/expand.ts';
import { minutesDown, minutesUp } from '../kitchen/scaling.ts';
import { packedDishes } from '../kitchen/packed-dishes.ts';
import { readyStep } from '../kitchen/session-components.ts';
import { durationMinutes } from '../kitchen/values.ts';
import type { Operation, StepLegend, Translation } from './legend.ts';
import { offTheHeat } from './safety.ts';
import { resourcesOfThing } from './places.ts';
import { picks } from './problem-builder.ts';
import {
  aheadName,
  byTableName,
  fridgeName,
  fridgeRuleName,
  hotHoldName,
  orderName,
  pinName,
  tableName,
} from './requirement-names.ts';

/** The legends of a step of a component, of every batch and split. */
export const legendsOf = (t: Translation, component: string, step: string): readonly StepLegend[] =>
  t.steps.filter((legend) => legend.instance.component.id === component && legend.instance.step.id === step);

/** Whether an order between two steps holds between these two batches: the same batch of one dish, or everything before everything. */
export const related = (before: StepLegend, after: StepLegend): boolean =>
  before.dish !== after.dish ||
  !before.instance.batched ||
  !after.instance.batched ||
  (before.instance.batch === after.instance.batch && JSON.stringify(before.when) === JSON.stringify(after.when));

export function addOrders(t: Translation): void {
  for (const after of t.steps) {
    after.instance.after.forEach((order, index) => {
      const befores = legendsOf(t, order.component, order.step);
      if (befores.length === 0) {
        t.faults.push({
          document: `component ${after.instance.component.id}`,
          path: `steps[${after.instance.component.steps.indexOf(after.instance.step)}].after[${index}].step`,
          found: `${order.component}/${order.step}`,
          wanted: 'a step of this component, or of another dish of the session',
          mend: 'correct the name, or add the dish to the session',
        });
      }
      const requirement = orderName(after.instance, order.step);
      for (const before of befores.filter((candidate) => related(candidate, after))) {
        t.builder.atLeast(before.end, after.start, order.shortest, [], requirement);
        if (order.longest !== null) t.builder.atMost(before.end, after.start, order.longest, [], requirement);
      }
    });
  }
}

const fromStart = (t: Translation, to: Point, least: number, most: number, requirement: string): void => {
  t.builder.atLeast('origin', to, least, [], requirement);
  t.builder.atMost('origin', to, most, [], requirement);
};

/** Soaks and thaws of earlier days end within their limits. */
export function addAhead(t: Translation): void {
  for (const dish of new Set(t.steps.map((step) => step.dish))) {
    for (const ahead of dish.component.ahead ?? []) {
      const ready = t.wallOffset(-ahead.daysBefore, ahead.at) + minutesUp(durationMinutes(ahead.hands));
      for (const legend of legendsOf(t, dish.component.id, ahead.until)) {
        const least = ready + minutesUp(durationMinutes(ahead.shortest));
        const most = ready + minutesDown(durationMinutes(ahead.longest));
        fromStart(t, legend.start, least, most, aheadName(ahead));
      }
    }
  }
}

/** Food off the heat is in the fridge in time, by the component's own step that puts it away or with the boxes: as it says itself, and as the rules ask. */
export function addFridge(t: Translation): void {
  const boxed = new Set(packedDishes(t.session));
  for (const component of new Set(t.steps.map((step) => step.instance.component))) {
    const own = t.steps.filter((step) => step.instance.component === component && step.instance.step.putsAway === true);
    const away = own.length > 0 ? own : boxed.has(component.id) ? legendsOf(t, BOXES, 'put-away') : [];
    if (component.fridge !== undefined) {
      const most = minutesDown(durationMinutes(component.fridge.within));
      for (const from of legendsOf(t, component.id, component.fridge.from))
        for (const to of away)
          if (related(from, to)) t.builder.atMost(from.end, to.end, most, [], fridgeName(component, most));
    }
    for (const off of offTheHeat(t, component))
      for (const to of away)
        if (related(off.step, to)) t.builder.atMost(off.at, to.end, off.most, off.when, fridgeRuleName(component));
  }
}

export const DEFAULT_TABLE_ALLOWANCE = 5;

/** Dishes for the table are done within the allowance before it; other work ends by then too, unless it may run past. */
export function addTable(t: Translation): void {
  const table = t.session.table;
  if (table === undefined) return;
  const at = minutesDown(durationMinutes(table.at));
  const allowance =
    table.allowance === undefined ? DEFAULT_TABLE_ALLOWANCE : minutesDown(durationMinutes(table.allowance));
  for (const step of t.steps) {
    const { component, step: own } = step.instance;
    if (table.dishes.includes(component.id)) {
      if (own.id === readyStep(component)) fromStart(t, step.end, at - allowance, at, tableName(component));
    } else if (table.othersMayRunPast !== true && step.instance.inFinish) {
      t.builder.atMost('origin', step.end, at, [], byTableName(own, component));
    }
  }
}

/** What the user pinned. */
export function addPins(t: Translation): void {
  (t.session.pins ?? []).forEach((pin, index) => {
    const steps = legendsOf(t, pin.component, pin.step).filter((step) => step.instance.batch === (pin.batch ?? 1));
    const name = pinName(index, pin);
    const fault = (found: string, wanted: string): void => {
      t.faults.push({
        document: `session ${t.session.id}`,
        path: `pins[${index}]`,
        found,
        wanted,
        mend: 'correct the pin or take it out',
      });
    };
    if (steps.length === 0) fault(`${pin.component}/${pin.step}`, 'a step of a dish of this session');
    for (const step of steps) {
      if (pin.start !== undefined) {
        const at = minutesUp(durationMinutes(pin.start));
        fromStart(t, step.start, at, at, name);
      }
      if (pin.person !== undefined && !pinPerson(t, step, pin.person))
        fault(`person ${pin.person}`, 'somebody of the crew who may do this step');
      if (pin.place !== undefined && !pinPlace(t, step, pin.place))
        fault(`place ${pin.place}`, 'a thing of the kitchen that this step can use');
    }
  });
}

function pinPerson(t: Translation, step: StepLegend, person: string): boolean {
  const operations: readonly Operation[] = [...step.pieces, ...step.shapes.flatMap((shape) => shape.operations.flat())];
  return operations.every(({ who }) => {
    const others = who.people.flatMap((each, option) => (each === person ? [] : [option]));
    if (others.length === who.people.length) return false;
    if (others.length > 0) t.builder.forbid([...step.when, ...picks(who.choice, ...others)]);
    return true;
  });
}

function pinPlace(t: Translation, step: StepLegend, place: string): boolean {
  let met = false;
  for (const need of step.needs) {
    const wanted = need.options.flatMap((option, index) =>
      option.place.id === place || option.place.oven === place ? [index] : [],
    );
    if (wanted.length === 0) continue;
    met = true;
    const others = need.options.map((_, index) => index).filter((index) => !wanted.includes(index));
    if (others.length > 0) t.builder.forbid([...step.when, ...picks(need.choice, ...others)]);
  }
  return met;
}

/** Times when a thing of the kitchen is not there. */
export function addAbsences(t: Translation): void {
  (t.session.absences ?? []).forEach((absence, index) => {
    const resources = resourcesOfThing(t.kitchen, absence.what);
    for (const resource of resources)
      t.builder.absence(
        resource,
        minutesDown(durationMinutes(absence.from)),
        minutesUp(durationMinutes(absence.until)),
      );
    if (resources.length === 0) {
      t.faults.push({
        document: `session ${t.session.id}`,
        path: `absences[${index}].what`,
        found: absence.what,
        wanted: `the id of a thing in kitchen ${t.kitchen.id}`,
        mend: 'correct the id or take the absence out',
      });
    }
  });
}

/** A step kept hot is kept so for no longer than it says. */
export function addHotHolds(t: Translation): void {
  for (const step of t.steps) {
    const hold = step.instance.step.hotHold;
    if (hold !== undefined)
      t.builder.atMost(
        step.start,
        step.end,
        minutesDown(durationMinutes(hold.longest)),
        [],
        hotHoldName(step.instance.step),
      );
  }
}
