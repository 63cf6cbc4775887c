/** The demo documents keep their schemas, name only what is there, and hold what the demo promises. All of their data is invented. */
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { Component } from '../../solver/kitchen/component.ts';
import { dishesOf, expandDish } from '../../solver/kitchen/expand.ts';
import { Kitchen } from '../../solver/kitchen/kitchen.ts';
import { Session } from '../../solver/kitchen/session.ts';
import { allergensOf, servedWrongly } from '../../solver/food/soil.ts';
import type { Need, Segment, Step } from '../../solver/kitchen/step.ts';
import { durationMinutes } from '../../solver/kitchen/values.ts';
import { DEMO, byId, demoComponents, demoKitchens, demoSessions, rawDocuments } from '../support/demo-documents.ts';

const kitchens = demoKitchens();
const components = demoComponents();
const sessions = demoSessions();

const KINDS = [
  { kind: 'kitchen', schema: Kitchen },
  { kind: 'component', schema: Component },
  { kind: 'session', schema: Session },
] as const;

interface Method {
  readonly segments: readonly Segment[];
  readonly needs: readonly Need[];
}
const methods = (step: Step): readonly Method[] => [step, ...(step.alternatives ?? [])];
const stepsOf = (session: Session): readonly { component: Component; step: Step }[] =>
  session.dishes.flatMap((dish) => {
    const component = byId(components, dish.component);
    return component.steps.map((step) => ({ component, step }));
  });
const everyStep = components.flatMap((component) => component.steps.map((step) => ({ component, step })));
const titled = ({ component, step }: { component: Component; step: Step }): string => `${component.id}/${step.id}`;

describe.each(KINDS)('every $kind document', ({ kind, schema }) => {
  const documents = rawDocuments(DEMO, kind);
  test.each(documents.map((document) => [document.file, document] as const))(
    '%s keeps the schema',
    (_file, document) => {
      const result = v.safeParse(schema, document.json);
      expect(result.success ? [] : v.flatten(result.issues as [v.BaseIssue<unknown>])).toEqual([]);
    },
  );
  test.each(documents.map((document) => [document.file, document] as const))(
    '%s is named for its id, and marks what is invented',
    (file, document) => {
      const { id, note } = document.json as { id: string; note?: string };
      expect(file).toBe(`${id}.${kind}.json`);
      expect(note).toContain('Invented for the demo.');
    },
  );
});

describe('a demo document names only what is there', () => {
  test('a session its kitchens, components, people and dishes', () => {
    for (const session of sessions) {
      const people = session.people.map((person) => person.id);
      const dishes = session.dishes.map((dish) => dish.component);
      for (const kitchen of session.kitchens) expect(kitchens.map((each) => each.id)).toContain(kitchen);
      for (const dish of dishes) expect(components.map((each) => each.id)).toContain(dish);
      for (const crew of session.crews ?? []) for (const person of crew.people) expect(people).toContain(person);
      for (const eater of session.eaters ?? []) for (const id of eater.eats ?? []) expect(dishes).toContain(id);
      for (const id of session.packing?.without ?? []) expect(dishes).toContain(id);
      for (const id of session.table?.dishes ?? []) expect(dishes).toContain(id);
      expect(dishesOf(session, components).faults).toEqual([]);
    }
  });

  test('a component its own steps and ingredients', () => {
    for (const component of components) {
      const steps = component.steps.map((step) => step.id);
      const ingredients = component.ingredients.map((ingredient) => ingredient.id);
      const named = [
        ...(component.holds ?? []).flatMap((hold) => [hold.from, hold.to]),
        ...(component.batches?.steps ?? []),
        ...(component.ahead ?? []).map((ahead) => ahead.until),
        ...(component.ready === undefined ? [] : [component.ready]),
        ...(component.fridge === undefined ? [] : [component.fridge.from]),
      ];
      expect(new Set(steps).size, component.id).toBe(steps.length);
      for (const id of named) expect(steps, component.id).toContain(id);
      for (const step of component.steps) {
        for (const id of step.touches ?? []) expect(ingredients, titled({ component, step })).toContain(id);
        for (const { segments } of methods(step))
          for (const segment of segments)
            if (segment.hands === 'on' && segment.work.of !== undefined) expect(ingredients).toContain(segment.work.of);
      }
    }
  });

  test('an order a step that is in every session with the dish', () => {
    for (const session of sessions)
      for (const { component, step } of stepsOf(session))
        for (const after of step.after ?? []) {
          const [first, second] = after.step.split('/') as [string, string | undefined];
          const owner = second === undefined ? component : byId(components, first);
          expect(
            owner.steps.map((each) => each.id),
            titled({ component, step }),
          ).toContain(second ?? first);
          expect(session.dishes.map((dish) => dish.component)).toContain(owner.id);
        }
  });

  test('a stretch of segments that the step has', () => {
    for (const each of everyStep)
      for (const { segments, needs } of methods(each.step))
        for (const { during } of needs) {
          if (during === undefined) continue;
          expect(during.from, titled(each)).toBeLessThanOrEqual(during.to);
          expect(during.to, titled(each)).toBeLessThan(segments.length);
        }
  });
});

describe('every demo component', () => {
  test('ends each step by a hand, or has a step that follows it within a longest gap', () => {
    for (const { component, step } of everyStep) {
      if (methods(step).every(({ segments }) => segments.at(-1)!.hands === 'on')) continue;
      const follower = component.steps.find((other) =>
        other.after?.some((after) => after.step === step.id && after.longest !== undefined),
      );
      expect(follower, titled({ component, step })).toBeDefined();
    }
  });

  test('reads the core with a probe in the last hands-on minutes of a step that cooks raw food through', () => {
    const through = everyStep.filter(({ step }) => step.cooksThrough !== undefined);
    expect(through.length).toBeGreaterThan(0);
    for (const each of through)
      for (const { segments } of methods(each.step)) {
        const last = segments.at(-1)!;
        expect(last.hands === 'on' && last.probe, titled(each)).toBe(true);
      }
  });

  test('cooks meat and poultry in an oven at 163 °C at least', () => {
    // source: USDA FSIS, oven setting when roasting meat or poultry, at least 325 °F = 163 °C
    for (const each of everyStep.filter(({ step }) => step.cooksThrough !== undefined))
      for (const { needs } of methods(each.step))
        for (const need of needs)
          if (need.use === 'oven') expect(need.leastC, titled(each)).toBeGreaterThanOrEqual(163);
  });

  test('names a core target that a published pair of temperature and time allows', () => {
    // source: Food Standards Agency cooking advice: 65 °C 10 min; 70 °C 2 min; 75 °C 30 s; 80 °C 6 s
    const pairs = [
      { coreC: 65, seconds: 600 },
      { coreC: 70, seconds: 120 },
      { coreC: 75, seconds: 30 },
      { coreC: 80, seconds: 6 },
    ];
    for (const { component, step } of everyStep) {
      const target = step.cooksThrough;
      if (target === undefined) continue;
      const met = pairs.some((pair) => target.coreC >= pair.coreC && target.holdSeconds >= pair.seconds);
      expect(met, titled({ component, step })).toBe(true);
      // source: FoodSafety.gov safe minimum internal temperatures: all poultry 165 °F = 73.9 °C
      if (target.raw === 'poultry') expect(target.coreC).toBeGreaterThanOrEqual(73.9);
    }
  });

  test('goes into the fridge within two hours of leaving the heat', () => {
    // source: USDA FSIS, two-hour rule
    for (const component of components)
      if (component.fridge !== undefined)
        expect(durationMinutes(component.fridge.within), component.id).toBeLessThanOrEqual(120);
  });

  test.each([
    // source: USDA SR26 and SR28 food weights and water contents, as cooked weight over raw or dry weight; the demo's own amounts are invented
    { id: 'paprika-thighs', of: ['thighs'], factor: 0.71, food: 'chicken thigh, roasted, NDB 05091 and 05094' },
    { id: 'coley-parcels', of: ['coley', 'fennel'], factor: 0.779, food: 'cod fillet, dry heat, NDB 15015 and 15016' },
    {
      id: 'baked-trout',
      of: ['trout'],
      factor: 0.778,
      food: 'wild salmon fillet, dry heat, NDB 15076 and 15209',
    },
    { id: 'shaken-potatoes', of: ['potatoes'], factor: 0.812, food: 'potato, baked in skin, NDB 11352 and 11356' },
    {
      id: 'turkey-patties',
      of: ['turkey-mince', 'spinach'],
      factor: 0.737,
      food: 'turkey mince, NDB 05306, and frozen spinach, NDB 11464',
    },
  ])('makes a cooked weight of $id near that of published yields: $food', ({ id, of, factor }) => {
    const component = byId(components, id);
    const raw = component.ingredients
      .filter((each) => of.includes(each.id))
      .reduce((sum, each) => sum + each.massG!, 0);
    const others = component.ingredients
      .filter((each) => !of.includes(each.id))
      .reduce((sum, each) => sum + (each.massG ?? 0), 0);
    expect(component.makes.massG).toBeGreaterThan(0.9 * factor * raw);
    expect(component.makes.massG).toBeLessThan(1.1 * factor * raw + others);
  });

  test('serves no eater what they avoid', () => {
    for (const session of sessions)
      for (const dish of session.dishes) expect(servedWrongly(session, byId(components, dish.component))).toEqual([]);
  });
});

describe('the harbour Sunday', () => {
  const session = byId(sessions, 'harbour-sunday');
  const steps = stepsOf(session);
  const needs = steps.flatMap(({ component, step }) =>
    methods(step).flatMap((method) => method.needs.map((need) => ({ component, step, need }))),
  );

  test('fills fourteen boxes, for somebody coeliac and somebody without sesame among others', () => {
    const eaters = session.eaters ?? [];
    expect(session.packing?.boxes).toBe(14);
    expect(eaters.reduce((sum, eater) => sum + eater.boxes, 0)).toBe(14);
    expect(eaters).toHaveLength(5);
    expect(eaters.filter((eater) => eater.avoids.includes('gluten'))).toHaveLength(1);
    expect(eaters.filter((eater) => eater.avoids.includes('sesame'))).toHaveLength(1);
    const made = session.dishes.map((dish) => allergensOf(byId(components, dish.component)));
    expect(made.some((own) => own.has('gluten'))).toBe(true);
    expect(made.some((own) => own.has('sesame'))).toBe(true);
  });

  test('has six to nine components and at least 45 steps in the minute lanes', () => {
    const { dishes } = dishesOf(session, components);
    expect(session.dishes.length).toBeGreaterThanOrEqual(6);
    expect(session.dishes.length).toBeLessThanOrEqual(9);
    expect(dishes.flatMap((dish) => expandDish(dish, dish.splits[0]!)).length).toBeGreaterThanOrEqual(45);
  });

  test('can be cooked with one oven or two, by one person or two', () => {
    expect(session.kitchens.map((id) => byId(kitchens, id).ovens.length).sort()).toEqual([1, 2]);
    expect((session.crews ?? []).map((crew) => crew.people.length).sort()).toEqual([1, 2]);
  });

  test('needs three temperatures of one oven, whichever alternatives are taken, and its afterheat', () => {
    const hot = steps
      .map(({ step }) =>
        methods(step).flatMap((method) =>
          method.needs.flatMap((need) => (need.use === 'oven' && need.afterheat !== true ? [need] : [])),
        ),
      )
      .filter((windows) => windows.length > 0);
    const apart = (a: (typeof hot)[number], b: (typeof hot)[number]): boolean =>
      a.every((one) => b.every((other) => one.mostC < other.leastC || other.mostC < one.leastC));
    const three = hot.some((a) => hot.some((b) => apart(a, b) && hot.some((c) => apart(a, c) && apart(b, c))));
    expect(three).toBe(true);
    expect(needs.some(({ need }) => need.use === 'oven' && need.afterheat === true)).toBe(true);
  });

  test('uses one pot of water for four things or more: boiled, steamed over and drawn, gluten-free ones and wheat', () => {
    const pooled = needs.filter(({ need }) => need.use === 'pool');
    expect(session.pools).toHaveLength(1);
    expect(new Set(pooled.map(titled)).size).toBeGreaterThanOrEqual(4);
    expect(new Set(pooled.map(({ need }) => (need.use === 'pool' ? need.how : '')))).toEqual(
      new Set(['boil', 'steam', 'draw']),
    );
    expect(pooled.some(({ component }) => allergensOf(component).has('gluten'))).toBe(true);
    expect(pooled.filter(({ component }) => !allergensOf(component).has('gluten')).length).toBeGreaterThanOrEqual(3);
  });

  test('boils its kettle, rests, cools, and cuts raw fish, raw poultry and food eaten as it is on boards', () => {
    expect(needs.some(({ need }) => need.use === 'kettle')).toBe(true);
    for (const place of ['resting', 'cooling'])
      expect(
        needs.some(({ need }) => need.use === 'place' && need.place === place),
        place,
      ).toBe(true);
    const cut = needs.filter(({ need }) => need.use === 'board');
    const raw = (kind: string): boolean =>
      cut.some(
        ({ component, step }) =>
          step.cooked !== true &&
          component.ingredients.some(
            (each) => each.raw === kind && (step.touches === undefined || step.touches.includes(each.id)),
          ),
      );
    expect(raw('fish')).toBe(true);
    expect(raw('poultry')).toBe(true);
    expect(cut.some(({ step }) => step.readyToEat === true)).toBe(true);
  });

  test('soaks something the day before, and thaws boxes on a later day', () => {
    const own = session.dishes.map((dish) => byId(components, dish.component));
    expect(own.some((component) => component.ahead?.some((ahead) => ahead.daysBefore === 1))).toBe(true);
    expect(own.some((component) => (component.later ?? []).length > 0)).toBe(true);
  });

  test('makes a dressing of the liquor that a pickle leaves', () => {
    const whisk = byId(byId(components, 'dulse-dressing').steps, 'whisk');
    expect(whisk.after?.map((after) => after.step)).toContain('pink-onions/soak');
  });

  test('meets a home supply too small for all its ovens, the kettle and the pot of water at once', () => {
    for (const kitchen of session.kitchens.map((id) => byId(kitchens, id))) {
      const home = byId(kitchen.power, 'home');
      const pot = kitchen.pans.filter((pan) => pan.volumeMl >= session.pools![0]!.waterMl);
      const burners = kitchen.hob.burners.filter((burner) =>
        pot.some((pan) => pan.acrossCm >= burner.leastPanCm && pan.acrossCm <= burner.mostPanCm),
      );
      const ovens = kitchen.ovens.reduce((sum, oven) => sum + oven.powerW, 0);
      const atTheBoil = ovens + Math.min(...burners.map((burner) => burner.powerW));
      expect(atTheBoil, kitchen.id).toBeLessThanOrEqual(home.limitW);
      expect(atTheBoil + kitchen.kettle!.powerW, kitchen.id).toBeGreaterThan(home.limitW);
    }
  });

  test('ends with a clearing, and cools its boxes before they are put away', () => {
    expect(session.clearing).toBeDefined();
    expect(session.packing?.cooling).toBeDefined();
    expect(session.packing?.putAway).toBeDefined();
  });
});
