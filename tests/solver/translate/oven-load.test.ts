/** A cold load lengthens its step by the minutes in which the oven chosen makes up for it, in the plan and for the checker. */
import { expect, test } from 'vitest';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import type { Need } from '../../../solver/kitchen/step.ts';
import { component, inOven, linearOven, off, on, step } from '../../support/documents.ts';
import { planned, planResult, stepOf } from '../../support/planning.ts';

/** The oven of the small kitchen has 2100 W to spare: a kilogram from 5 °C on a kilogram of steel takes 3.99 min at 200 °C. */
const load = { massG: 1000, fromC: 5, trayG: 1000 };
const roast = (need: Need, minutes = 20) =>
  component('roots', [step('roast', [on(1), off(minutes, minutes + 2), on(1)], [need])]);
const minutesOf = (plan: ReturnType<typeof planned>): number => {
  const wait = stepOf(plan, 'roots/roast').segments.find(({ hands }) => hands === 'off')!;
  return wait.end - wait.start;
};

test('a step with a cold load goes four minutes longer, and the checker agrees', () => {
  const plan = planned({ components: [roast(inOven(200, 200, { load }))] });
  expect(minutesOf(plan)).toBe(24);
  expect(checkPlan(plan)).toEqual([]);
});

test('a step that tells of no load keeps its minutes', () => {
  expect(minutesOf(planned({ components: [roast(inOven(200))] }))).toBe(20);
});

test('a plan that leaves the minutes out breaks rule 1, and so does one that adds too many', () => {
  const plan = planned({ components: [roast(inOven(200, 200, { load }))] });
  for (const massG of [10, 4000]) {
    const changed = structuredClone(plan);
    const need = changed.components[0]!.steps[0]!.needs[0]!;
    if (need.use === 'oven') need.load = { ...load, massG };
    expect(new Set(checkPlan(changed).map(({ rule }) => rule))).toEqual(new Set([1]));
  }
});

test('the load grows with the amount, and without a mass is all of the component', () => {
  const twice = planned({
    components: [roast(inOven(200, 200, { load: { fromC: 5 } }))],
    session: { dishes: [{ component: 'roots', portions: 8 }] },
  });
  // 2 kg · 4.19 kJ/(kg·K) · 95 K and 14 kJ of air at 2100 W: 6.4 min.
  expect(minutesOf(twice)).toBe(27);
});

test('of two ovens each takes its own minutes', () => {
  const strong = { ...linearOven('strong'), powerW: 9000 };
  const component200 = roast(inOven(200, 200, { load }));
  const plan = planned({ components: [component200], kitchen: { ovens: [linearOven('oven'), strong] } });
  expect(stepOf(plan, 'roots/roast').places.find(({ kind }) => kind === 'rack')!.oven).toBe('strong');
  // 502 kJ at 8100 W: 1.03 min.
  expect(minutesOf(plan)).toBe(22);
  expect(checkPlan(plan)).toEqual([]);
});

test('an oven without power to spare is a fault with its mend', () => {
  const weak = { ...linearOven('oven'), powerW: 900 };
  const result = planResult({ components: [roast(inOven(200, 200, { load }))], kitchen: { ovens: [weak] } });
  expect(result).toMatchObject({
    kind: 'refused',
    faults: [
      { document: 'component roots', path: 'steps[0].needs', found: expect.stringContaining('cold load') as string },
    ],
  });
});
