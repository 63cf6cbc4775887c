import { describe, expect, it } from 'vitest';
import { tierValues } from '../../../solver/engine/tier-values.ts';
import type { Tier } from '../../../solver/engine/problem.ts';
import { endOf, mode, problemWith, startOf, task, use } from './build-problem.ts';

const tasks = [
  {
    ...task('a', 2, [use('hands')], { group: 'soup' }),
    modes: [mode(2, [use('hands')], { cost: { fixed: 5, perMinute: 3 } })],
  },
  task('b', 2, [use('hands')], { group: 'bread' }),
  task('c', 2, [use('hands')], { group: 'soup' }),
  { id: 'd', choice: 'extra', modes: [null, mode(1)] },
];
const problem = (tier: Tier) =>
  problemWith({
    choices: [{ id: 'extra', options: ['no', 'yes'] }],
    resources: [{ id: 'hands', capacity: 1 }],
    tasks,
    tiers: [tier],
  });
const solution = {
  choices: [0],
  tasks: [{ start: 4, end: 6 }, { start: 8, end: 10 }, { start: 12, end: 14 }, null],
};

describe('tierValues', () => {
  it.each<{ name: string; given: Tier; expected: number }>([
    {
      name: 'latest is the largest point with its plus',
      given: { kind: 'latest', id: 't', terms: [{ point: endOf('a'), plus: 7 }, { point: endOf('b') }] },
      expected: 13,
    },
    {
      name: 'latest of a negated point grows as the point comes earlier',
      given: { kind: 'latest', id: 't', terms: [{ point: startOf('a'), plus: 30, minus: true }] },
      expected: 26,
    },
    {
      name: 'latest passes over absent tasks and is never negative',
      given: { kind: 'latest', id: 't', terms: [{ point: endOf('d') }, { point: endOf('a'), plus: -20 }] },
      expected: 0,
    },
    {
      name: 'waiting counts weighted minutes past the free ones, absent ends not',
      given: {
        kind: 'waiting',
        id: 't',
        terms: [
          { weight: 3, from: endOf('a'), to: startOf('c'), free: 2 },
          { weight: 1, from: 'origin', to: startOf('a'), free: 0 },
          { weight: 9, from: endOf('a'), to: startOf('b'), free: 5 },
          { weight: 9, from: endOf('d'), to: startOf('c'), free: 0 },
        ],
      },
      expected: 3 * 4 + 4,
    },
    { name: 'cost sums fixed and by the minute', given: { kind: 'cost', id: 't' }, expected: 5 + 3 * 2 },
    {
      name: 'changes counts each change of group along the resource',
      given: { kind: 'changes', id: 't', resources: ['hands'] },
      expected: 2,
    },
  ])('$name', ({ given, expected }) => {
    expect(tierValues(problem(given), solution)).toEqual([expected]);
  });
});
