/** Steps and boxes that say how their food cools: the minutes are the model's, in the plan and in the checker. All values invented. */
import { describe, expect, test } from 'vitest';
import { findingsOf } from '../../../app/documents/consistency/findings-of.ts';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import { compositionOf, compositionOfPortions } from '../../../solver/food/composition.ts';
import { coolFood } from '../../../solver/heat/food-cooling.ts';
import type { Component } from '../../../solver/kitchen/component.ts';
import type { Cools } from '../../../solver/kitchen/cools.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { component, off, on, step } from '../../support/documents.ts';
import { planResult, planned, stepOf } from '../../support/planning.ts';

const potatoes = { id: 'potatoes', name: 'potatoes', massG: 1000, allergens: [], food: 'potato-raw' };
const spread: Cools = { fromC: 95, toC: 60, depthMm: 20, in: 'rack', wet: true };
const room = [{ use: 'place', place: 'cooling', places: 1 } as const];

const dish = (cools: Cools, more: Partial<Component> = {}): Component => ({
  ...component('roots', [step('cool', [on(1), off(2, 12, { cools }), on(1)], room)]),
  makes: { portions: 4, massG: 1000 },
  ingredients: [potatoes],
  ...more,
});
const minutesOf = (cools: Cools, of: Component): number => {
  const course = coolFood({ ...cools } as Parameters<typeof coolFood>[0], compositionOf(of)!.composition);
  if (course.kind === 'never') throw new Error('never cools');
  return course.minutes;
};
const waitOf = (plan: Plan, id: string): number => {
  const segment = stepOf(plan, id).segments.find(({ hands }) => hands === 'off')!;
  return segment.end - segment.start;
};
const violations = (plan: Plan) => checkPlan(plan, { wallOffset: () => 0 });

describe('a step whose food cools', () => {
  test('lasts as long as the food takes, on top of what is written', () => {
    const roots = dish(spread);
    const minutes = minutesOf(spread, roots);
    expect(minutes).toBeGreaterThan(5);
    expect(waitOf(planned({ components: [roots] }), 'roots/cool')).toBe(minutes + 2);
  });

  test('lasts longer when the food lies deeper, and keeps its place on the shelf for as long', () => {
    const deep = { ...spread, depthMm: 40 };
    const plan = planned({ components: [dish(deep)], session: { longest: 'PT6H' } });
    expect(waitOf(plan, 'roots/cool')).toBe(minutesOf(deep, dish(deep)) + 2);
    const place = stepOf(plan, 'roots/cool').places.find(({ kind }) => kind === 'cooling')!;
    expect(place.until - place.from).toBe(waitOf(plan, 'roots/cool') + 2);
  });

  test('needs no shortest of its own', () => {
    const bare = { ...dish(spread), steps: [step('cool', [on(1), { hands: 'off', cools: spread }, on(1)], room)] };
    expect(waitOf(planned({ components: [bare] }), 'roots/cool')).toBe(minutesOf(spread, bare));
  });

  test('misses a deadline of the fridge that the cooling does not leave time for', () => {
    const slow = { ...spread, depthMm: 80, wet: false };
    const roots = dish(slow, { fridge: { from: 'boil', within: 'PT90M' } });
    const steps = [
      step('boil', [on(1), off(10, 20), on(1)]),
      { ...roots.steps[0]!, after: [{ step: 'boil' }] },
      step('put-away', [on(1)], [], { putsAway: true, after: [{ step: 'cool' }] }),
    ];
    expect(minutesOf(slow, roots)).toBeGreaterThan(90);
    const result = planResult({ components: [{ ...roots, steps }], session: { longest: 'PT10H' } });
    expect(result.kind).not.toBe('planned');
  });
});

describe('the checker', () => {
  test('accepts the plan, and not one in which the food is taken away too soon', () => {
    const plan = planned({ components: [dish(spread)] });
    expect(violations(plan)).toEqual([]);
    const hurried = structuredClone(plan);
    const cool = stepOf(hurried, 'roots/cool') as { end: number; segments: { start: number; end: number }[] };
    for (const segment of cool.segments.slice(1)) segment.end -= 1;
    cool.segments[2]!.start -= 1;
    cool.end -= 1;
    expect(violations(hurried).map(({ rule }) => rule)).toContain(1);
  });
});

describe('boxes whose food cools', () => {
  const lentils: Component = {
    ...component('lentils', [step('warm', [on(2)])]),
    makes: { portions: 4, massG: 1200 },
    ingredients: [
      { id: 'lentils', name: 'lentils', massG: 400, allergens: [], food: 'lentils-dry', becomes: 'lentils-cooked' },
    ],
  };
  const cools: Cools = { fromC: 60, toC: 45, depthMm: 40, in: 'rack', wallMm: 2 };
  const packing = {
    name: 'fill the boxes',
    boxes: 4,
    work: { fixed: 'PT2M' },
    cooling: { shortest: 'PT1M', longest: 'PT10M', places: 2, cools },
    putAway: { fixed: 'PT1M' },
  };

  test('cool as long as what is in them takes, a portion of each', () => {
    const components = [dish(spread), lentils];
    const mixed = compositionOfPortions(components)!.composition;
    const course = coolFood(cools as Parameters<typeof coolFood>[0], mixed);
    const plan = planned({ components, session: { packing, longest: 'PT10H' } });
    expect(waitOf(plan, 'boxes/cool')).toBe(course.kind === 'cools' ? course.minutes + 1 : NaN);
    expect(violations(plan)).toEqual([]);
  });

  test('are refused where it is not known what is in them', () => {
    const result = planResult({ components: [dish(spread, { ingredients: [] })], session: { packing } });
    if (result.kind !== 'refused') throw new Error(result.kind);
    expect(result.faults.map(({ path }) => path)).toEqual([
      'steps[0].segments[1].cools.food',
      'packing.cooling.cools.food',
    ]);
  });
});

describe('a cooling that cannot be', () => {
  test.each<{ name: string; cools: Cools; path: string }>([
    { name: 'warms', cools: { ...spread, fromC: 20 }, path: 'steps[0].segments[1].cools.fromC' },
    { name: 'ends colder than what is around', cools: { ...spread, toC: 20 }, path: 'steps[0].segments[1].cools.toC' },
    {
      name: 'is of a food that is not there',
      cools: { ...spread, food: 'moonbeam' },
      path: 'steps[0].segments[1].cools.food',
    },
  ])('and $name is found at its place', ({ cools, path }) => {
    expect(findingsOf(dish(cools)).map((finding) => finding.path)).toEqual([path]);
  });

  test('can be like a food of the table where the ingredients are not known', () => {
    expect(findingsOf(dish({ ...spread, food: 'potato-boiled' }, { ingredients: [] }))).toEqual([]);
  });
});
