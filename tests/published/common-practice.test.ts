/**
 * Common practice of the home kitchen, as check values: they have no source, and none is claimed. Each is cooked as a small session
 * of its own through the whole planner, and the plan is checked. Everything else in those sessions is invented.
 */
import { expect, test } from 'vitest';
import { checkPlan } from '../../solver/checker/check-plan.ts';
import { ovenHeat } from '../../solver/heat/oven-heat.ts';
import { celsiusAfter } from '../../solver/heat/oven-tables.ts';
import { durationMinutes } from '../../solver/kitchen/values.ts';
import type { Component } from '../../solver/kitchen/component.ts';
import type { Plan, PlannedStep } from '../../solver/kitchen/plan.ts';
import type { Session } from '../../solver/kitchen/session.ts';
import { planSession } from '../../solver/translate/plan-session.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../support/demo-documents.ts';
import { fileURLToPath } from 'node:url';

const PRACTICE = fileURLToPath(new URL('../support/common-practice/', import.meta.url));
const kitchens = demoKitchens();
const suppers = demoSessions(PRACTICE);
const practice = demoComponents(PRACTICE);

function planned(session: Session, components: readonly Component[]): Plan {
  const kitchen = byId(kitchens, session.kitchens[0]!);
  const result = planSession({ session, kitchen, components, seed: 1, effort: 1_000_000 });
  if (result.kind !== 'planned') throw new Error(JSON.stringify(result));
  expect(checkPlan(result.plan)).toEqual([]);
  return result.plan;
}
const supper = (id: string): Plan => planned(byId(suppers, id), practice);

const step = (plan: Plan, id: string): PlannedStep => byId(plan.steps, id);
/** Minutes from the start of a step's first hands-off segment to the end of its last. */
function byItself(plan: Plan, id: string): { readonly from: number; readonly until: number } {
  const off = step(plan, id).segments.filter((segment) => segment.hands === 'off');
  return { from: off[0]!.start, until: off.at(-1)!.end };
}

test('a tray of mixed vegetables and chicken pieces roasts about 45 minutes at 200 °C, which is 400 °F on a rounded dial', () => {
  const plan = supper('tray-roast-supper');
  const roast = step(plan, 'tray-roast/roast');
  const dial = plan.kitchen.ovens[0]!.dial;
  const fahrenheit400 = (400 - 32) / 1.8;
  expect(Math.round(fahrenheit400 / dial.stepC) * dial.stepC).toBe(200);
  const settings = plan.ovens[0]!.settings;
  const during = settings.filter(
    (turn, index) => turn.minute < roast.end && (settings[index + 1]?.minute ?? Infinity) > roast.start,
  );
  expect(during.map((turn) => turn.celsius)).toEqual([200]);
  expect(Math.abs(roast.end - roast.start - 45)).toBeLessThanOrEqual(5);
});

test('dried pasta boils about 12 minutes in salted water that was boiling before', () => {
  const plan = supper('pasta-supper');
  const { from, until } = byItself(plan, 'dried-pasta/boil');
  const [boil] = plan.pools[0]!.boils;
  expect(plan.session.pools![0]!.salted).toBe(true);
  expect(boil!.boilsAt).toBeLessThanOrEqual(step(plan, 'dried-pasta/boil').start);
  expect(boil!.offHeat).toBeGreaterThanOrEqual(until);
  expect(Math.abs(until - from - 12)).toBeLessThanOrEqual(1);
});

test('couscous, 75 g dry a portion, is only soaked', () => {
  const plan = supper('couscous-supper');
  const couscous = byId(practice, 'soaked-couscous');
  expect(couscous.ingredients[0]!.massG! / couscous.makes.portions).toBe(75);
  const kinds = new Set(plan.steps.flatMap((each) => each.places.map((place) => place.kind)));
  expect(kinds).toEqual(new Set(['kettle', 'bowl']));
  expect(plan.ovens).toEqual([]);
  expect(plan.pools).toEqual([]);
});

test('stale bread crisps in 5 to 10 minutes of the heat that an oven still holds', () => {
  const plan = supper('crisped-bread-supper');
  const crisp = step(plan, 'crisped-bread/crisp');
  const { from, until } = byItself(plan, 'crisped-bread/crisp');
  expect(until - from).toBeGreaterThanOrEqual(5);
  expect(until - from).toBeLessThanOrEqual(10);
  const off = plan.ovens[0]!.settings.at(-1)!;
  const before = plan.ovens[0]!.settings.at(-2)!;
  expect(off.celsius).toBeNull();
  expect(off.minute).toBeLessThanOrEqual(crisp.start);
  const oven = plan.kitchen.ovens[0]!;
  const whenOut = celsiusAfter(ovenHeat(oven, plan.kitchen.roomC), before.celsius!, null, crisp.end - off.minute);
  expect(whenOut).toBeGreaterThanOrEqual(120);
  expect(whenOut).toBeLessThan(before.celsius!);
});

test('ten boxes come from one oven, one hob and one cook within an hour', () => {
  const session = byId(demoSessions(), 'ten-box-hour');
  const plan = planned(session, demoComponents());
  expect(session.packing!.boxes).toBe(10);
  expect(plan.crew).toHaveLength(1);
  expect(plan.kitchen.ovens).toHaveLength(1);
  expect(plan.finishMinutes).toBeLessThanOrEqual(60);

  // Why an hour is plausible. The hands have less than an hour of work, washing up between dishes and the last clearing among it;
  const counted = plan.steps.filter((each) => each.inFinish).flatMap((each) => each.segments);
  const hands = counted
    .filter((segment) => segment.hands === 'on')
    .reduce((sum, each) => sum + each.end - each.start, 0);
  expect(hands).toBeLessThanOrEqual(plan.finishMinutes);
  // … both trays fit the oven together, at settings that both accept, so that its heat is on for little more than one of them;
  const [broccoli, trout] = ['seared-broccoli/sear', 'baked-trout/bake'].map((id) => step(plan, id));
  const windows = [broccoli!, trout!].map((each) => each.places.find((place) => place.kind === 'rack')!);
  expect(Math.max(...windows.map((rack) => rack.leastC!))).toBeLessThanOrEqual(
    Math.min(...windows.map((rack) => rack.mostC!)),
  );
  // … and nothing that goes by itself is long: no cook waits half an hour for one thing.
  const waits = demoComponents()
    .filter((component) => session.dishes.some((dish) => dish.component === component.id))
    .flatMap((component) => component.steps)
    .flatMap((each) => each.segments)
    .map((segment) => (segment.hands === 'off' ? durationMinutes(segment.shortest ?? 'PT0M') : 0));
  expect(Math.max(...waits)).toBeLessThan(30);
});
