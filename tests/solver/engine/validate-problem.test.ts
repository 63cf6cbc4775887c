import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../solver/engine/problem.ts';
import { ProblemFault, validateProblem } from '../../../solver/engine/validate-problem.ts';
import { randomProblem } from '../../support/random-problem.ts';
import { after, mode, problemWith, startOf, task, use } from './build-problem.ts';

function faultsIn(problem: Problem): string[] {
  try {
    validateProblem(problem);
    return [];
  } catch (error) {
    if (!(error instanceof ProblemFault)) throw error;
    return error.faults.map((fault) => `${fault.path}: ${fault.found}`);
  }
}

describe('validateProblem', () => {
  it('accepts problems of every feature', () => {
    for (let seed = 0; seed < 100; seed++) expect(faultsIn(randomProblem(seed))).toEqual([]);
  });

  it.each<{ name: string; given: Partial<Problem>; expected: string }>([
    { name: 'a horizon of nothing', given: { horizon: 0 }, expected: 'horizon: 0' },
    { name: 'an id given twice', given: { tasks: [task('a', 1), task('a', 2)] }, expected: "tasks[1].id: 'a' again" },
    { name: 'a negative length', given: { tasks: [task('a', [-1, 2])] }, expected: 'tasks[0].modes[0].shortest: -1' },
    {
      name: 'a longest below the shortest',
      given: { tasks: [task('a', [4, 2])] },
      expected: 'tasks[0].modes[0].longest: 2',
    },
    { name: 'a minute and a half', given: { tasks: [task('a', 1.5)] }, expected: 'tasks[0].modes[0].shortest: 1.5' },
    {
      name: 'a resource that there is not',
      given: { tasks: [task('a', 1, [use('oven')])] },
      expected: "tasks[0].modes[0].uses[0].resource: 'oven'",
    },
    {
      name: 'one mode for two options',
      given: { choices: [{ id: 'c', options: ['x', 'y'] }], tasks: [{ id: 'a', choice: 'c', modes: [mode(1)] }] },
      expected: 'tasks[0].modes: 1',
    },
    {
      name: 'a lag to nowhere',
      given: { tasks: [task('a', 1)], lags: [after('a', 'b')] },
      expected: "lags[0].to.task: 'b'",
    },
    {
      name: 'a literal beyond the options',
      given: { choices: [{ id: 'c', options: ['x'] }], forbidden: [[{ choice: 'c', options: [1] }]] },
      expected: 'forbidden[0][0].options[0]: 1',
    },
    { name: 'a conjunction of nothing', given: { forbidden: [[]] }, expected: 'forbidden[0]: an empty conjunction' },
    {
      name: 'gaps that are open one way only',
      given: {
        states: [
          {
            id: 's',
            classes: ['x', 'y'],
            gap: [
              [null, 3],
              [null, null],
            ],
          },
        ],
      },
      expected: 'states[0].gap[0][1]: 3',
    },
    {
      name: 'a calendar out of order',
      given: {
        resources: [
          {
            id: 'r',
            capacity: 1,
            calendar: [
              { from: 5, until: 9, capacity: 0 },
              { from: 8, until: 10, capacity: 0 },
            ],
          },
        ],
      },
      expected: 'resources[0].calendar[1].from: 8',
    },
    {
      name: 'lags whose sum leaves 31 bits',
      given: {
        tasks: [task('a', 1), task('b', 1)],
        lags: [1, 2].map(() => ({ from: startOf('a'), to: startOf('b'), least: 2 ** 30 })),
      },
      expected: `lags: a sum of ${2 ** 31}`,
    },
    {
      name: 'costs whose sum leaves 31 bits',
      given: {
        horizon: 1000,
        tasks: [{ id: 'a', modes: [mode([1, 1000], [], { cost: { fixed: 0, perMinute: 2 ** 22 } })] }],
        tiers: [{ kind: 'cost', id: 'cost' }],
      },
      expected: `tiers[0], costs: a sum of ${1000 * 2 ** 22}`,
    },
  ])('names $name', ({ given, expected }) => {
    expect(faultsIn(problemWith({ tiers: [], ...given }))).toContain(expected);
  });

  it('names all faults at once', () => {
    expect(faultsIn(problemWith({ horizon: -1, tasks: [task('a', [4, 2]), task('a', 1)], tiers: [] }))).toHaveLength(3);
  });
});
