import { describe, expect, it } from 'vitest';
import type { Outcome, SolveOptions } from '../../../solver/engine/outcome.ts';
import type { Problem } from '../../../solver/engine/problem.ts';
import { solve } from '../../../solver/engine/solve.ts';
import { ProblemFault } from '../../../solver/engine/validate-problem.ts';
import { verifySolution } from '../../../solver/engine/verify-solution.ts';
import { randomProblem } from '../../support/random-problem.ts';
import { after, endOf, finish, mode, problemWith, startOf, task, use, within } from './build-problem.ts';
import { kitchenLike } from './kitchen-like-problem.ts';

const effort = 20_000;
const values = (outcome: Outcome): number[] => ('tiers' in outcome ? outcome.tiers.map((tier) => tier.value) : []);
const hands = { id: 'hands', capacity: 1 };
const twoPlaces = { id: 'place', options: ['left', 'right'] };

describe('solve: the least finish of examples worked out by hand (invented numbers)', () => {
  it.each<{ name: string; given: Problem; expected: number; proven?: false }>([
    {
      name: 'one pair of hands does two jobs one after the other',
      given: problemWith({ resources: [hands], tasks: [task('a', 3, [use('hands')]), task('b', 4, [use('hands')])] }),
      expected: 7,
    },
    {
      name: 'work waits for a break of the calendar to end',
      given: problemWith({
        resources: [{ ...hands, calendar: [{ from: 2, until: 10, capacity: 0 }] }],
        tasks: [task('a', 3, [use('hands')])],
      }),
      expected: 13,
    },
    {
      name: 'a longest gap pulls the start of a chain back',
      given: problemWith({
        resources: [hands],
        tasks: [task('on', 1, [use('hands')]), task('off', 1, [use('hands')]), task('long', 10, [use('hands')])],
        lags: [after('on', 'off', 4), within('on', 'off', 6), after('long', 'off')],
      }),
      // on starts after long begins to fit its gap: long 0–10, then on 10–11, 4 minutes, off 15–16; or on first is too early.
      expected: 16,
    },
    {
      name: 'two segments with a fixed gap let other work between them',
      given: problemWith({
        resources: [hands],
        tasks: [task('on', 3, [use('hands')]), task('off', 2, [use('hands')]), task('other', 5, [use('hands')])],
        lags: [after('on', 'off', 5), within('on', 'off', 5)],
      }),
      expected: 10,
    },
    {
      name: 'a slower place is taken when the faster one is busy',
      given: problemWith({
        choices: [twoPlaces, { id: 'other', options: ['left', 'right'] }],
        resources: [
          { id: 'left', capacity: 1 },
          { id: 'right', capacity: 1 },
        ],
        tasks: [
          { id: 'a', choice: 'place', modes: [mode(6, [use('left')]), mode(9, [use('right')])] },
          { id: 'b', choice: 'other', modes: [mode(6, [use('left')]), mode(9, [use('right')])] },
        ],
      }),
      expected: 9,
    },
    {
      name: 'a forbidden conjunction bars the better pair of options',
      given: problemWith({
        choices: [
          { id: 'x', options: ['fast', 'slow'] },
          { id: 'y', options: ['fast', 'slow'] },
        ],
        tasks: [
          { id: 'a', choice: 'x', modes: [mode(2), mode(8)] },
          { id: 'b', choice: 'y', modes: [mode(2), mode(5)] },
        ],
        forbidden: [
          [
            { choice: 'x', options: [0] },
            { choice: 'y', options: [0] },
          ],
        ],
      }),
      expected: 5,
    },
    {
      name: 'a conditional lag counts only under its option',
      given: problemWith({
        choices: [twoPlaces],
        tasks: [{ id: 'a', choice: 'place', modes: [mode(2), mode(3)] }, task('b', 1)],
        lags: [after('a', 'b', 9, { if: [{ choice: 'place', options: [0] }] }), after('a', 'b', 1)],
      }),
      expected: 5,
    },
    {
      name: 'two classes of a state keep the gap of the better order',
      given: problemWith({
        states: [
          {
            id: 'heat',
            classes: ['low', 'high'],
            gap: [
              [null, 3],
              [8, null],
            ],
          },
        ],
        tasks: [
          { id: 'bake', modes: [mode(5, [], { state: { state: 'heat', class: 1 } })] },
          { id: 'dry', modes: [mode(5, [], { state: { state: 'heat', class: 0 } })] },
        ],
      }),
      expected: 13,
    },
    {
      name: 'what must stay clean goes first, without a washing',
      given: problemWith({
        resources: [{ id: 'board', capacity: 1 }],
        tasks: [
          task('nuts', 2, [use('board', 1, { leaves: ['nuts'] })]),
          task('plain', 2, [use('board', 1, { avoids: ['nuts'] })]),
        ],
      }),
      expected: 4,
    },
    {
      name: 'a washing is put in only where the order leaves no other way',
      given: problemWith({
        choices: [{ id: 'wash', options: ['no', 'yes'] }],
        resources: [{ id: 'board', capacity: 1 }],
        tasks: [
          task('nuts', 2, [use('board', 1, { leaves: ['nuts'] })]),
          task('plain', 2, [use('board', 1, { avoids: ['nuts'] })]),
          { id: 'rinse', choice: 'wash', modes: [null, mode(3, [use('board', 1, { cleans: true })])] },
        ],
        lags: [after('nuts', 'plain')],
      }),
      expected: 7,
    },
    {
      // Random problem 3785 was once called impossible: each soils the other, yet at one minute each ends before the other starts.
      name: 'two tasks of no length that soil each other share a minute',
      given: problemWith({
        resources: [{ id: 'board', capacity: 1 }],
        tasks: ['a', 'b'].map((id) => task(id, 0, [use('board', 1, { leaves: ['raw'], avoids: ['raw'] })])),
      }),
      expected: 0,
    },
    {
      name: 'a pool is not drawn from before it is filled',
      given: problemWith({
        tasks: [task('boil', 8), task('cook', 4)],
        reservoirs: [
          {
            id: 'water',
            initial: 0,
            events: [
              { point: endOf('boil'), amount: 2 },
              { point: startOf('cook'), amount: -2 },
            ],
          },
        ],
      }),
      expected: 12,
    },
    {
      name: 'a second filling is made when the first is not enough',
      given: problemWith({
        choices: [{ id: 'again', options: ['no', 'yes'] }],
        resources: [{ id: 'pot', capacity: 1 }],
        tasks: [
          task('boil', 5, [use('pot')]),
          { id: 'reboil', choice: 'again', modes: [null, mode(5, [use('pot')])] },
          task('first', 1),
          task('second', 1),
        ],
        reservoirs: [
          {
            id: 'water',
            initial: 0,
            events: [
              { point: endOf('boil'), amount: 3 },
              { point: endOf('reboil'), amount: 3 },
              { point: startOf('first'), amount: -2 },
              { point: startOf('second'), amount: -2 },
            ],
          },
        ],
      }),
      expected: 11,
    },
    {
      name: 'interruptible work is cut around what has its time',
      given: problemWith({
        choices: [{ id: 'pieces', options: ['one', 'two'] }],
        resources: [hands],
        tasks: [
          task('piece1', [3, 8], [use('hands')]),
          { id: 'piece2', choice: 'pieces', modes: [null, mode([3, 8], [use('hands')])] },
          task('pinned', 2, [use('hands')]),
        ],
        lags: [
          { from: 'origin', to: startOf('pinned'), least: 4 },
          { from: startOf('pinned'), to: 'origin', least: -4 },
        ],
        totals: [{ tasks: ['piece1', 'piece2'], total: 8 }],
      }),
      expected: 10,
    },
    {
      name: 'a place is held until a hand is free to clear it',
      given: problemWith({
        resources: [hands, { id: 'rack', capacity: 1 }],
        tasks: [
          task('load', 1, [use('hands')]),
          task('unload', 1, [use('hands')]),
          task('hold', [0, 50], [use('rack')]),
          task('next', 3, [use('rack')]),
          task('knead', 6, [use('hands')]),
        ],
        lags: [
          after('load', 'unload', 5),
          { from: startOf('hold'), to: startOf('load'), least: 0 },
          { from: startOf('load'), to: startOf('hold'), least: 0 },
          { from: endOf('unload'), to: endOf('hold'), least: 0 },
          { from: endOf('hold'), to: endOf('unload'), least: 0 },
          { from: startOf('load'), to: startOf('knead'), least: 1 },
          { from: startOf('knead'), to: startOf('load'), least: -1 },
          { from: endOf('load'), to: startOf('next'), least: 0 },
        ],
      }),
      // load 0–1, knead 1–7, unload 7–8 instead of 6–7: the rack is free at 8 only.
      expected: 11,
    },
  ])('$name', ({ given, expected }) => {
    const outcome = solve(given, { seed: 1, effort });
    expect(values(outcome)).toEqual([expected]);
    expect('solution' in outcome && verifySolution(given, outcome.solution)).toEqual([]);
  });
});

describe('solve: tiers in order of rank', () => {
  it('makes a second tier small only within the best of the first', () => {
    const tasks = [task('roast', 10), task('rest', 2), task('salad', 3, [use('hands')])];
    const problem = problemWith({
      resources: [hands],
      tasks,
      lags: [after('roast', 'rest')],
      tiers: [
        finish(tasks),
        { kind: 'waiting', id: 'waiting', terms: [{ weight: 2, from: endOf('salad'), to: endOf('rest'), free: 0 }] },
      ],
    });
    const outcome = solve(problem, { seed: 1, effort });
    expect(outcome).toMatchObject({
      kind: 'proven',
      tiers: [
        { id: 'finish', value: 12, bound: 12, proven: true },
        { id: 'waiting', value: 0, bound: 0, proven: true },
      ],
    });
  });

  it('takes the cheaper mode where the finish does not mind', () => {
    const tasks = [
      {
        id: 'a',
        choice: 'place',
        modes: [mode(3, [], { cost: { fixed: 9, perMinute: 0 } }), mode(5, [], { cost: { fixed: 0, perMinute: 1 } })],
      },
      task('b', 6),
    ];
    const problem = problemWith({ choices: [twoPlaces], tasks, tiers: [finish(tasks), { kind: 'cost', id: 'cost' }] });
    expect(solve(problem, { seed: 1, effort })).toMatchObject({
      kind: 'proven',
      tiers: [{ value: 6 }, { value: 5, bound: 5 }],
    });
  });

  it('keeps to one group at a time where that is free', () => {
    const tasks = ['soup', 'bread', 'soup', 'bread'].map((group, index) =>
      task(`t${index}`, 2, [use('hands')], { group }),
    );
    const problem = problemWith({
      resources: [hands],
      tasks,
      tiers: [finish(tasks), { kind: 'changes', id: 'calm', resources: ['hands'] }],
    });
    expect(solve(problem, { seed: 1, effort })).toMatchObject({
      kind: 'proven',
      tiers: [{ value: 8 }, { value: 1, bound: 1 }],
    });
  });

  it('starts as late as the table time lets it', () => {
    const tasks = [task('cook', 7, [use('hands')]), task('lay', 2, [use('hands')])];
    const problem = problemWith({
      resources: [hands],
      tasks,
      lags: tasks.map(({ id }) => ({ from: endOf(id), to: 'origin' as const, least: -30 })),
      tiers: [
        {
          kind: 'latest',
          id: 'latest start',
          terms: tasks.map(({ id }) => ({ point: startOf(id), plus: 30, minus: true })),
        },
      ],
    });
    expect(solve(problem, { seed: 1, effort })).toMatchObject({ kind: 'proven', tiers: [{ value: 9, bound: 9 }] });
  });

  it('calls a problem without tiers proven as soon as there is a plan', () => {
    expect(solve(problemWith({ tasks: [task('a', 1)], tiers: [] }), { seed: 1, effort }).kind).toBe('proven');
  });
});

describe('solve: how it runs', () => {
  const problem = randomProblem(3, { tasks: [40, 40], horizon: [150, 150], length: 12 });
  const options: SolveOptions = { seed: 5, effort: 60_000 };

  it('gives the same outcome twice, trace and all', () => {
    for (const seed of [3, 8, 12]) {
      const given = randomProblem(seed, { tasks: [25, 25], horizon: [120, 120], length: 10 });
      expect(solve(given, options)).toEqual(solve(given, options));
    }
  });

  it('stops at the first poll that says so, with the best plan so far', () => {
    let polls = 0;
    const outcome = solve(problem, { ...options, effort: 1e9, shouldStop: () => ++polls === 20 });
    expect(polls).toBe(20);
    expect(outcome.stopped).toBe(true);
  });

  it('spends about the effort it is given', () => {
    const { work } = solve(problem, { ...options, effort: 20_000 });
    expect(work).toBeLessThan(40_000);
  });

  it('reports values that fall and bounds that rise, each with its plan', () => {
    const rows: { value: number | null; bound: number }[] = [];
    const outcome = solve(problem, {
      ...options,
      onProgress: (row, solution) => {
        rows.push(row);
        if (solution !== null) expect(verifySolution(problem, solution)).toEqual([]);
      },
    });
    expect(rows.length).toBeGreaterThan(0);
    rows.slice(1).forEach((row, index) => {
      expect(row.value ?? Infinity).toBeLessThanOrEqual(rows[index]?.value ?? Infinity);
      expect(row.bound).toBeGreaterThanOrEqual(rows[index]?.bound ?? 0);
    });
    expect(outcome.trace).toEqual(rows);
  });

  it('is never worse than the plan it starts from, and ignores a start that is none', () => {
    const first = solve(problem, options);
    if (!('solution' in first)) throw new Error('no plan to start from');
    const again = solve(problem, { seed: 9, effort: 1, start: first.solution });
    expect(values(again)).toEqual(values(first));
    const broken = { ...first.solution, tasks: first.solution.tasks.map(() => null) };
    expect(['proven', 'bounded', 'unknown']).toContain(solve(problem, { seed: 9, effort: 100, start: broken }).kind);
  });

  it('throws for a problem that is none', () => {
    expect(() => solve(problemWith({ horizon: 0 }), options)).toThrow(ProblemFault);
  });
});

describe('solve: effort until there is a plan', () => {
  const problem = kitchenLike({ seed: 3, steps: 24, people: 2 });

  it('ends without a plan where the effort ends before the first one', () => {
    expect(solve(problem, { seed: 1, effort: 1 }).kind).toBe('unknown');
  });

  it('goes on to the first plan where more may be spent until then, and no further', () => {
    const until = solve(problem, { seed: 1, effort: 1, untilPlan: 1_000_000 });
    expect(until.kind).toBe('bounded');
    expect(until.trace.filter(({ value }) => value !== null)).toHaveLength(1);
    expect(until.work).toBeLessThan(100_000);
  });

  it('spends no more than the effort where the first plan comes within it', () => {
    const plain = solve(problem, { seed: 1, effort: 20_000 });
    expect(solve(problem, { seed: 1, effort: 20_000, untilPlan: 1_000_000 })).toEqual(plain);
  });
});
