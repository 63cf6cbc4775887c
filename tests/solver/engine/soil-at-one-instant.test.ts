import { describe, expect, it } from 'vitest';
import { solveByLearning } from '../../../solver/engine/learning/prove.ts';
import type { Problem, Task } from '../../../solver/engine/problem.ts';
import { solve } from '../../../solver/engine/solve.ts';
import { solveTogether } from '../../../solver/engine/together.ts';
import { bruteForce } from '../../support/brute-force.ts';

/*
 * Found by random problems. Two tasks of no length soil each other and nothing can clean between them. At one and the same
 * minute each ends no later than the other starts, which is all that soil asks; so there is a plan.
 */
function touch(id: string, leaves: string, avoids: string): Task {
  const uses = [{ resource: 'board', amount: 1, leaves: [leaves], avoids: [avoids] }];
  return { id, modes: [{ shortest: 0, longest: 0, uses }] };
}

const problem: Problem = {
  format: 'afterheat.problem',
  version: 1,
  name: 'two touches at one instant, invented',
  horizon: 1,
  choices: [],
  tasks: [touch('first', 'raw', 'wheat'), touch('second', 'wheat', 'raw')],
  resources: [{ id: 'board', capacity: 1 }],
  states: [],
  reservoirs: [],
  lags: [],
  forbidden: [],
  totals: [],
  tiers: [{ kind: 'latest', id: 'finish', terms: [{ point: { task: 'second', at: 'end' } }] }],
};

describe('two tasks of no length that soil each other', () => {
  it.each([
    { name: 'the ensemble', engine: solve },
    { name: 'learning', engine: solveByLearning },
    { name: 'both together', engine: solveTogether },
  ])('may share one minute, says $name', ({ engine }) => {
    expect(bruteForce(problem)).toMatchObject({ kind: 'optimal', values: [0] });
    expect(engine(problem, { seed: 1, effort: 100_000 })).toMatchObject({ kind: 'proven', tiers: [{ value: 0 }] });
  });
});
