/** Components here are invented; the figures are those of the built-in rules, held against their sources in tests/published. */
import { describe, expect, test } from 'vitest';
import type { Component } from '../../../solver/kitchen/component.ts';
import type { Step } from '../../../solver/kitchen/step.ts';
import { methodFaults } from '../../../solver/safety/method-faults.ts';
import { rulesInForce } from '../../../solver/safety/rules-in-force.ts';
import { session as supper } from '../../support/supper.ts';

const roast = (through: Partial<NonNullable<Step['cooksThrough']>>, step: Partial<Step> = {}): Step => ({
  id: 'roast',
  name: 'roast the bird',
  segments: [
    { hands: 'on', work: { fixed: 'PT1M' } },
    { hands: 'off', shortest: 'PT40M' },
    { hands: 'on', work: { fixed: 'PT1M' }, probe: true },
  ],
  needs: [{ use: 'oven', function: 'conventional', leastC: 180, mostC: 200, share: 50 }],
  cooked: true,
  cooksThrough: { raw: 'poultry', coreC: 75, holdSeconds: 30, ...through },
  ...step,
});
const serve: Step = {
  id: 'serve',
  name: 'serve',
  segments: [{ hands: 'on', work: { fixed: 'PT1M' } }],
  needs: [],
  after: [{ step: 'roast' }],
  cooked: true,
  readyToEat: true,
};
const bird = (steps: Step[], extra: Partial<Component> = {}): Component => ({
  kind: 'component',
  version: 1,
  id: 'bird',
  name: 'roast bird',
  makes: { portions: 4, massG: 1000 },
  ingredients: [{ id: 'bird', name: 'bird', allergens: [], raw: 'poultry' }],
  steps,
  packed: 'cooled',
  keeps: { fridge: 'P2D' },
  ...extra,
});

const { eaters: _, ...plain } = supper;
const session = { ...plain, dishes: [{ component: 'bird', portions: 4 }] };
function faultsOf(component: Component, authority?: string, roomC = 20) {
  const rules = rulesInForce(authority);
  if (!rules.ok) throw new Error(rules.faults[0]!.found);
  return methodFaults(session, [component], rules.rules, roomC);
}
const found = (component: Component, authority?: string, roomC?: number): readonly string[] =>
  faultsOf(component, authority, roomC).map((fault) => fault.found);

describe('a method that meets the strictest rules', () => {
  test('is taken', () => expect(faultsOf(bird([roast({}), serve]))).toEqual([]));
});

describe('poultry taken out at 65 °C with no hold', () => {
  const faulty = bird([roast({ coreC: 65, holdSeconds: 0 }), serve]);
  test.each([undefined, 'united-states', 'united-kingdom'])('is refused under %s', (authority) => {
    expect(faultsOf(faulty, authority)).toMatchObject([
      {
        document: 'component bird',
        path: 'steps[0].cooksThrough',
        found: 'roast the bird takes raw poultry out at 65 °C with no hold',
      },
    ]);
  });
  test('with what is wanted, who wants it, and the mend', () => {
    const [fault] = faultsOf(faulty, 'united-kingdom');
    expect(fault!.wanted).toMatch(/^60 °C for 93 min, 65 °C for 14 min, 70 °C for 2 min.*Food Standards Agency/);
    expect(fault!.mend).toBe('read 65 °C for 840 s, or a hotter core for less');
  });
  test('is taken in the United Kingdom once it holds 65 °C for 14 min, and still refused in the United States', () => {
    const held = bird([roast({ coreC: 65, holdSeconds: 14 * 60 }), serve]);
    expect(found(held, 'united-kingdom')).toEqual([]);
    expect(found(held, 'united-states')).toHaveLength(1);
    expect(found(held)).toHaveLength(1);
  });
});

describe('poultry read at 165 °F with no hold', () => {
  const american = bird([roast({ coreC: 74, holdSeconds: 0 }), serve]);
  test('is taken in the United States, and refused in the United Kingdom, where 70 °C must hold for 2 min', () => {
    expect(found(american, 'united-states')).toEqual([]);
    expect(found(american, 'united-kingdom')).toHaveLength(1);
  });
});

describe('meat', () => {
  const joint = (cut: 'whole' | 'minced' | undefined, after: Step[] = [serve]): Component =>
    bird([roast({ raw: 'meat', coreC: 63, holdSeconds: 0, ...(cut === undefined ? {} : { cut }) }), ...after], {
      ingredients: [{ id: 'joint', name: 'joint', allergens: [], raw: 'meat' }],
    });
  test('in one piece may be read at 145 °F in the United States', () => {
    expect(found(joint('whole'), 'united-states')).toEqual([]);
  });
  test.each(['minced', undefined] as const)('that is %s is asked for 160 °F', (cut) => {
    const [fault] = faultsOf(joint(cut), 'united-states');
    expect(fault!.wanted).toMatch(/^71.2 °C/);
    expect(fault!.mend.includes('"cut": "whole"')).toBe(cut === undefined);
  });
  test('in one piece must be followed by a step in which it can rest', () => {
    expect(faultsOf(joint('whole', []), 'united-states')).toMatchObject([
      { path: 'steps[0]', wanted: expect.stringMatching(/^a rest of 3 min/) as string },
    ]);
  });
});

describe('an oven', () => {
  const slow = bird([
    roast({}, { needs: [{ use: 'oven', function: 'fan', leastC: 120, mostC: 150, share: 50 }] }),
    serve,
  ]);
  test('whose whole window lies below 325 °F is refused in the United States, and by default', () => {
    expect(faultsOf(slow, 'united-states')).toMatchObject([
      { path: 'steps[0].needs', mend: 'raise the window so that it reaches 163 °C' },
    ]);
    expect(found(slow)).toHaveLength(1);
    expect(found(slow, 'united-kingdom')).toEqual([]);
  });
  test('that is switched off cooks nothing through', () => {
    const needs: Step['needs'] = [
      { use: 'oven', function: 'fan', leastC: 180, mostC: 200, share: 50, afterheat: true },
    ];
    expect(found(bird([roast({}, { needs }), serve]))).toEqual([
      'roast the bird cooks raw poultry through in afterheat',
    ]);
  });
});

test('cooking through without a probe reading at its end is refused', () => {
  const unread = roast(
    {},
    {
      segments: [
        { hands: 'on', work: { fixed: 'PT1M' } },
        { hands: 'off', shortest: 'PT40M' },
      ],
    },
  );
  expect(found(bird([unread, serve]))).toEqual([
    'roast the bird cooks raw poultry through with no probe reading at its end',
  ]);
});

test('raw food that counts as cooked, though no step cooks it through, is refused', () => {
  const { cooksThrough: _through, ...unsaid } = roast({});
  expect(faultsOf(bird([unsaid, serve]))).toMatchObject([
    {
      path: 'ingredients[0].raw',
      found: 'raw poultry (bird) that counts as cooked, and no step that cooks raw poultry through',
    },
  ]);
});

describe('a life in the fridge', () => {
  const keeping = (fridge: string, storage?: string): Component =>
    bird([roast({}), serve], { keeps: { fridge }, ...(storage === undefined ? {} : { storage }) });
  test('longer than the authority gives is refused', () => {
    expect(found(keeping('P3D', 'cooked-poultry'), 'united-states')).toEqual([]);
    expect(found(keeping('P4D', 'cooked-poultry'), 'united-states')).toEqual([
      'roast bird keeps for 4 days in the fridge',
    ]);
    expect(found(keeping('P3D', 'cooked-poultry'), 'united-kingdom')).toHaveLength(1);
    expect(found(keeping('P2D', 'cooked-rice'))).toHaveLength(1);
    expect(found(keeping('P1D', 'cooked-rice'))).toEqual([]);
  });
  test('of a component that names no class, or an unknown one, is that of leftovers, and the fault says so', () => {
    expect(faultsOf(keeping('P3D'))[0]!.wanted).toMatch(/^2 days at most \(it names no storage class/);
    expect(faultsOf(keeping('P3D', 'marzipan'))[0]!.wanted).toMatch(
      /^2 days at most \(the class "marzipan" is unknown/,
    );
  });
});

test('food kept hot at less than the holding limit is refused', () => {
  const held: Step = { ...serve, hotHold: { leastC: 60, longest: 'PT30M' } };
  expect(found(bird([roast({}), held]), 'united-states')).toEqual([]);
  expect(found(bird([roast({}), held]), 'united-kingdom')).toEqual(['serve keeps food hot at 60 °C']);
});

describe('cooling that alone takes longer than the time to the fridge', () => {
  const cool = (minutes: number): Step => ({
    id: 'cool',
    name: 'cool the bird',
    segments: [{ hands: 'off', shortest: `PT${minutes}M` }],
    needs: [{ use: 'place', place: 'cooling', places: 1 }],
    after: [{ step: 'serve' }],
  });
  test('is refused, sooner where the room is hot', () => {
    expect(found(bird([roast({}), serve, cool(80)]))).toEqual([]);
    expect(found(bird([roast({}), serve, cool(100)]))).toEqual(['cool the bird cools roast bird for 100 min']);
    expect(found(bird([roast({}), serve, cool(100)]), 'united-states')).toEqual([]);
    expect(found(bird([roast({}), serve, cool(80)]), 'united-states', 35)).toHaveLength(1);
  });
});

describe('kidney beans', () => {
  const boil = (minutes: number, extra: Partial<Step> = {}): Step => ({
    id: 'boil',
    name: 'boil the beans',
    segments: [
      { hands: 'on', work: { fixed: 'PT1M' } },
      { hands: 'off', shortest: `PT${minutes}M`, boilMl: 2000 },
      { hands: 'on', work: { fixed: 'PT1M' } },
    ],
    needs: [{ use: 'burner', heat: 'full' }],
    after: [{ step: 'drain' }],
    ...extra,
  });
  const drain: Step = { ...serve, id: 'drain', name: 'drain', after: [] };
  const soak = (hours: number): NonNullable<Component['ahead']> => [
    {
      id: 'soak',
      name: 'soak',
      daysBefore: 1,
      at: '20:00',
      hands: 'PT2M',
      shortest: `PT${hours}H`,
      longest: 'PT18H',
      until: 'drain',
    },
  ];
  const beans = (
    steps: Step[],
    ahead = soak(8),
    toxin: object = { soak: 'soak', drain: 'drain', boil: 'boil' },
  ): Component =>
    bird(steps, {
      ingredients: [{ id: 'beans', name: 'red beans', allergens: [], toxin: { kind: 'kidney-beans', ...toxin } }],
      ahead,
    });
  test('soaked for 5 h, drained and boiled for 30 min are taken', () => {
    expect(faultsOf(beans([drain, boil(30)], soak(5)))).toEqual([]);
  });
  test.each([
    {
      name: 'soaked for 4 h',
      component: beans([drain, boil(30)], soak(4)),
      says: 'the red beans may soak for only 240 min',
    },
    {
      name: 'not soaked',
      component: beans([drain, boil(30)], [], { drain: 'drain', boil: 'boil' }),
      says: 'no step that soaks the red beans',
    },
    {
      name: 'boiled in their soaking water',
      component: beans([drain, boil(30, { after: [] })]),
      says: 'boil the beans need not come after the soaking water is poured away',
    },
    {
      name: 'with no step that drains them',
      component: beans([drain, boil(30)], soak(8), { soak: 'soak', boil: 'boil' }),
      says: 'no step after the soak that pours its water away',
    },
    { name: 'boiled for 20 min', component: beans([drain, boil(20)]), says: 'boil the beans boils for only 20 min' },
    {
      name: 'only simmered',
      component: beans([drain, boil(40, { needs: [{ use: 'burner', heat: 'simmer' }] })]),
      says: 'boil the beans does not keep water at the boil',
    },
    {
      name: 'done in a slow cooker alone',
      component: beans([drain, boil(400, { needs: [{ use: 'appliance', does: 'slow-cooker' }] })]),
      says: 'boil the beans does not keep water at the boil',
    },
    {
      name: 'never boiled',
      component: beans([drain], soak(8), { soak: 'soak', drain: 'drain' }),
      says: 'no step that boils the red beans',
    },
    {
      name: 'of a toxin no rule knows',
      component: beans([drain, boil(30)], soak(8), { kind: 'moon-dust' }),
      says: '"moon-dust", of which no rule tells',
    },
  ])('$name are refused', ({ component, says }) => {
    expect(found(component)).toEqual([says]);
  });
});
