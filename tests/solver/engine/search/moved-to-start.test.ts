/** Plans built from the end of the session back: told as early as they can be. All problems are invented. */
import { describe, expect, it } from 'vitest';
import { Budget } from '../../../../solver/engine/budget.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';
import { findFirstPlans } from '../../../../solver/engine/search/first-plans.ts';
import { planOfSolution, solutionOf } from '../../../../solver/engine/search/plan.ts';
import { priorityRules } from '../../../../solver/engine/search/priority-rules.ts';
import { prepare, Workshop } from '../../../../solver/engine/search/workshop.ts';
import { solve } from '../../../../solver/engine/solve.ts';
import { verifySolution } from '../../../../solver/engine/verify-solution.ts';
import { sessionToProblem } from '../../../../solver/translate/session-to-problem.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../../support/demo-documents.ts';
import { endOf, problemWith, startOf, task, use } from '../build-problem.ts';

const hands = { id: 'hands', capacity: 1 };
const tasks = [task('cook', 7, [use('hands')]), task('lay', 2, [use('hands')])];

function workshopOf(problem: Problem, seed = 1): Workshop {
  const budget = new Budget(1_000_000, undefined);
  return new Workshop(problem, budget, { seed }, prepare(problem, budget)!);
}

/** The plan that cooks from minute 30 on and lays the table after that, moved. */
function movedLatePlan(problem: Problem) {
  const workshop = workshopOf(problem);
  const late = {
    choices: [],
    tasks: [
      { start: 30, end: 37 },
      { start: 37, end: 39 },
    ],
  };
  expect(verifySolution(problem, late)).toEqual([]);
  return solutionOf(workshop.movedToStart(planOfSolution(workshop.compiled, late))).tasks;
}

describe('a plan at the end of the session', () => {
  it('is moved as a whole until its first task starts at minute 0', () => {
    expect(movedLatePlan(problemWith({ resources: [hands], tasks }))).toEqual([
      { start: 0, end: 7 },
      { start: 7, end: 9 },
    ]);
  });

  it('stays where it is when something in it cannot be that early', () => {
    const lags = [{ from: 'origin', to: startOf('lay'), least: 20 } as const];
    expect(movedLatePlan(problemWith({ resources: [hands], tasks, lags }))[0]).toEqual({ start: 30, end: 37 });
  });

  it('stays where it is when it is asked to start late', () => {
    const terms = tasks.map(({ id }) => ({ point: startOf(id), plus: 50, minus: true }));
    const problem = problemWith({ resources: [hands], tasks, tiers: [{ kind: 'latest', id: 'latest start', terms }] });
    expect(movedLatePlan(problem)[0]).toEqual({ start: 30, end: 37 });
  });

  // In this kitchen few of these plans can be pulled forward task by task: they were told with the horizon as their finish.
  it.each([1, 2, 3])('is not told with the horizon as its finish, seed %i', (seed) => {
    const session = byId(demoSessions(), 'harbour-sunday');
    const kitchen = byId(demoKitchens(), 'harbour-two-ovens');
    const translated = sessionToProblem({ session, kitchen, components: demoComponents(), crew: 'two' });
    if (!translated.ok) throw new Error(JSON.stringify(translated.faults));
    const workshop = workshopOf(translated.problem, seed);
    const rule = priorityRules.find(({ name }) => name === 'latest finish, serial, backward')!;
    const plan = workshop.planByRule(rule, { failLimit: 30 })!;
    expect(verifySolution(translated.problem, workshop.solution(plan))).toEqual([]);
    expect(Math.min(...plan.start.filter((start) => start >= 0))).toBe(0);
    expect(plan.values[0]).toBeLessThan(translated.problem.horizon);
  });
});

describe('an end that stands at a fixed time', () => {
  it('keeps the plan before it', () => {
    const lags = [{ from: endOf('lay'), to: 'origin', least: -39 } as const];
    const fixed = [...lags, { from: 'origin', to: endOf('lay'), least: 39 } as const];
    expect(movedLatePlan(problemWith({ resources: [hands], tasks, lags: fixed }))[1]).toEqual({ start: 37, end: 39 });
  });
});

describe('a plan from the end back', () => {
  const session = byId(demoSessions(), 'harbour-sunday');
  const kitchen = byId(demoKitchens(), 'harbour-one-oven');
  const translated = sessionToProblem({ session, kitchen, components: demoComponents(), crew: 'two' });
  if (!translated.ok) throw new Error(JSON.stringify(translated.faults));
  const { problem } = translated;

  const seeds = [1, 2, 3, 4, 5, 6];

  // Now and then no task of the plan can be pulled forward: then it is told once.
  it('is told before it is pulled forward while there is none, and once more after that, shorter', () => {
    const counts = seeds.map((seed) => {
      const told: number[] = [];
      const budget = new Budget(1_000_000, undefined);
      const workshop = new Workshop(problem, budget, { seed }, prepare(problem, budget)!, ({ values, start }) => {
        expect(Math.min(...start.filter((at) => at >= 0))).toBe(0);
        told.push(values[0]!);
      });
      findFirstPlans(workshop, 1, 100, Infinity);
      expect(told).toEqual([...new Set(told)].sort((a, b) => b - a));
      expect(verifySolution(problem, workshop.solution(workshop.best!))).toEqual([]);
      return told.length;
    });
    expect(new Set(counts)).toContain(2);
    expect(Math.max(...counts)).toBe(2);
  });

  it('is brought to its end when it is the first, though the effort was spent on the way to it', () => {
    const counts = seeds.map((seed) => {
      const outcome = solve(problem, { seed, effort: 1, untilPlan: 1_000_000 });
      expect(outcome.work).toBeLessThan(100_000);
      return outcome.trace.filter(({ value }) => value !== null).length;
    });
    expect(Math.max(...counts)).toBe(2);
  });
});
