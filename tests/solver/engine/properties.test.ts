import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solve } from '../../../solver/engine/solve.ts';
import { verifySolution } from '../../../solver/engine/verify-solution.ts';
import { bruteForce, lexicographicallyLess } from '../../support/brute-force.ts';
import { faultsOf, plainTierValues } from '../../support/plain-check.ts';
import { randomProblem, smallShape, tinyShape } from '../../support/random-problem.ts';
import { kitchenLike } from './kitchen-like-problem.ts';

const anySeed = fc.integer({ min: 0, max: 1_000_000 });

describe('solve on random problems of every feature', () => {
  it('gives plans that two checks written apart accept, with values and bounds that agree', () => {
    fc.assert(
      fc.property(anySeed, (seed) => {
        const problem = randomProblem(seed, smallShape);
        const outcome = solve(problem, { seed, effort: 3_000 });
        if (outcome.kind !== 'proven' && outcome.kind !== 'bounded') return;
        expect(verifySolution(problem, outcome.solution)).toEqual([]);
        expect(faultsOf(problem, outcome.solution)).toEqual([]);
        expect(outcome.tiers.map((tier) => tier.value)).toEqual(plainTierValues(problem, outcome.solution));
        for (const tier of outcome.tiers) expect(tier.bound).toBeLessThanOrEqual(tier.value);
      }),
      { numRuns: 300 },
    );
  });

  it('is never better than complete enumeration, equal where proven, and finds a plan where there is one', () => {
    fc.assert(
      fc.property(anySeed, (seed) => {
        const problem = randomProblem(seed, tinyShape);
        const known = bruteForce(problem, 300_000);
        const outcome = solve(problem, { seed, effort: 5_000 });
        if (known.kind === 'infeasible') expect(['impossible', 'unknown']).toContain(outcome.kind);
        if (known.kind !== 'optimal') return;
        expect(['proven', 'bounded']).toContain(outcome.kind);
        if (outcome.kind !== 'proven' && outcome.kind !== 'bounded') return;
        const values = outcome.tiers.map((tier) => tier.value);
        expect(lexicographicallyLess(values, known.values)).toBe(false);
        outcome.tiers.forEach((tier, index) => {
          if (tier.proven) expect(tier.value).toBe(known.values[index]);
        });
      }),
      { numRuns: 300 },
    );
  });
});

describe('solve on problems like kitchens', () => {
  it.each([
    { steps: 20, people: 1 },
    { steps: 20, people: 2 },
    { steps: 60, people: 2 },
    { steps: 60, people: 3 },
  ])('finds a plan for $steps steps and $people people', ({ steps, people }) => {
    for (let seed = 0; seed < 8; seed++) {
      const problem = kitchenLike({ seed, steps, people });
      let found = false;
      const outcome = solve(problem, {
        seed: 1,
        effort: 150_000,
        onProgress: (_, solution) => (found ||= solution !== null),
        shouldStop: () => found,
      });
      expect(outcome.kind, problem.name).toMatch(/proven|bounded/);
    }
  });
});
