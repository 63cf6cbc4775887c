import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../../solver/engine/problem.ts';
import { jobShopProblem } from '../../../benchmarks/readers/shops.ts';
import { bruteForce, everySolution } from '../../../support/brute-force.ts';
import { audit, plansOnTheWay, probe } from '../../../support/explanation-audit.ts';
import { randomProblem, smallShape, tinyShape, type ProblemShape } from '../../../support/random-problem.ts';
import { seeded } from '../../../support/seeded.ts';

/** Choices that may leave work out: with two of them, work may be interchangeable and the engine keep to one order of it. */
const leavingOut = ({ choices, tasks }: Problem): number =>
  choices.filter(({ id }) =>
    tasks.some(
      (task) =>
        (task.choice === id && task.modes.includes(null)) || task.when?.some(({ choice }) => choice === id) === true,
    ),
  ).length;

describe('reasons and learned clauses of the learning engine', () => {
  it('hold in every plan of problems within six minutes, by complete enumeration, in states met by chance', () => {
    const shape: ProblemShape = { tasks: [2, 4], horizon: [3, 6], length: 3 };
    let checked = 0;
    let problems = 0;
    for (let seed = 80_000; seed < 80_150; seed++) {
      const problem = randomProblem(seed, shape);
      const plans = everySolution(problem, 1_000);
      if (plans === null || plans.length === 0) continue;
      for (const result of [audit(problem, plans), probe(problem, plans, 5, seed)]) {
        expect(result.wrong, `problem ${seed}`).toEqual([]);
        // The model loses no plan, but for the order of interchangeable work.
        if (leavingOut(problem) < 2) expect(result.refused, `problem ${seed}`).toBe(0);
        expect(result.known, `problem ${seed}`).toBeGreaterThan(0);
        checked += result.checked;
      }
      problems++;
    }
    expect(problems).toBeGreaterThan(50);
    expect(checked).toBeGreaterThan(100_000);
  });

  it('hold in the optimum of tiny problems by complete enumeration, and in every plan on the way', () => {
    let checked = 0;
    for (let seed = 20_000; seed < 20_250; seed++) {
      const problem = randomProblem(seed, tinyShape);
      const truth = bruteForce(problem);
      if (truth.kind !== 'optimal') continue;
      const result = audit(problem, [truth.solution, ...plansOnTheWay(problem)]);
      expect(result.wrong, `problem ${seed}`).toEqual([]);
      checked += result.checked;
    }
    expect(checked).toBeGreaterThan(1000);
  });

  it('hold in every plan found for larger problems of all features', () => {
    let checked = 0;
    for (let seed = 30_000; seed < 30_060; seed++) {
      const problem = randomProblem(seed, smallShape);
      const plans = plansOnTheWay(problem);
      if (plans.length === 0) continue;
      const result = audit(problem, plans);
      expect(result.wrong, `problem ${seed}`).toEqual([]);
      checked += result.checked;
    }
    expect(checked).toBeGreaterThan(1000);
  });

  // A reason of a precedence set once kept no member at all when the first start alone reached the goal. It took a job shop of
  // ten jobs to show, as a proof of 1030 where 1005 is possible.
  it('hold in every plan found for job shops, where sets of ordered tasks push each other', () => {
    let checked = 0;
    for (let seed = 0; seed < 4; seed++) {
      const chance = seeded(seed);
      const machines = 6;
      const ops = Array.from({ length: 8 }, () =>
        chance.shuffle([...Array(machines).keys()]).map((machine) => [machine, chance.int(1, 99)] as const),
      );
      const problem = jobShopProblem({ name: `random ${seed}`, jobs: 8, machines, ops });
      const result = audit(problem, plansOnTheWay(problem));
      expect(result.wrong, `job shop ${seed}`).toEqual([]);
      checked += result.checked;
    }
    expect(checked).toBeGreaterThan(1000);
  });
});
