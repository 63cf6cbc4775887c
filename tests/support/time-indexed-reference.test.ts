import { describe, expect, it } from 'vitest';
import { bruteForce } from './brute-force.ts';
import { faultsOf, plainTierValues } from './plain-check.ts';
import { randomProblem, tinyShape } from './random-problem.ts';
import { timeIndexedOptimum, timeIndexedTiers } from './time-indexed-reference.ts';

describe('the two references for small scheduling problems agree', () => {
  it.each(Array.from({ length: 60 }, (_, seed) => seed))(
    'the integer program finds the first tier that enumeration finds, problem %i',
    async (seed) => {
      const problem = randomProblem(seed, tinyShape);
      const enumerated = bruteForce(problem);
      const reference = await timeIndexedOptimum(problem, 60);
      expect(reference.kind).toBe(enumerated.kind);
      if (reference.kind !== 'optimal' || enumerated.kind !== 'optimal') return;
      expect(reference.value).toBe(enumerated.values[0]);
      expect(faultsOf(problem, reference.solution)).toEqual([]);
      expect(plainTierValues(problem, reference.solution)[0]).toBe(reference.value);
    },
  );

  it.each(Array.from({ length: 20 }, (_, seed) => 20_000 + seed))(
    'the integer program finds every tier that enumeration finds, problem %i',
    async (seed) => {
      const problem = randomProblem(seed, { ...tinyShape, features: { tiers: 1 } });
      const enumerated = bruteForce(problem);
      const reference = await timeIndexedTiers(problem, 60);
      expect(reference.kind).toBe(enumerated.kind);
      if (reference.kind !== 'optimal' || enumerated.kind !== 'optimal') return;
      expect(reference.values).toEqual(enumerated.values);
      expect(reference.solution === null ? null : faultsOf(problem, reference.solution)).toEqual([]);
    },
  );
});
