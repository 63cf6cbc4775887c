import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../solver/engine/problem.ts';
import { ProblemFault, validateProblem } from '../../../solver/engine/validate-problem.ts';
import { engines } from '../../benchmarks/engines.ts';
import { bruteForce } from '../../support/brute-force.ts';
import { randomProblem } from '../../support/random-problem.ts';
import { faultsBeside } from '../../support/random-problem-reference.ts';
import { seeded, type Seeded } from '../../support/seeded.ts';
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

  it('tells a fault in a list of modes for every task that shares it', () => {
    const modes = [mode(2, [use('oven')])];
    const tasks = ['a', 'b'].map((id) => ({ id, modes }));
    expect(faultsIn(problemWith({ tasks }))).toEqual([
      "tasks[0].modes[0].uses[0].resource: 'oven'",
      "tasks[1].modes[0].uses[0].resource: 'oven'",
    ]);
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

// Each value is the least that no longer fits: every sum formed in 32 bits must stay below 2^31.
describe('numbers beyond 31 bits', () => {
  const point = startOf('a');
  const over = 2 ** 31;
  const tasks = [task('a', 1), task('b', 1)];
  it.each<{ name: string; given: Partial<Problem>; path: string }>([
    { name: 'a horizon', given: { horizon: 100_001 }, path: 'horizon' },
    { name: 'a length', given: { tasks: [task('a', over)] }, path: 'tasks[0].modes[0].shortest' },
    {
      name: 'lengths together',
      given: { tasks: [task('a', 2 ** 30), task('b', 2 ** 30)] },
      path: 'tasks, shortest',
    },
    { name: 'a lag', given: { tasks, lags: [{ from: point, to: 'origin', least: -over }] }, path: 'lags[0].least' },
    { name: 'a capacity', given: { tasks, resources: [{ id: 'r', capacity: over }] }, path: 'resources[0].capacity' },
    {
      name: 'a capacity in a calendar',
      given: { tasks, resources: [{ id: 'r', capacity: 1, calendar: [{ from: 0, until: 9, capacity: over }] }] },
      path: 'resources[0].calendar[0].capacity',
    },
    {
      name: 'amounts together',
      given: {
        resources: [{ id: 'r', capacity: 1 }],
        tasks: [task('a', 1, [use('r', 2 ** 30)]), task('b', 1, [use('r', 2 ** 30)])],
      },
      path: 'resources[0], amounts',
    },
    {
      name: 'amounts of one task together',
      given: { resources: [{ id: 'r', capacity: 1 }], tasks: [task('a', 1, [use('r', 2 ** 30), use('r', 2 ** 30)])] },
      path: 'resources[0], amounts',
    },
    {
      name: 'levels of a reservoir',
      given: {
        tasks,
        reservoirs: [{ id: 'v', initial: 2 ** 30, events: [{ point: { task: 'a', at: 'start' }, amount: 2 ** 30 }] }],
      },
      path: 'reservoirs[0], amounts',
    },
    {
      name: 'a gap between states',
      given: {
        tasks,
        states: [
          {
            id: 's',
            classes: ['x', 'y'],
            gap: [
              [null, over],
              [over, null],
            ],
          },
        ],
      },
      path: 'states[0].gap[0][1]',
    },
    {
      name: 'a total',
      given: { tasks, totals: [{ tasks: ['a'], total: over }] },
      path: 'totals[0].total',
    },
    {
      name: 'weighted waiting',
      given: {
        tasks,
        tiers: [{ kind: 'waiting', id: 'w', terms: [{ weight: 2 ** 26, from: point, to: startOf('b'), free: 0 }] }],
      },
      path: 'tiers[0], weights',
    },
    {
      name: 'what is added to a finish',
      given: { tasks, tiers: [{ kind: 'latest', id: 'f', terms: [{ point: startOf('a'), plus: over - 50 }] }] },
      path: 'tiers[0].terms[0].plus',
    },
    {
      name: 'what is no number',
      given: { tasks: [task('a', Number.NaN)] },
      path: 'tasks[0].modes[0].shortest',
    },
    {
      name: 'what has no end',
      given: { tasks: [task('a', [1, Number.POSITIVE_INFINITY])] },
      path: 'tasks[0].modes[0].longest',
    },
  ])('are told before search: $name', ({ given, path }) => {
    const problem = problemWith({ tiers: [], ...given });
    expect(faultsIn(problem).map((fault) => fault.split(': ')[0])).toContain(path);
    for (const engine of Object.values(engines))
      expect(() => engine(problem, { seed: 1, effort: 1_000 })).toThrow(ProblemFault);
  });
});

// Where no fault is found there must be no overflow either: the largest numbers that are let through, each met with complete enumeration.
describe('numbers just within 31 bits', () => {
  const large = 2 ** 29;
  const change = (problem: Problem, chance: Seeded): Problem => {
    const big = <T>(value: T, least: number): T | number => (chance.chance(0.25) ? least : value);
    return {
      ...problem,
      tasks: problem.tasks.map((each) => ({
        ...each,
        modes: each.modes.map((m) => m && { ...m, longest: big(m.longest, large) }),
      })),
      resources: problem.resources.map((resource) => ({ ...resource, capacity: big(resource.capacity, 2 ** 31 - 1) })),
      states: problem.states.map((state) => ({
        ...state,
        gap: state.gap.map((row) => row.map((gap) => (gap === null ? null : big(gap, 2 ** 30)))),
      })),
      lags: problem.lags.map((lag, index) => ({ ...lag, least: index === 0 ? -large : big(lag.least, -large / 16) })),
      reservoirs: problem.reservoirs.map((reservoir) => ({
        ...reservoir,
        ...(reservoir.capacity === undefined ? {} : { capacity: big(reservoir.capacity, 2 ** 31 - 1) }),
        events: reservoir.events.map((event) => ({ ...event, amount: big(event.amount, large / 4) })),
      })),
    };
  };

  it('give no other answers than complete enumeration', () => {
    let optimal = 0;
    for (let seed = 85_000; seed < 85_080; seed++) {
      const problem = change(randomProblem(seed, { tasks: [2, 4], horizon: [4, 8], length: 4 }), seeded(seed));
      if (faultsIn(problem).length > 0) continue;
      const truth = bruteForce(problem);
      if (truth.kind === 'unfinished') continue;
      if (truth.kind === 'optimal') optimal++;
      for (const [name, engine] of Object.entries(engines)) {
        const outcome = engine(problem, { seed: 1, effort: name === 'learning' ? 200_000 : 5_000 });
        expect(faultsBeside(problem, outcome, truth), `${name}, problem ${seed}`).toEqual([]);
      }
    }
    expect(optimal).toBeGreaterThan(20);
  });
});
