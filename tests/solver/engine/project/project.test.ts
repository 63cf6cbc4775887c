import { describe, expect, it } from 'vitest';
import { compileProblem } from '../../../../solver/engine/compile-problem.ts';
import { Evolution } from '../../../../solver/engine/project/evolve.ts';
import { asPlainProject, type PlainProject } from '../../../../solver/engine/project/plain-project.ts';
import { ProjectSchedule } from '../../../../solver/engine/project/schedule.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';
import { Random } from '../../../../solver/engine/random.ts';
import { planOfStarts, solutionOf } from '../../../../solver/engine/search/plan.ts';
import { verifySolution } from '../../../../solver/engine/verify-solution.ts';
import { bruteForce } from '../../../support/brute-force.ts';
import { randomProblem } from '../../../support/random-problem.ts';
import { after, mode, problemWith, task, use, within } from '../build-problem.ts';

/** Random projects with nothing but shortest lags, breaks and capacities. */
const projects = (count: number, tasks: number): Problem[] =>
  Array.from({ length: count }, (_, seed) =>
    randomProblem(seed, {
      tasks: [tasks, tasks],
      horizon: [tasks * 8, tasks * 8],
      length: 6,
      features: { lags: 1, calendar: 0.5, zero: 0.5 },
      otherwise: 0,
    }),
  ).filter((problem) => asPlainProject(compileProblem(problem)) !== null);

const plain = (problem: Problem): PlainProject => {
  const project = asPlainProject(compileProblem(problem));
  if (project === null) throw new Error('not a plain project');
  return project;
};

describe('a plain project', () => {
  const tasks = [task('a', 3, [use('r')]), task('b', 2, [use('r')])];
  const resources = [{ id: 'r', capacity: 1 }];

  it('is known by its fixed lengths, shortest lags and capacities', () => {
    expect(
      asPlainProject(compileProblem(problemWith({ tasks, resources, lags: [after('a', 'b', 2)] }))),
    ).not.toBeNull();
  });

  it.each<{ name: string; given: Partial<Problem> }>([
    { name: 'a longest lag', given: { lags: [within('a', 'b', 4)] } },
    { name: 'a flexible length', given: { tasks: [task('a', [1, 3])] } },
    {
      name: 'a choice of modes',
      given: {
        choices: [{ id: 'c', options: ['x', 'y'] }],
        tasks: [{ id: 'a', choice: 'c', modes: [mode(1), mode(2)] }],
      },
    },
    { name: 'lags in a circle', given: { lags: [after('a', 'b'), after('b', 'a')] } },
    { name: 'no tier', given: { tiers: [] } },
  ])('is not one with $name', ({ given }) => {
    expect(asPlainProject(compileProblem(problemWith({ tasks, resources, ...given })))).toBeNull();
  });

  it('is never made longer by justification', () => {
    for (const problem of projects(60, 15)) {
      const project = plain(problem);
      const schedule = new ProjectSchedule(project);
      let value = schedule.forward(project.topological, Infinity);
      for (let pass = 0; value >= 0 && pass < 4; pass++) {
        const next = schedule.justify(value);
        expect(next, problem.name).toBeGreaterThanOrEqual(0);
        expect(next, problem.name).toBeLessThanOrEqual(value);
        value = next;
      }
    }
  });

  it('gets plans that keep every promise, as good as complete enumeration on tiny ones', () => {
    let compared = 0;
    for (const problem of projects(40, 4)) {
      const evolution = new Evolution(plain(problem), new Random(7));
      for (let step = 0; step < 200; step++) evolution.step();
      const known = bruteForce(problem);
      if (known.kind !== 'optimal') continue;
      compared++;
      expect(evolution.best, problem.name).toBe(known.values[0]);
      const solution = solutionOf(planOfStarts(compileProblem(problem), evolution.bestStart));
      expect(verifySolution(problem, solution), problem.name).toEqual([]);
    }
    expect(compared).toBeGreaterThan(5);
  });
});
