import { describe, expect, it } from 'vitest';
import { planOrder } from '../../../../solver/engine/explain/plan-order.ts';
import type { Problem, Use } from '../../../../solver/engine/problem.ts';
import { withoutMeetings } from '../../../../solver/engine/replan/met.ts';
import { verifySolution } from '../../../../solver/engine/verify-solution.ts';
import { problemWith } from '../build-problem.ts';

/** One board; minutes and soil invented. */
const task = (id: string, use: Partial<Use>): Problem['tasks'][number] => ({
  id,
  modes: [{ shortest: 2, longest: 2, uses: [{ resource: 'board', amount: 1, ...use }] }],
});
const bread = task('bread', { leaves: ['gluten', 'sesame'] });
const salad = task('salad', { avoids: ['gluten', 'raw'] });
const wash = task('wash', { cleans: true });

const problemOf = (tasks: Problem['tasks']): Problem =>
  problemWith({ horizon: 100, tasks, resources: [{ id: 'board', capacity: 1 }], tiers: [] });
const planAt = (...starts: readonly number[]) => ({
  choices: [],
  tasks: starts.map((start) => ({ start, end: start + 2 })),
});
const avoidsOf = (problem: Problem, task: number) => problem.tasks[task]!.modes[0]!.uses[0]!.avoids;

describe('a problem as a plan can be read that meets soil', () => {
  it('avoids all but what the plan meets, so that an order can be read', () => {
    const problem = problemOf([bread, salad]);
    const plan = planAt(0, 5);
    expect(verifySolution(problem, plan)).not.toEqual([]);
    expect(() => planOrder(problem, plan)).toThrow('salad meets what bread left');
    const readable = withoutMeetings(problem, plan);
    expect(avoidsOf(readable, 1)).toEqual(['raw']);
    expect(verifySolution(readable, plan)).toEqual([]);
    expect(planOrder(readable, plan).times[3]).toBe(5);
  });

  it.each([
    { name: 'what comes clean before dirty', tasks: [bread, salad], starts: [5, 0] },
    { name: 'what is washed between', tasks: [bread, salad, wash], starts: [0, 6, 3] },
  ])('is the same problem for $name', ({ tasks, starts }) => {
    const problem = problemOf(tasks);
    expect(verifySolution(problem, planAt(...starts))).toEqual([]);
    expect(withoutMeetings(problem, planAt(...starts))).toBe(problem);
  });

  it('counts no wash that comes too late or too early', () => {
    const problem = problemOf([bread, salad, wash]);
    for (const starts of [
      [2, 6, 0],
      [0, 4, 8],
    ])
      expect(avoidsOf(withoutMeetings(problem, planAt(...starts)), 1)).toEqual(['raw']);
  });
});
