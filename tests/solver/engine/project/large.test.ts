import { describe, expect, it } from 'vitest';
import { isLargeProject, LARGE } from '../../../../solver/engine/project/large.ts';
import { EvolutionTurns } from '../../../../solver/engine/project/turns.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';
import { tierValues } from '../../../../solver/engine/tier-values.ts';
import { solveTogether } from '../../../../solver/engine/together.ts';
import { verifySolution } from '../../../../solver/engine/verify-solution.ts';
import { after, finish, problemWith, task, use, within } from '../build-problem.ts';

/** Invented: four chains of tasks of one to six minutes that share two resources. */
const count = LARGE + 4;
const tasks = Array.from({ length: count }, (_, k) =>
  task(`t${k}`, 1 + ((k * 7) % 6), [use('r', 1 + (k % 3)), use('s', 1 + ((k * 5) % 4))]),
);
const parts = {
  horizon: 6 * count,
  tasks,
  resources: [
    { id: 'r', capacity: 5 },
    { id: 's', capacity: 6 },
  ],
  lags: Array.from({ length: count - 4 }, (_, k) => after(`t${k}`, `t${k + 4}`)),
};

describe('a large project', () => {
  it('has many tasks that share resources under shortest lags', () => {
    expect(isLargeProject(problemWith(parts))).toBe(true);
  });

  it.each<{ name: string; given: Partial<Problem> }>([
    { name: 'few tasks', given: { tasks: tasks.slice(0, LARGE), lags: [] } },
    { name: 'resources for one task at a time alone', given: { resources: [{ id: 'r', capacity: 1 }] } },
    { name: 'a longest lag', given: { lags: [within('t0', 't1', 4)] } },
    { name: 'a flexible length', given: { tasks: [...tasks, task('t', [1, 3])] } },
    { name: 'two tiers', given: { tiers: [finish(tasks), { ...finish(tasks), id: 'again' }] } },
  ])('is not one with $name', ({ given }) => {
    expect(isLargeProject(problemWith({ ...parts, ...given }))).toBe(false);
  });

  it('gets plans that keep every promise, each better than the one before, the same for the same seed', () => {
    const problem = problemWith(parts);
    const values: number[] = [];
    const solved = (): ReturnType<typeof solveTogether> =>
      solveTogether(problem, {
        seed: 3,
        effort: 450_000,
        onProgress: ({ value }, solution) => {
          expect(verifySolution(problem, solution!)).toEqual([]);
          expect(tierValues(problem, solution!)[0]).toBe(value);
          values.push(value!);
        },
      });
    const once = solved();
    expect(values).toEqual([...values].sort((a, b) => b - a));
    expect(solved()).toEqual(once);
  });

  it('has an evolution that goes on in its next turn where it stopped', () => {
    const problem = problemWith(parts);
    const told = (turns: readonly number[]): readonly number[] => {
      const values: number[] = [];
      const evolution = EvolutionTurns.ofPlain(problem, 5)!;
      for (const effort of turns)
        evolution.take(values.at(-1) ?? Infinity, {
          effort,
          enough: 0,
          shouldStop: () => false,
          onBetter: (_, value) => values.push(value),
        });
      return values;
    };
    const whole = told([20_000]);
    expect(whole.length).toBeGreaterThan(1);
    expect(told([3000, 3000, 20_000]).slice(0, whole.length)).toEqual(whole);
  });
});
