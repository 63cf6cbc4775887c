import { describe, expect, it } from 'vitest';
import { planByRule, ruleOfThumb } from '../../../../solver/engine/plan-by-rule.ts';
import { priorityRules } from '../../../../solver/engine/search/priority-rules.ts';
import { tierValues } from '../../../../solver/engine/tier-values.ts';
import { verifySolution } from '../../../../solver/engine/verify-solution.ts';
import { after, problemWith, task, use } from '../build-problem.ts';
import { kitchenLike } from '../kitchen-like-problem.ts';

describe('priority rules', () => {
  it('are at least twenty, each with a name of its own', () => {
    const names = priorityRules.map((rule) => rule.name);
    expect(names.length).toBeGreaterThanOrEqual(20);
    expect(new Set(names).size).toBe(names.length);
  });

  it.each(priorityRules)('$name plans a small kitchen', (rule) => {
    const problem = kitchenLike({ seed: 4, steps: 12, people: 2 });
    const solution = planByRule(problem, rule);
    expect(solution === null ? ['no plan'] : verifySolution(problem, solution)).toEqual([]);
  });

  it('the critical chain goes first by its rank weight', () => {
    const problem = problemWith({
      resources: [{ id: 'hands', capacity: 1 }],
      tasks: [task('salad', 4, [use('hands')]), task('dough', 4, [use('hands')]), task('bake', 20)],
      lags: [after('dough', 'bake')],
    });
    const [rule] = priorityRules;
    const solution = rule === undefined ? null : planByRule(problem, rule);
    expect(solution === null ? null : tierValues(problem, solution)).toEqual([24]);
  });
});

describe('the rule of thumb', () => {
  const problem = problemWith({
    resources: [
      { id: 'rack', capacity: 1 },
      { id: 'hands', capacity: 1 },
    ],
    tasks: [
      task('pie', 10, [use('rack')]),
      task('roast', 25, [use('rack')]),
      task('peel', 3, [use('hands')]),
      task('dice', 2, [use('hands')]),
      task('simmer', 9),
    ],
    lags: [after('dice', 'simmer')],
  });

  it('gives the oven to its longest job first and the hands to the longest remaining work', () => {
    const solution = ruleOfThumb(problem, { firstResources: ['rack'] });
    expect(solution?.tasks.map((interval) => interval?.start)).toEqual([25, 0, 2, 0, 2]);
  });

  it('keeps every promise in a kitchen', () => {
    for (let seed = 0; seed < 5; seed++) {
      const kitchen = kitchenLike({ seed, steps: 20, people: 2 });
      const solution = ruleOfThumb(kitchen, { firstResources: ['rack'] });
      expect(solution === null ? ['no plan'] : verifySolution(kitchen, solution), `kitchen ${seed}`).toEqual([]);
    }
  });
});
