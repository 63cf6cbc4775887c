import { describe, expect, test } from 'vitest';
import type { Plan, PlanTier } from '../../../solver/kitchen/plan.ts';
import { minutesWords } from '../../../renderer/chart/layout/wall-clock.ts';
import { differenceWords, figuresOf, provenWords } from '../../../renderer/places/figures.ts';
import { firstRequest, optionsFor, otherRequest } from '../../../renderer/places/picks.ts';
import { session, supper } from '../../support/supper.ts';

const tier = (change: Partial<PlanTier>): PlanTier => ({
  id: 'finish',
  unit: 'min',
  value: 66,
  bound: 60,
  proven: false,
  ...change,
});
const withTier = (change: Partial<PlanTier>, plan: Partial<Plan> = {}): Plan => ({
  ...supper,
  ...plan,
  tiers: [tier(change)],
});

describe('what is proved is said honestly', () => {
  test.each([
    {
      name: 'proven',
      plan: withTier({ bound: 66, proven: true }),
      words: 'Proven shortest: no valid plan does better.',
    },
    {
      name: 'proven latest start',
      plan: withTier({ id: 'latest-start', proven: true }),
      words: 'Proven latest start: no valid plan does better.',
    },
    { name: 'bounded', plan: withTier({}), words: 'Within 6 min of the best possible.' },
    {
      name: 'bounded, out of effort',
      plan: withTier({}, { stopped: true }),
      words: 'Within 6 min of the best possible. More effort may do better.',
    },
    {
      name: 'no bound',
      plan: withTier({ bound: 0 }),
      words: 'A valid plan; how near it is to the best possible is not known yet.',
    },
    {
      name: 'another tier first is told in what it counts',
      plan: withTier({ id: 'energy', unit: 'Wh', value: 3200, bound: 2900 }),
      words: 'Within 0.3 kWh of the best possible.',
    },
    {
      name: 'a proven tier other than the finish is not called shortest',
      plan: withTier({ id: 'waiting', unit: 'weighted min', value: 0, bound: 0, proven: true }),
      words: 'Proven freshest: no valid plan does better.',
    },
  ])('$name', ({ plan, words }) => {
    expect(provenWords(plan)).toBe(words);
  });
});

describe('figures', () => {
  test('come in one strip; energy only where it was counted', () => {
    expect(figuresOf(supper).map((figure) => [figure.label, figure.words])).toEqual([
      ['finish', '11:06'],
      ['start to finish', '1 h 6 min'],
      ['hands-on', minutesWords(supper.handsOnMinutes)],
      ['all away', '11:17'],
    ]);
    const energy = figuresOf(withTier({ id: 'energy', unit: 'Wh', value: 3200 })).at(-1)!;
    expect(energy.words).toBe('about 3.20 kWh');
  });

  test('have the energy of the account once it is known, in place of the planner’s own', () => {
    const plan = withTier({ id: 'energy', unit: 'Wh', value: 3200 });
    expect(figuresOf(plan, 3314).at(-1)).toMatchObject({ id: 'energy', words: '3.31 kWh' });
    expect(figuresOf(supper, 3314).at(-1)).toMatchObject({ id: 'energy', words: '3.31 kWh' });
  });

  test('differ by as much as those shown do', () => {
    const [one, other] = [figuresOf(supper, 2296).at(-1)!, figuresOf(supper, 2114).at(-1)!];
    expect([one.words, other.words, differenceWords(one, other)]).toEqual(['2.30 kWh', '2.11 kWh', '0.19 kWh less']);
  });

  test('towards a table time they count from the first hand', () => {
    const roast = withTier(
      { id: 'latest-start' },
      { steps: supper.steps.filter((step) => step.start >= 10), finishMinutes: 66 },
    );
    expect(
      figuresOf(roast)
        .slice(0, 3)
        .map((figure) => [figure.label, figure.words]),
    ).toEqual([
      ['finish', '11:06'],
      ['first hand', '10:10'],
      ['first hand to finish', '56 min'],
    ]);
    const [, first] = figuresOf(roast);
    expect(differenceWords(first!, { ...first!, number: -15 })).toBe('5 min later');
  });

  test.each([
    { id: 0, other: 60, words: '6 min sooner' },
    { id: 0, other: 70, words: '4 min later' },
    { id: 1, other: 60, words: '6 min less' },
    { id: 1, other: 66, words: 'the same' },
  ])('a difference is said in words: $words', ({ id, other, words }) => {
    const figure = figuresOf(supper)[id]!;
    expect(differenceWords(figure, { ...figure, number: other })).toBe(words);
  });
});

describe('picks', () => {
  const crews = [
    { id: 'one', name: 'Ada alone', people: ['ada'] },
    { id: 'two', name: 'both', people: ['ada', 'bo'] },
  ];

  test('begin with the session as it stands', () => {
    expect(firstRequest({ ...session, crews })).toEqual({
      session: 'supper',
      kitchen: 'small-kitchen',
      crew: 'one',
      intent: 'soonest',
    });
    expect(firstRequest(session)).not.toHaveProperty('crew');
  });

  test('compare with another kitchen, else another crew, else another intent', () => {
    const request = firstRequest({ ...session, crews });
    expect(otherRequest({ ...session, kitchens: ['small-kitchen', 'big'], crews }, request).kitchen).toBe('big');
    expect(otherRequest({ ...session, crews }, request).crew).toBe('two');
    expect(otherRequest(session, firstRequest(session)).intent).toBe('thriftiest');
  });

  test('name kitchens as their documents do, and rule out those with faults', () => {
    const entry = { kind: 'kitchen', file: 'x', demo: false } as const;
    const fault = { document: 'x', path: '', found: 'a', wanted: 'b', mend: 'c' };
    const options = optionsFor({ ...session, kitchens: ['a', 'b', 'c'] }, [
      { ...entry, id: 'a', name: 'Kitchen A', faults: [] },
      { ...entry, id: 'b', name: 'Kitchen B', faults: [fault] },
    ]);
    expect(options.kitchens).toEqual([
      { value: 'a', name: 'Kitchen A', disabled: false },
      { value: 'b', name: 'Kitchen B', disabled: true },
      { value: 'c', name: 'c', disabled: false },
    ]);
  });

  test('offer the strictest safety rules, the user’s own and the built-in ones; the session’s hold until another is picked', () => {
    const own = {
      file: 'x',
      demo: false,
      kind: 'safety-rules',
      id: 'canteen',
      name: 'our canteen',
      faults: [],
    } as const;
    const options = optionsFor(session, [own]);
    expect(options.authorities.map(({ value }) => value)).toEqual([
      'strictest',
      'canteen',
      'united-kingdom',
      'united-states',
    ]);
    expect(options.authority).toBe('strictest');
    expect(optionsFor({ ...session, authority: 'canteen' }, [own]).authority).toBe('canteen');
  });
});
