import { describe, expect, it } from 'vitest';
import { OPEN } from '../../../../solver/engine/replan/asked.ts';
import { settle } from '../../../../solver/engine/replan/settled.ts';
import type { Problem, Use } from '../../../../solver/engine/problem.ts';

/** One pair of hands; minutes and soil invented. */
const task = (id: string, minutes: number, use: Partial<Use>): Problem['tasks'][number] => ({
  id,
  modes: [{ shortest: minutes, longest: minutes, uses: [{ resource: 'ada', amount: 1, ...use }] }],
});

function settledAvoids(
  tasks: Problem['tasks'],
  times: readonly (readonly [start: number, end: number])[],
  now: number,
): readonly (readonly string[] | undefined)[] {
  const problem: Problem = {
    format: 'afterheat.problem',
    version: 1,
    name: 'invented',
    horizon: 100,
    choices: [],
    tasks,
    resources: [{ id: 'ada', capacity: 1 }],
    states: [],
    reservoirs: [],
    lags: [],
    forbidden: [],
    totals: [],
    tiers: [],
  };
  const facts = new Int32Array(1 + 2 * tasks.length).fill(OPEN);
  times.forEach(([start, end], index) => {
    if (start < now) facts[1 + 2 * index] = start;
    if (end < now) facts[2 + 2 * index] = end;
  });
  const old = { choices: [], tasks: times.map(([start, end]) => ({ start, end })) };
  return settle({ problem, old, facts, now }).problem.tasks.map(({ modes }) => modes[0]!.uses[0]!.avoids);
}

describe('work under way that has met soil', () => {
  const beans = task('beans', 10, { avoids: ['gluten', 'raw'] });

  it('no longer avoids what was on the hands as it began, and still avoids all else', () => {
    const bread = task('bread', 3, { leaves: ['gluten'] });
    expect(
      settledAvoids(
        [bread, beans],
        [
          [0, 3],
          [5, 15],
        ],
        8,
      )[1],
    ).toEqual(['raw']);
  });

  it('no longer avoids what came to the hands since it began', () => {
    const bread = task('bread', 2, { leaves: ['gluten'] });
    expect(
      settledAvoids(
        [bread, beans],
        [
          [6, 8],
          [5, 15],
        ],
        9,
      )[1],
    ).toEqual(['raw']);
  });

  it('avoids all that it did where the hands were washed between, or the soil is still to come', () => {
    const bread = task('bread', 3, { leaves: ['gluten'] });
    const wash = task('wash', 1, { cleans: true });
    expect(
      settledAvoids(
        [bread, beans, wash],
        [
          [0, 3],
          [5, 15],
          [3, 4],
        ],
        8,
      )[1],
    ).toEqual(['gluten', 'raw']);
    expect(
      settledAvoids(
        [bread, beans],
        [
          [20, 23],
          [5, 15],
        ],
        8,
      )[1],
    ).toEqual(['gluten', 'raw']);
  });
});
