import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { ModeEvolution } from '../../../../solver/engine/project/mode-evolve.ts';
import { asModeProject } from '../../../../solver/engine/project/mode-project.ts';
import { EvolutionTurns } from '../../../../solver/engine/project/turns.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';
import { Random } from '../../../../solver/engine/random.ts';
import { tierValues } from '../../../../solver/engine/tier-values.ts';
import { verifySolution } from '../../../../solver/engine/verify-solution.ts';
import { bruteForce } from '../../../support/brute-force.ts';
import { multiModeProjects } from '../../../support/multi-mode-projects.ts';
import { after, endOf, mode, problemWith, startOf, task, use, within } from '../build-problem.ts';

describe('a multi-mode project', () => {
  const choices = [{ id: 'how', options: ['soon', 'thrifty'] }];
  const twoWays = { id: 'a', choice: 'how', modes: [mode(1, [use('r')]), mode(3)] };
  const tasks = [twoWays, task('b', 2, [use('r')])];
  const resources = [{ id: 'r', capacity: 1 }];
  const draw = (amount: number, ...options: number[]): Problem['reservoirs'][number]['events'][number] => ({
    point: startOf('a'),
    amount,
    if: [{ choice: 'how', options }],
  });
  const stock = { id: 'n', initial: 3, events: [draw(-2, 0)] };
  const base = { choices, tasks, resources, reservoirs: [stock], lags: [after('a', 'b', 2)] };

  it('is known by its own choices of modes, fixed lengths, shortest lags, capacities and stocks', () => {
    expect(asModeProject(problemWith(base))).not.toBeNull();
  });

  it.each<{ name: string; given: Partial<Problem> }>([
    { name: 'without a choice', given: { choices: [], tasks: [task('a', 1)], reservoirs: [], lags: [] } },
    { name: 'with a longest lag', given: { lags: [within('a', 'b', 4)] } },
    { name: 'with a lag to an end', given: { lags: [{ from: startOf('a'), to: endOf('b'), least: 1 }] } },
    {
      name: 'with a lag that hangs on a choice',
      given: { lags: [after('a', 'b', 0, { if: [{ choice: 'how', options: [0] }] })] },
    },
    { name: 'with lags in a circle', given: { lags: [after('a', 'b'), after('b', 'a')] } },
    { name: 'with a flexible length', given: { tasks: [{ ...twoWays, modes: [mode([1, 2]), mode(3)] }, tasks[1]!] } },
    { name: 'with an optional task', given: { tasks: [{ ...twoWays, modes: [mode(1), null] }, tasks[1]!] } },
    { name: 'with one choice for two tasks', given: { tasks: [twoWays, { ...twoWays, id: 'b' }] } },
    { name: 'with a stock that is filled', given: { reservoirs: [{ ...stock, events: [draw(-2, 0), draw(1, 1)] }] } },
    { name: 'with a stock above its capacity', given: { reservoirs: [{ ...stock, capacity: 2 }] } },
    { name: 'with a total', given: { totals: [{ tasks: ['b'], total: 2 }] } },
    { name: 'with a forbidden option', given: { forbidden: [[{ choice: 'how', options: [0] }]] } },
    { name: 'with a second tier', given: { tiers: [...problemWith({ tasks }).tiers, { kind: 'cost', id: 'cost' }] } },
  ])('is not one $name', ({ given }) => {
    expect(asModeProject(problemWith({ ...base, ...given }))).toBeNull();
  });

  it('draws on a stock by another task’s choice are not its own', () => {
    const events = [{ ...draw(-2, 0), point: startOf('b') }];
    expect(asModeProject(problemWith({ ...base, reservoirs: [{ ...stock, events }] }))).toBeNull();
  });

  it('takes the thrifty way of one task where the stock reaches for one only (invented)', () => {
    const of = (id: string): Problem['tasks'][number] => ({ id, choice: `of-${id}`, modes: [mode(1), mode(4)] });
    const problem = problemWith({
      choices: ['a', 'b'].map((id) => ({ id: `of-${id}`, options: ['soon', 'thrifty'] })),
      tasks: [of('a'), of('b'), task('c', 3)],
      lags: [after('a', 'c')],
      reservoirs: [
        {
          id: 'n',
          initial: 2,
          events: ['a', 'b'].map((id) => ({
            point: startOf(id),
            amount: -2,
            if: [{ choice: `of-${id}`, options: [0] }],
          })),
        },
      ],
    });
    const evolution = new ModeEvolution(asModeProject(problem)!, new Random(1));
    for (let step = 0; step < 50; step++) evolution.step();
    // a soon (1) and c (3) end at 4, as does b in its thrifty 4.
    expect(evolution.best).toBe(4);
    expect(evolution.solution().choices).toEqual([0, 1]);
  });
});

describe('the evolution of multi-mode projects', () => {
  test('gives plans that keep every promise, never better than complete enumeration, and nearly always as good', () => {
    let compared = 0;
    let equal = 0;
    fc.assert(
      fc.property(multiModeProjects({ tasks: 4, modes: 2, length: 3, horizon: 12 }), (problem) => {
        const project = asModeProject(problem)!;
        const evolution = new ModeEvolution(project, new Random(7));
        for (let step = 0; step < 200; step++) evolution.step();
        const known = bruteForce(problem);
        if (known.kind === 'unfinished') return;
        if (evolution.best < Infinity) {
          expect(verifySolution(problem, evolution.solution())).toEqual([]);
          expect(tierValues(problem, evolution.solution())).toEqual([evolution.best]);
        }
        if (known.kind === 'infeasible') {
          expect(evolution.best).toBe(Infinity);
          return;
        }
        compared++;
        expect(evolution.best).toBeGreaterThanOrEqual(known.values[0]!);
        if (evolution.best === known.values[0]) equal++;
      }),
      { seed: 11, numRuns: 120 },
    );
    expect(compared).toBeGreaterThan(50);
    expect(equal).toBeGreaterThan(0.97 * compared);
  });

  test('goes on in its next turn where it stopped, and tells only plans better than those known', () => {
    const problems = fc.sample(multiModeProjects({ tasks: 30, fewest: 30, modes: 3, length: 6, horizon: 250 }), {
      seed: 3,
      numRuns: 20,
    });
    const told = (problem: Problem, turns: readonly number[]): readonly number[] => {
      const values: number[] = [];
      const evolution = EvolutionTurns.ofModes(problem, 5)!;
      for (const effort of turns)
        evolution.take(values.at(-1) ?? Infinity, {
          effort,
          enough: 0,
          shouldStop: () => false,
          onBetter: (solution, value) => {
            expect(tierValues(problem, solution)).toEqual([value]);
            values.push(value);
          },
        });
      return values;
    };
    let planned = 0;
    for (const problem of problems) {
      const whole = told(problem, [2000]);
      expect(whole).toEqual([...new Set(whole)].sort((a, b) => b - a));
      expect(told(problem, [300, 300, 2000]).slice(0, whole.length)).toEqual(whole);
      if (whole.length > 0) planned++;
    }
    expect(planned).toBeGreaterThan(2);
  });
});
