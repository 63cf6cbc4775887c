/** What the safety rules in force make of a plan. Kitchens, components and sessions are invented; the figures are the built-in rules'. */
import { describe, expect, test } from 'vitest';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import type { Component } from '../../../solver/kitchen/component.ts';
import type { SafetyRules } from '../../../solver/kitchen/safety-rules.ts';
import type { Session } from '../../../solver/kitchen/session.ts';
import { STRICTEST_BUILT_IN } from '../../../solver/safety/rules-in-force.ts';
import { planSession, type PlanSessionResult } from '../../../solver/translate/plan-session.ts';
import { component, inOven, off, on, session as sessionOf, smallKitchen, step } from '../../support/documents.ts';

function planned(components: readonly Component[], more: Partial<Session> = {}, rules?: SafetyRules) {
  const kitchen = smallKitchen();
  const session = sessionOf(components, more);
  const given = rules === undefined ? {} : { rules };
  return planSession({ session, kitchen, components, seed: 1, effort: 200_000, ...given });
}
function planOf(result: PlanSessionResult) {
  if (result.kind !== 'planned') throw new Error(JSON.stringify(result));
  expect(checkPlan(result.plan)).toEqual([]);
  return result.plan;
}
const raw = [{ id: 'joint', name: 'joint', massG: 1000, allergens: [], raw: 'meat' as const }];
const joint = (rest = 0): Component =>
  component(
    'joint',
    [
      step('roast', [on(1), off(20), on(1, { probe: true })], [inOven(150, 200)], {
        cooked: true,
        cooksThrough: { raw: 'meat', cut: 'whole', coreC: 70, holdSeconds: 120 },
      }),
      step('slice', [on(2)], [{ use: 'board' }], {
        cooked: true,
        readyToEat: true,
        after: [{ step: 'roast', ...(rest > 0 ? { shortest: `PT${rest}M` } : {}) }],
      }),
    ],
    { ingredients: raw },
  );

describe('an oven that cooks raw meat through', () => {
  test('is set at 325 °F or hotter where its window reaches lower, and the plan keeps the window as it was written', () => {
    const plan = planOf(planned([joint()], { authority: 'united-states' }));
    expect(plan.ovens[0]!.settings[0]!.celsius).toBeGreaterThanOrEqual(162.8);
    expect(plan.components[0]!.steps[0]!.needs).toMatchObject([{ leastC: 150, mostC: 200 }]);
  });
  test('may be set lower in the United Kingdom, which names no least setting', () => {
    const plan = planOf(planned([joint()], { authority: 'united-kingdom' }));
    expect(plan.ovens[0]!.settings[0]!.celsius).toBe(150);
  });
});

describe('whole meat', () => {
  const gap = (authority: string, rest = 0): number => {
    const { steps } = planOf(planned([joint(rest)], { authority }));
    const at = (id: string) => steps.find((each) => each.id === id)!;
    return at('joint/slice').start - at('joint/roast').end;
  };
  test('rests for 3 min before it is sliced in the United States, and for as long as its recipe says', () => {
    expect(gap('united-states')).toBe(3);
    expect(gap('united-states', 10)).toBe(10);
    expect(gap('united-kingdom')).toBe(0);
  });
});

describe('the time from the heat to the fridge', () => {
  /** Roasted at once, by a pin; put away as late as the dish beside it lets it. */
  const roots = component('roots', [step('roast', [on(1), off(10), on(1)], [inOven(180)], { cooked: true })], {
    fridge: { from: 'roast', within: 'PT3H' },
  });
  const dough = (minutes: number): Component => component('dough', [step('rise', [on(1), off(minutes), on(1)])]);
  const boxes: Partial<Session> = {
    packing: { name: 'fill the boxes', boxes: 4, work: { fixed: 'PT4M' }, putAway: { fixed: 'PT2M' } },
    pins: [{ component: 'roots', step: 'roast', start: 'PT18M' }],
  };
  test('binds though the component names a longer one', () => {
    expect(planned([roots, dough(100)], { ...boxes, authority: 'united-states' }).kind).toBe('planned');
    const result = planned([roots, dough(118)], { ...boxes, authority: 'united-kingdom' });
    expect(result.kind).toBe('impossible');
  });
  test('binds food that names none at all', () => {
    const { fridge: _, ...plain } = roots;
    expect(planned([plain, dough(118)], { ...boxes, authority: 'united-kingdom' }).kind).toBe('impossible');
    planOf(planned([plain, dough(118)], { ...boxes, authority: 'united-states' }));
  });
  test('is shorter for rice', () => {
    const rice = { ...roots, storage: 'cooked-rice', keeps: { fridge: 'P1D' } };
    expect(planned([rice, dough(88)], { ...boxes, authority: 'united-kingdom' }).kind).toBe('impossible');
    planOf(planned([roots, dough(88)], { ...boxes, authority: 'united-kingdom' }));
  });
});

test('a cooling ends within its stage: food that is to be at 20 °C waits no longer than the rules let it', () => {
  const cools = { fromC: 20, toC: 20, depthMm: 10, in: 'air', food: 'kale-boiled', aroundC: 15 } as const;
  const greens = component('greens', [
    step(
      'steam',
      [on(1), off(5), on(1)],
      [
        { use: 'pan', leastMl: 1000 },
        { use: 'burner', heat: 'full' },
      ],
    ),
    step('cool', [off(0, 170, { cools }), on(1)], [], { after: [{ step: 'steam', longest: 'PT0M' }] }),
    step('dress', [on(1)], [], { after: [{ step: 'cool', longest: 'PT0M' }] }),
  ]);
  const late = (minutes: number): Partial<Session> => ({
    pins: [
      { component: 'greens', step: 'steam', start: 'PT0M' },
      { component: 'greens', step: 'dress', start: `PT${minutes}M` },
    ],
  });
  planOf(planned([greens], { ...late(120), authority: 'united-states' }));
  expect(planned([greens], { ...late(140), authority: 'united-states' }).kind).toBe('impossible');
});

test('the plan carries the rules that it was made under, and is held to them', () => {
  const plan = planOf(planned([joint()], { authority: 'united-kingdom' }));
  expect(plan.rules?.id).toBe('united-kingdom');
  const stricter = { ...plan, rules: STRICTEST_BUILT_IN };
  expect(checkPlan(stricter).map(({ rule }) => rule)).toContain(9);
});

test('an authority that nobody knows is refused before anything is planned', () => {
  expect(planned([joint()], { authority: 'atlantis' })).toMatchObject({
    kind: 'refused',
    faults: [{ document: 'session test', path: 'authority' }],
  });
});
