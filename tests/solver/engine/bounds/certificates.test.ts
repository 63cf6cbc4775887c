import { describe, expect, it } from 'vitest';
import type { Clash } from '../../../../solver/engine/outcome.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';
import { solve } from '../../../../solver/engine/solve.ts';
import { bruteForce } from '../../../support/brute-force.ts';
import { randomProblem, tinyShape } from '../../../support/random-problem.ts';
import { after, endOf, mode, problemWith, task, use, within } from '../build-problem.ts';

const clashOf = (problem: Problem): Clash | null => {
  const outcome = solve(problem, { seed: 1, effort: 5_000 });
  return outcome.kind === 'impossible' ? outcome.clash : null;
};

describe('what makes a plan impossible', () => {
  it.each<{ name: string; given: Problem; expected: Partial<Clash> }>([
    {
      name: 'gaps that ask for more than they give, by the names of the requirements',
      given: problemWith({
        tasks: [task('soak', 5), task('fry', 3)],
        lags: [
          after('soak', 'fry', 10, { requirement: 'drain well' }),
          within('soak', 'fry', 6, { requirement: 'fry while warm' }),
        ],
      }),
      expected: {
        kind: 'cycle',
        reason: 'the gaps around soak, fry ask for 4 minutes more than they give',
        requirements: ['drain well', 'fry while warm'],
      },
    },
    {
      name: 'a chain longer than the horizon',
      given: problemWith({ horizon: 20, tasks: [task('a', 12), task('b', 9)], lags: [after('a', 'b')] }),
      expected: { kind: 'horizon', reason: 'the chain over a, b needs 21 minutes of 20', tasks: ['a', 'b'] },
    },
    {
      name: 'a deadline before the work can be done',
      given: problemWith({
        tasks: [task('a', 12)],
        lags: [{ from: endOf('a'), to: 'origin', least: -10, requirement: 'on the table' }],
      }),
      expected: { kind: 'cycle', requirements: ['on the table'] },
    },
    {
      name: 'a demand over capacity in every mode',
      given: problemWith({
        choices: [{ id: 'c', options: ['x', 'y'] }],
        resources: [
          { id: 'x', capacity: 1 },
          { id: 'y', capacity: 2, calendar: [{ from: 5, until: 50, capacity: 0 }] },
        ],
        tasks: [{ id: 'a', choice: 'c', modes: [mode(2, [use('x', 2)]), mode(6, [use('y', 2)])] }],
      }),
      expected: {
        kind: 'capacity',
        tasks: ['a'],
        reason: 'task a fits in no mode; the last asks for 2 of y for 6 minutes',
      },
    },
    {
      name: 'more work than there are hands all session',
      given: problemWith({
        horizon: 10,
        resources: [{ id: 'hands', capacity: 1 }],
        tasks: [task('a', 6, [use('hands')]), task('b', 6, [use('hands')])],
      }),
      expected: { kind: 'capacity', reason: 'a, b together need more of hands than there is' },
    },
  ])('names $name', ({ given, expected }) => {
    expect(clashOf(given)).toMatchObject(expected);
  });

  it('is not called out for a task of no length, whatever it uses', () => {
    const given = problemWith({ resources: [{ id: 'r', capacity: 1 }], tasks: [task('a', 0, [use('r', 5)])] });
    expect(clashOf(given)).toBeNull();
  });

  it('is never said of a problem that complete enumeration solves', () => {
    let impossible = 0;
    for (let seed = 0; seed < 400; seed++) {
      const problem = randomProblem(seed, tinyShape);
      if (clashOf(problem) === null) continue;
      impossible++;
      expect(bruteForce(problem).kind, `problem ${seed}`).toBe('infeasible');
    }
    expect(impossible).toBeGreaterThan(20);
  });
});
