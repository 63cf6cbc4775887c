import { describe, expect, test } from 'vitest';
import { amountWords, bestSoFarWords, standsOf, standsWhile } from '../../../renderer/places/tier-words.ts';
import type { PlanTier, TierId } from '../../../solver/kitchen/plan.ts';

// Invented figures throughout.
const UNITS = {
  finish: 'min',
  'latest-start': 'min',
  'others-finish': 'min',
  waiting: 'weighted min',
  energy: 'Wh',
  calm: 'changes',
} as const;
const tier = (id: TierId, value: number, bound: number, proven = false): PlanTier => ({
  id,
  unit: UNITS[id],
  value,
  bound,
  proven,
});

test.each([
  { given: tier('finish', 0, 0), amount: 70, words: '1 h 10 min' },
  { given: tier('waiting', 0, 0), amount: 12, words: '12 weighted min' },
  { given: tier('energy', 0, 0), amount: 40, words: '40 Wh' },
  { given: tier('energy', 0, 0), amount: 2887, words: '2.9 kWh' },
  { given: tier('calm', 0, 0), amount: 1, words: '1 change' },
])('an amount of $given.id is $words', ({ given, amount, words }) => {
  expect(amountWords(given, amount)).toBe(words);
});

describe('the best so far, in words', () => {
  test.each([
    {
      name: 'a finish with a bound',
      tiers: [tier('finish', 95, 60)],
      now: 'finish',
      words: 'Best so far: 1 h 35 min to the finish; at most 35 min better is possible.',
    },
    {
      name: 'a finish without one',
      tiers: [tier('finish', 95, 0)],
      now: 'finish',
      words: 'Best so far: 1 h 35 min to the finish; how much better is possible is not known yet.',
    },
    {
      name: 'a proven finish, and the tier after it',
      tiers: [tier('finish', 95, 95, true), tier('energy', 2900, 2600)],
      now: 'energy',
      words:
        'Best so far: 1 h 35 min to the finish; proven, no valid plan does better. Now proving energy: 2.9 kWh, at most 0.3 kWh better is possible.',
    },
    {
      name: 'a table time',
      tiers: [tier('latest-start', 125, 120)],
      now: 'latest-start',
      words: 'Best so far: first hand 2 h 5 min before the table; at most 5 min better is possible.',
    },
    {
      name: 'food first',
      tiers: [tier('waiting', 0, 0, true), tier('finish', 95, 90)],
      now: 'finish',
      words:
        'Best so far: no food waits past its best; proven, no valid plan does better. Now proving finish: 1 h 35 min to the finish, at most 5 min better is possible.',
    },
  ] as const)('$name', ({ tiers, now, words }) => {
    expect(bestSoFarWords(tiers, now)).toBe(words);
  });
});

describe('how the tiers stand', () => {
  const tiers = [tier('finish', 95, 95, true), tier('waiting', 4, 2), tier('energy', 2900, 0), tier('calm', 9, 9)];

  test('while the second is being proven, those after it are next', () => {
    expect(standsWhile(tiers, 'waiting').map(({ stand }) => stand)).toEqual(['proven', 'now', 'next', 'next']);
  });

  test('a tier that was passed over is bounded, not next', () => {
    const [, second, third] = standsWhile(tiers, 'energy');
    expect([second!.words, third!.words]).toEqual(['within 2 weighted min of the best possible', 'being proven']);
  });

  test('of a plan that was stopped, what is proven and what is bounded, and under what', () => {
    expect(standsOf(tiers).map(({ name, words }) => `${name}: ${words}`)).toEqual([
      'finish: proven',
      'food waiting: within 2 weighted min of the best possible',
      'energy: not bounded yet',
      'calm: as good as can be, given those above',
    ]);
  });
});
