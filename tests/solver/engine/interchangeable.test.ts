import { describe, expect, it } from 'vitest';
import { loosen } from '../../../solver/engine/interchangeable.ts';
import { solve } from '../../../solver/engine/solve.ts';
import { verifySolution } from '../../../solver/engine/verify-solution.ts';
import { after, mode, problemWith, task, use } from './build-problem.ts';

/** Two washings of one board, numbered: the second only with the first and after it. */
const washings = ['wash.1', 'wash.2'].map((id) => ({
  id,
  choice: id,
  modes: [null, mode(1, [use('board', 1, { cleans: true })])],
}));
const problem = problemWith({
  choices: washings.map(({ id }) => ({ id, options: ['no', 'yes'] })),
  resources: [{ id: 'board', capacity: 1 }],
  tasks: [
    task('nuts', 2, [use('board', 1, { leaves: ['nuts'] })]),
    task('plain', 2, [use('board', 1, { avoids: ['nuts'] })]),
    ...washings,
  ],
  lags: [after('nuts', 'plain'), after('wash.1', 'wash.2')],
  forbidden: [
    [
      { choice: 'wash.1', options: [0] },
      { choice: 'wash.2', options: [1] },
    ],
  ],
});

describe('tasks that can stand in for each other', () => {
  it('lose the lags and conjunctions that only number them', () => {
    const { problem: loose } = loosen(problem);
    expect(loose.lags).toEqual([after('nuts', 'plain')]);
    expect(loose.forbidden).toEqual([]);
  });

  it('are numbered again in order of time', () => {
    const { renumber } = loosen(problem);
    const solution = {
      choices: [0, 1],
      tasks: [{ start: 0, end: 2 }, { start: 3, end: 5 }, null, { start: 2, end: 3 }],
    };
    const numbered = renumber(solution);
    expect(numbered).toEqual({
      choices: [1, 0],
      tasks: [{ start: 0, end: 2 }, { start: 3, end: 5 }, { start: 2, end: 3 }, null],
    });
    expect(verifySolution(problem, solution)).not.toEqual([]);
    expect(verifySolution(problem, numbered)).toEqual([]);
  });

  it.each([
    {
      name: 'another lag names one of them',
      given: { ...problem, lags: [...problem.lags, after('plain', 'wash.2', 1)] },
    },
    {
      name: 'a literal elsewhere names one of their choices',
      given: {
        ...problem,
        lags: [...problem.lags, after('nuts', 'plain', 1, { if: [{ choice: 'wash.1', options: [1] }] })],
      },
    },
    {
      name: 'their modes differ',
      given: {
        ...problem,
        tasks: problem.tasks.map((each) =>
          each.id === 'wash.2' ? { ...each, modes: [null, mode(2, [use('board', 1, { cleans: true })])] } : each,
        ),
      },
    },
  ])('stay as they are where $name', ({ given }) => {
    expect(loosen(given).problem).toBe(given);
  });

  it('come back in order from a solve', () => {
    const outcome = solve(problem, { seed: 1, effort: 10_000 });
    expect(outcome).toMatchObject({ kind: 'proven', solution: { choices: [1, 0] }, tiers: [{ value: 5 }] });
  });
});
