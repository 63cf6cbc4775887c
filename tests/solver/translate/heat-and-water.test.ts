import { describe, expect, test } from 'vitest';
import type { Need } from '../../../solver/kitchen/step.ts';
import { component, inOven, off, on, smallKitchen, step } from '../../support/documents.ts';
import { planned, planResult, stepOf } from '../../support/planning.ts';

const roast = (id: string, needs: readonly Need[], minutes = 20) =>
  component(id, [step('roast', [on(1), off(minutes, minutes + 5), on(1)], needs)]);

describe('the oven', () => {
  test('is heated before food goes in: 20 to 200 °C at 10 °C a minute takes 18 minutes', () => {
    const plan = planned({ components: [roast('roots', [inOven(200)])] });
    expect(stepOf(plan, 'roots/roast').start).toBe(18);
    expect(plan.ovens[0]!.settings).toEqual([
      { minute: 0, celsius: 200, function: 'conventional' },
      { minute: 40, celsius: null, function: 'conventional' },
    ]);
  });

  test('names a step done in another way by both', () => {
    const [first] = roast('roots', [inOven(201, 209)]).steps;
    const cooler = { name: 'a little cooler', segments: first!.segments, needs: [inOven(200)] };
    const plan = planned({ components: [component('roots', [{ ...first!, alternatives: [cooler] }])] });
    expect(stepOf(plan, 'roots/roast').name).toBe('roast, a little cooler');
  });

  test('may take food cold where the step allows it', () => {
    const plan = planned({ components: [roast('roots', [inOven(200, 200, { coldStart: true })])] });
    expect(stepOf(plan, 'roots/roast').start).toBe(0);
  });

  test('holds two trays at once where their windows share a dial position', () => {
    const plan = planned({ components: [roast('roots', [inOven(190, 210)]), roast('fish', [inOven(200, 220)])] });
    expect(plan.finishMinutes).toBeLessThan(18 + 22 + 22);
  });

  test('is turned between windows that share none: 180 to 220 °C takes 4 minutes, 220 to 180 °C 8', () => {
    const plan = planned({ components: [roast('roots', [inOven(180)]), roast('fish', [inOven(220)])] });
    // 180 first: 16 to heat, 22, 4, 22.
    expect(plan.finishMinutes).toBe(16 + 22 + 4 + 22);
  });

  test('is never asked for a temperature that its dial does not have', () => {
    const result = planResult({ components: [roast('roots', [inOven(201, 209)])] });
    expect(result).toMatchObject({
      kind: 'refused',
      faults: [{ document: 'component roots', path: 'steps[0].needs' }],
    });
  });

  test('crisps in its afterheat once it has fallen into the window, and not after it has left it', () => {
    const crumbs = component('crumbs', [
      step('crisp', [on(1), off(5, 15), on(1)], [inOven(120, 160, { afterheat: true })]),
    ]);
    const plan = planned({ components: [roast('roots', [inOven(200)]), crumbs] });
    const off200 = plan.ovens[0]!.settings.at(-1)!.minute;
    const { start, end } = stepOf(plan, 'crumbs/crisp');
    // 200 → 160 °C at 5 °C a minute: 8 minutes; 200 → 120 °C: 16 minutes.
    expect(start - off200).toBeGreaterThanOrEqual(8);
    expect(end - off200).toBeLessThanOrEqual(16);
  });

  test('may go off with food that could have crisped in an afterheat, and is done in the heat instead', () => {
    const crisp = step('crisp', [on(1), off(5, 15), on(1)], [inOven(120, 160, { afterheat: true })]);
    const inTheHeat = { name: 'in the heat', segments: [on(1), off(30), on(1)], needs: [inOven(200)] };
    const bread = component('bread', [
      step('bake', [on(1), off(20), on(1)], [inOven(200)]),
      // The oven is as cold as that too late.
      { ...crisp, after: [{ step: 'bake', longest: 'PT5M' }], alternatives: [inTheHeat] },
    ]);
    const plan = planned({ components: [bread] });
    expect(stepOf(plan, 'bread/crisp').name).toBe('crisp, in the heat');
    expect(plan.finishMinutes).toBe(18 + 22 + 32);
  });

  test('does not run beside the kettle where the supply cannot bear both', () => {
    const tea = component('tea', [
      step('boil', [on(1), off(0, 5, { boilMl: 1000 }), on(1)], [{ use: 'kettle', ml: 1000 }]),
    ]);
    const plan = planned({
      components: [roast('roots', [inOven(200)]), tea],
      kitchen: { power: [{ id: 'home', name: 'home', limitW: 4000 }] },
    });
    const onAt = plan.ovens[0]!.settings[0]!.minute;
    const offAt = plan.ovens[0]!.settings.at(-1)!.minute;
    const kettle = stepOf(plan, 'tea/boil').places.find((place) => place.kind === 'kettle')!;
    expect(kettle.until <= onAt || kettle.from >= offAt).toBe(true);
  });

  test('two ovens hold two temperatures at once', () => {
    const components = [roast('roots', [inOven(180)]), roast('fish', [inOven(220)])];
    const plan = planned({
      components,
      kitchen: { ovens: [smallKitchen().ovens[0]!, { ...smallKitchen().ovens[0]!, id: 'second' }] },
    });
    expect(plan.ovens.map((oven) => oven.oven).sort()).toEqual(['oven', 'second']);
    expect(plan.finishMinutes).toBeLessThanOrEqual(20 + 22 + 1);
  });
});

const boilIn = (id: string, more: Parameters<typeof component>[2] = {}) =>
  component(id, [step('boil', [on(1), off(8, 12), on(1)], [{ use: 'pool', how: 'boil', ml: 1500 }])], more);
const pool = { id: 'pot', name: 'the big pot', waterMl: 3000, leastMl: 2000 };

describe('a pool', () => {
  test('is not drawn from before it boils: 3 L at 4 min a litre takes 12 minutes after filling', () => {
    const plan = planned({ components: [boilIn('eggs')], session: { pools: [pool] } });
    expect(plan.pools[0]!.boils[0]).toMatchObject({ onHeat: 1, boilsAt: 13 });
    expect(stepOf(plan, 'eggs/boil').start).toBe(13);
  });

  test('takes no more in its insert than it holds: 1.5 L twice do not fit 2 L', () => {
    const plan = planned({ components: [boilIn('eggs'), boilIn('greens')], session: { pools: [pool] } });
    const [a, b] = [stepOf(plan, 'eggs/boil'), stepOf(plan, 'greens/boil')];
    expect(a.end <= b.start || b.end <= a.start).toBe(true);
  });

  test('serves what must be free of gluten before wheat', () => {
    const wheat = boilIn('wheat', { ingredients: [{ id: 'stuff', name: 'wheat', massG: 500, allergens: ['gluten'] }] });
    const plan = planned({
      components: [wheat, boilIn('greens')],
      session: { pools: [pool], eaters: [{ id: 'eve', name: 'Eve', avoids: ['gluten'], boxes: 2, eats: ['greens'] }] },
    });
    expect(stepOf(plan, 'greens/boil').end).toBeLessThanOrEqual(stepOf(plan, 'wheat/boil').start);
  });

  test('is never drawn below its least', () => {
    const soak = (id: string) =>
      component(id, [step('soak', [on(1), off(5, 8), on(1)], [{ use: 'pool', how: 'draw', ml: 600 }])]);
    const fits = planResult({ components: [soak('a')], session: { pools: [pool] } });
    const tooMuch = planResult({ components: [soak('a'), soak('b')], session: { pools: [pool] } });
    expect(fits.kind).toBe('planned');
    expect(tooMuch.kind).not.toBe('planned');
  });

  test('with a second boil and fresh water, serves more than it holds', () => {
    const soak = (id: string) =>
      component(id, [step('soak', [on(1), off(5, 8), on(1)], [{ use: 'pool', how: 'draw', ml: 600 }])]);
    const plan = planned({ components: [soak('a'), soak('b')], session: { pools: [{ ...pool, boils: 2 }] } });
    expect(plan.pools[0]!.boils.map((boil) => boil.water)).toEqual(['cold', 'fresh']);
    expect(plan.steps.some((each) => each.step === 'change')).toBe(true);
  });

  test('drawn water is used while it is hot enough after the heat is off', () => {
    const plan = planned({
      components: [
        component('couscous', [step('soak', [on(1), off(5, 8), on(1)], [{ use: 'pool', how: 'draw', ml: 500 }])]),
      ],
      session: { pools: [pool] },
    });
    const boil = plan.pools[0]!.boils[0]!;
    const draw = stepOf(plan, 'couscous/soak').places.find((place) => place.how === 'draw')!;
    expect(draw.from).toBeGreaterThanOrEqual(boil.boilsAt);
    expect(draw.from).toBeLessThanOrEqual(boil.hotUntil);
  });
});

describe('pans and burners', () => {
  test('a pan stands on a burner its size', () => {
    const small = smallKitchen();
    const burners = [{ ...small.hob.burners[0]!, id: 'tiny', mostPanCm: 14 }, small.hob.burners[1]!];
    const stew = component('stew', [
      step(
        'simmer',
        [on(2), off(20), on(1)],
        [
          { use: 'pan', leastMl: 1500 },
          { use: 'burner', heat: 'simmer' },
        ],
      ),
    ]);
    const plan = planned({ components: [stew], kitchen: { hob: { ...small.hob, burners } } });
    expect(stepOf(plan, 'stew/simmer').places.find((place) => place.kind === 'burner')!.id).toBe('right');
  });

  test('water in a pan takes its minutes per litre, lid on or off', () => {
    const stock = (lid: boolean) =>
      component('stock', [
        step(
          'boil',
          [on(1), off(0, 3, { boilMl: 2000 }), on(1)],
          [
            { use: 'pan', leastMl: 2000, lid },
            { use: 'burner', heat: 'full' },
          ],
        ),
      ]);
    expect(planned({ components: [stock(true)] }).finishMinutes).toBe(1 + 8 + 1);
    expect(planned({ components: [stock(false)] }).finishMinutes).toBe(1 + 10 + 1);
  });

  test('a pan kept from one step to another is not lent out in between', () => {
    const keep = (id: string) =>
      component(
        id,
        [
          step('fry', [on(4)], [{ use: 'burner', heat: 'full' }]),
          step('serve', [on(2)], [], { after: [{ step: 'fry', shortest: 'PT15M' }] }),
        ],
        { holds: [{ id: 'pan', need: { use: 'pan', leastMl: 1000 }, from: 'fry', to: 'serve' }] },
      );
    const oneP = { pans: [smallKitchen().pans[1]!] };
    const plan = planned({ components: [keep('a'), keep('b')], kitchen: oneP });
    const [first, second] = [...plan.holds].sort((a, b) => a.place.from - b.place.from);
    expect(first!.place.until).toBeLessThanOrEqual(second!.place.from);
    // Between two dishes the pan is washed.
    expect(plan.steps.filter((each) => each.kind === 'wash' && each.component === 'small-pan')).toHaveLength(1);
  });
});

describe('soil', () => {
  const board: Need = { use: 'board' };
  const chicken = component('chicken', [step('joint', [on(5)], [board])], {
    ingredients: [{ id: 'bird', name: 'chicken', massG: 800, allergens: [], raw: 'poultry' }],
  });
  const salad = component('salad', [step('slice', [on(4)], [board], { readyToEat: true })]);

  test('salad is sliced before raw chicken on the one board, without a wash', () => {
    const plan = planned({ components: [chicken, salad] });
    expect(stepOf(plan, 'salad/slice').end).toBeLessThanOrEqual(stepOf(plan, 'chicken/joint').start);
    expect(plan.steps.filter((each) => each.kind === 'wash')).toEqual([]);
  });

  test('where the chicken comes first, board and hands are washed before the salad', () => {
    const after = component('salad', [
      step('slice', [on(4)], [board], { readyToEat: true, after: [{ step: 'chicken/joint' }] }),
    ]);
    const plan = planned({ components: [chicken, after] });
    const wash = plan.steps.filter((each) => each.kind === 'wash');
    expect(wash).toHaveLength(1);
    expect(wash[0]).toMatchObject({ component: 'board', start: 5, end: 7 });
    expect(plan.finishMinutes).toBe(11);
  });
});

describe('safety', () => {
  test('a step that cooks poultry through without a probe reading is refused with the reason', () => {
    const chicken = component('chicken', [
      step('roast', [on(1), off(35), on(1)], [inOven(200)], {
        cooksThrough: { raw: 'poultry', coreC: 75, holdSeconds: 30 },
      }),
    ]);
    expect(planResult({ components: [chicken] })).toMatchObject({
      kind: 'refused',
      faults: [{ path: 'steps[0].segments' }],
    });
  });

  test('a dish that an eater must not have is refused by name', () => {
    const wheat = component('wheat', [step('mix', [on(1)])], {
      ingredients: [{ id: 'flour', name: 'flour', massG: 100, allergens: ['gluten'] }],
    });
    const result = planResult({
      components: [wheat],
      session: { eaters: [{ id: 'eve', name: 'Eve', avoids: ['gluten'], boxes: 1 }] },
    });
    expect(result).toMatchObject({ kind: 'refused', faults: [{ found: 'wheat contains gluten, which Eve avoids' }] });
  });
});
