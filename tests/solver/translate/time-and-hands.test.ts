import { describe, expect, test } from 'vitest';
import { component, inOven, off, on, step } from '../../support/documents.ts';
import { planned, planResult, stepOf } from '../../support/planning.ts';

const two = {
  people: [
    { id: 'ada', name: 'Ada', can: ['adult'] },
    { id: 'ben', name: 'Ben', can: [] },
  ],
};

describe('attention', () => {
  test('a step of on 3, off 10, on 2 takes 15 minutes and leaves the hands free in between', () => {
    const plan = planned({
      components: [
        component('soup', [step('simmer', [on(3), off(10), on(2)])]),
        component('salad', [step('chop', [on(10)])]),
      ],
    });
    expect(plan.finishMinutes).toBe(15);
    expect(plan.tiers[0]).toMatchObject({ id: 'finish', value: 15, proven: true });
    expect(stepOf(plan, 'soup/simmer').segments.map(({ hands, start, end }) => [hands, end - start])).toEqual([
      ['on', 3],
      ['off', 10],
      ['on', 2],
    ]);
  });

  test('a hands-off part runs on until a hand is free, up to its longest', () => {
    const plan = planned({
      components: [
        component('soup', [step('simmer', [on(1), off(10, 14), on(1)])]),
        component('salad', [step('chop', [on(13)])]),
      ],
    });
    expect(plan.finishMinutes).toBe(15);
  });

  test('where no hand can end it in time there is no plan', () => {
    const result = planResult({
      components: [
        component('soup', [step('simmer', [on(1), off(10, 11), on(1)])]),
        component('salad', [step('chop', [on(13)], [], { after: [{ step: 'soup/simmer', shortest: 'PT0M' }] })]),
      ],
      session: { longest: 'PT20M' },
    });
    expect(result.kind).not.toBe('planned');
  });

  test('a person does one thing at a time; two people do two', () => {
    const components = [component('a', [step('chop', [on(10)])]), component('b', [step('chop', [on(10)])])];
    expect(planned({ components }).finishMinutes).toBe(20);
    expect(planned({ components, session: two }).finishMinutes).toBe(10);
  });

  test('work that asks for an adult is never given to a child', () => {
    const plan = planned({
      components: [
        component('a', [step('drain', [on(10, { who: 'adult' })])]),
        component('b', [step('drain', [on(10, { who: 'adult' })])]),
      ],
      session: two,
    });
    expect(plan.finishMinutes).toBe(20);
    expect(plan.steps.flatMap((each) => each.segments.map((segment) => segment.person))).toEqual(['ada', 'ada']);
  });

  test('nobody works outside the times they are there', () => {
    const plan = planned({
      components: [component('a', [step('chop', [on(10)])])],
      session: { people: [{ id: 'ada', name: 'Ada', can: [], there: [{ from: 'PT25M', until: 'PT90M' }] }] },
    });
    expect(plan.finishMinutes).toBe(35);
  });

  test('a turn half way is done within its time, by a hand', () => {
    const turn = { name: 'turn', at: 'PT20M', within: 'PT5M', work: { fixed: 'PT1M' } };
    const plan = planned({
      components: [component('roots', [step('roast', [on(1), off(40, 40, { checks: [turn] }), on(1)])])],
    });
    const check = stepOf(plan, 'roots/roast').segments.find((segment) => segment.check === true)!;
    expect(check.start - 1).toBeGreaterThanOrEqual(15);
    expect(check.start - 1).toBeLessThanOrEqual(25);
    expect(plan.finishMinutes).toBe(42);
  });

  test('interruptible work is done in up to three pieces of at least three minutes that sum to it', () => {
    const plan = planned({
      components: [
        component('soup', [step('simmer', [on(2), off(10), on(2)])]),
        component('beans', [step('trim', [on(16)], [], { interruptible: {} })]),
      ],
    });
    const pieces = plan.steps.filter((each) => each.step === 'trim');
    expect(plan.finishMinutes).toBe(20);
    expect(pieces.length).toBeGreaterThan(1);
    expect(pieces.length).toBeLessThanOrEqual(3);
    expect(pieces.every((piece) => piece.end - piece.start >= 3)).toBe(true);
    expect(pieces.reduce((sum, piece) => sum + piece.end - piece.start, 0)).toBe(16);
  });
});

describe('order and limits', () => {
  test('a step follows another within its shortest and longest gap', () => {
    const plan = planned({
      components: [
        component('dough', [
          step('mix', [on(5)]),
          step('shape', [on(5)], [], { after: [{ step: 'mix', shortest: 'PT30M', longest: 'PT40M' }] }),
        ]),
      ],
    });
    expect(stepOf(plan, 'dough/shape').start - stepOf(plan, 'dough/mix').end).toBe(30);
    expect(plan.finishMinutes).toBe(40);
  });

  test('cooling past the finish and putting away are the tail, not the finish', () => {
    const plan = planned({
      components: [
        component('stew', [
          step('stir', [on(5)]),
          step('cool', [off(40, 60)], [{ use: 'place', place: 'cooling', places: 1 }], {
            after: [{ step: 'stir', longest: 'PT0M' }],
          }),
          step('away', [on(2)], [], { after: [{ step: 'cool', longest: 'PT0M' }], putsAway: true }),
        ]),
      ],
    });
    expect(plan.finishMinutes).toBe(5);
    expect(plan.allAwayMinutes).toBe(47);
  });

  test('dishes for the table are done within the allowance before it, as late as can be begun', () => {
    const plan = planned({
      components: [component('roast', [step('roast', [on(5), off(30, 40), on(5)], [inOven(200)])])],
      session: { table: { at: 'PT120M', dishes: ['roast'] } },
    });
    expect(stepOf(plan, 'roast/roast').end).toBeLessThanOrEqual(120);
    expect(stepOf(plan, 'roast/roast').end).toBeGreaterThanOrEqual(115);
    expect(plan.tiers[0]).toMatchObject({ id: 'latest-start', value: 40, proven: true });
  });

  test('a soak of the evening before holds the start of the boil to its limits', () => {
    const plan = planned({
      components: [
        component('beans', [step('boil', [on(2)])], {
          ahead: [
            {
              id: 'soak',
              name: 'soak the beans',
              daysBefore: 1,
              at: '23:30',
              hands: 'PT5M',
              shortest: 'PT11H',
              longest: 'PT14H',
              until: 'boil',
            },
          ],
        }),
      ],
    });
    // In water at 23:35; 11 h later it is 10:35, 35 minutes into the session.
    expect(stepOf(plan, 'beans/boil').start).toBe(35);
    expect(plan.ahead).toMatchObject([{ step: 'soak', start: -630, until: 35, handsOnMinutes: 5 }]);
  });

  test('what the user pinned is where it was pinned', () => {
    const plan = planned({
      components: [component('a', [step('chop', [on(5)])]), component('b', [step('chop', [on(5)])])],
      session: { ...two, pins: [{ component: 'a', step: 'chop', start: 'PT30M', person: 'ben' }] },
    });
    expect(stepOf(plan, 'a/chop')).toMatchObject({ start: 30, segments: [{ person: 'ben' }] });
  });

  test('a last clearing comes after all other work that is not putting away', () => {
    const plan = planned({
      components: [component('a', [step('chop', [on(5)])]), component('b', [step('simmer', [on(1), off(20), on(1)])])],
      session: { clearing: { work: { fixed: 'PT6M' } } },
    });
    expect(stepOf(plan, 'clearing/clear')).toMatchObject({ start: 22, end: 28, kind: 'clearing' });
  });
});

describe('amounts', () => {
  test('hands-on minutes are a fixed part and a part that grows; oven time does not halve with the food', () => {
    const roots = component('roots', [
      step('peel', [{ hands: 'on', work: { fixed: 'PT1M', perKg: 'PT6M' } }]),
      step('roast', [on(1), off(40), on(1)], [inOven(200)], { after: [{ step: 'peel' }] }),
    ]);
    const full = planned({ components: [roots] });
    const half = planned({ components: [roots], session: { dishes: [{ component: 'roots', portions: 2 }] } });
    expect(stepOf(full, 'roots/peel').end - stepOf(full, 'roots/peel').start).toBe(7);
    expect(stepOf(half, 'roots/peel').end - stepOf(half, 'roots/peel').start).toBe(4);
    expect(stepOf(half, 'roots/roast').end - stepOf(half, 'roots/roast').start).toBe(42);
  });

  test('what does not fit one tray is done in batches, at the same time where there is room', () => {
    const roots = component('roots', [step('roast', [on(2), off(40), on(2)], [inOven(200)])], {
      batches: { steps: ['roast'], mostPortions: 2 },
    });
    const plan = planned({ components: [roots] });
    const batches = plan.steps.filter((each) => each.step === 'roast');
    expect(batches.map((batch) => batch.portions)).toEqual([2, 2]);
    // Heating 20 → 200 °C takes 18 min; the second goes in right after the first.
    expect(plan.finishMinutes).toBe(18 + 44 + 2);
  });
});
