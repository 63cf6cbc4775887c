/** What an oven's kind and readings decide in a plan. Kitchens and dishes are invented. */
import { expect, test } from 'vitest';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import type { Oven } from '../../../solver/kitchen/kitchen.ts';
import { component, inOven, linearOven, off, on, step } from '../../support/documents.ts';
import { planned, planResult, stepOf } from '../../support/planning.ts';

const { heating: _, cooling: __, holdingW: ___, ...bare } = linearOven('oven');
/** 180 K in 12 min; 180 K fall to 120 K in 20 min. */
const read: Oven = {
  ...bare,
  readings: { toHeat: [{ minutes: 12, celsius: 200 }], afterOff: [{ fromC: 200, minutes: 20, celsius: 140 }] },
};
const roast = component('roots', [step('roast', [on(1), off(20, 22), on(1)], [inOven(200)])]);
const crumbs = component('crumbs', [
  step('crisp', [on(1), off(5, 30), on(1)], [inOven(140, 170, { afterheat: true })]),
]);

test('an oven with readings alone is heated as long as they say', () => {
  const plan = planned({ components: [roast], kitchen: { ovens: [read] } });
  expect(stepOf(plan, 'roots/roast').start).toBe(12);
  expect(checkPlan(plan)).toEqual([]);
  // The plan keeps the kitchen as it was written.
  expect(plan.kitchen.ovens[0]).toEqual(read);
});

test('its afterheat begins and ends two degrees on the safe side of the fit', () => {
  const plan = planned({ components: [roast, crumbs], kitchen: { ovens: [read] } });
  const off200 = plan.ovens[0]!.settings.at(-1)!.minute;
  const { start, end } = stepOf(plan, 'crumbs/crisp');
  // Time constant 20 / ln 1.5 = 49.33 min: 202 → 170 °C in 9.5 min, 198 → 140 °C in 19.4 min.
  expect(start - off200).toBeGreaterThanOrEqual(10);
  expect(end - off200).toBeLessThanOrEqual(19);
  expect(checkPlan(plan)).toEqual([]);
});

test('an oven of which nothing is known is planned as a typical one', () => {
  const plan = planned({ components: [roast], kitchen: { ovens: [bare] } });
  expect(stepOf(plan, 'roots/roast').start).toBeGreaterThan(3);
  expect(stepOf(plan, 'roots/roast').start).toBeLessThan(15);
  expect(checkPlan(plan)).toEqual([]);
});

test('a gas oven draws nothing from the supply', () => {
  const power = [{ id: 'home', name: 'home', limitW: 1000 }];
  const gas = { ...linearOven('oven'), kind: 'gas' as const };
  const plan = planned({ components: [roast], kitchen: { ovens: [gas], power } });
  expect(checkPlan(plan)).toEqual([]);
  const electric = structuredClone(plan);
  delete electric.kitchen.ovens[0]!.kind;
  expect(new Set(checkPlan(electric).map(({ rule }) => rule))).toEqual(new Set([3]));
});

test('what power cannot reach is not planned, from a cold start either', () => {
  // 100 W into a loss of some 4 W/K warm an oven by about 25 K.
  const feeble = { ...bare, powerW: 100 };
  const cold = component('roots', [
    step('roast', [on(1), off(20, 22), on(1)], [inOven(200, 200, { coldStart: true })]),
  ]);
  expect(planResult({ components: [cold], kitchen: { ovens: [feeble] } }).kind).toBe('impossible');
});
