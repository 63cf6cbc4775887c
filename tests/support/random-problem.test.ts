import { describe, expect, it } from 'vitest';
import { validateProblem } from '../../solver/engine/validate-problem.ts';
import { verifySolution } from '../../solver/engine/verify-solution.ts';
import { tierValues } from '../../solver/engine/tier-values.ts';
import { bruteForce } from './brute-force.ts';
import { plainTierValues } from './plain-check.ts';
import { randomProblem, smallShape, tinyShape } from './random-problem.ts';
import { kinds, kindsIn, REFERENCE_PROBLEMS, referenceProblem } from './random-problem-reference.ts';
import { shrinkProblem } from './shrink-problem.ts';

describe('random scheduling problems', () => {
  it('are all well-formed, and the same for the same seed', () => {
    for (let seed = 0; seed < 500; seed += 1) {
      const problem = randomProblem(seed, smallShape);
      validateProblem(problem);
      expect(randomProblem(seed, smallShape)).toEqual(problem);
    }
  });

  it('have no solution in a quarter to a half of the cases, and their best passes the engine’s own check', () => {
    let infeasible = 0;
    for (let seed = 0; seed < 400; seed += 1) {
      const problem = randomProblem(seed, tinyShape);
      const best = bruteForce(problem);
      if (best.kind === 'infeasible') infeasible += 1;
      if (best.kind !== 'optimal') continue;
      expect(verifySolution(problem, best.solution)).toEqual([]);
      expect(tierValues(problem, best.solution)).toEqual(plainTierValues(problem, best.solution));
    }
    expect(infeasible).toBeGreaterThan(100);
    expect(infeasible).toBeLessThan(200);
  });

  it('shrink to problems that are still well-formed and still infeasible', () => {
    for (let seed = 0; seed < 40; seed += 1) {
      const problem = randomProblem(seed, tinyShape);
      const fails = (each: typeof problem): boolean => bruteForce(each, 200_000).kind === 'infeasible';
      if (!fails(problem)) continue;
      const smallest = shrinkProblem(problem, fails);
      validateProblem(smallest);
      expect(fails(smallest)).toBe(true);
      expect(JSON.stringify(smallest).length).toBeLessThanOrEqual(JSON.stringify(problem).length);
    }
  });

  it('has each kind of resource, rule and tier in at least thirty of those that the references are asked', () => {
    const problems = Array.from({ length: REFERENCE_PROBLEMS }, (_, index) => referenceProblem(index));
    for (const problem of problems) validateProblem(problem);
    const counts = kinds.map(
      (kind) => [kind, problems.filter((problem) => kindsIn(problem).has(kind)).length] as const,
    );
    expect(counts.filter(([, count]) => count < 30)).toEqual([]);
  });
});
