import { describe, expect, it } from 'vitest';
import { solveByLearning } from '../../../solver/engine/learning/prove.ts';
import type { Solve } from '../../../solver/engine/outcome.ts';
import { solve } from '../../../solver/engine/solve.ts';
import { solveTogether } from '../../../solver/engine/together.ts';
import { bruteForce } from '../../support/brute-force.ts';
import { randomProblem, tinyShape } from '../../support/random-problem.ts';
import { faultsBeside, referenceProblem } from '../../support/random-problem-reference.ts';
import { timeIndexedTiers } from '../../support/time-indexed-reference.ts';

/** Each engine with the work units it is given, by its own measure: on small, and on tiny problems. */
const engines: readonly {
  readonly name: string;
  readonly solve: Solve;
  readonly efforts: readonly [number, number];
}[] = [
  { name: 'improving', solve, efforts: [100_000, 50_000] },
  { name: 'learning', solve: solveByLearning, efforts: [3_000_000, 1_000_000] },
  { name: 'together', solve: solveTogether, efforts: [150_000, 50_000] },
];

// A sample, spread over the kinds; `npm run soak -- reference` takes them all.
describe('the engines beside a time-indexed integer program solved by HiGHS, tier after tier', () => {
  const sample = Array.from({ length: 22 }, (_, k) => k * 10 + (k % 10));

  it.each(sample)('no plan is better than the reference, and proven tiers are equal, problem %i', async (index) => {
    const problem = referenceProblem(index);
    const truth = await timeIndexedTiers(problem, 60);
    if (truth.kind === 'optimal') expect(truth.values.length).toBeGreaterThan(0);
    for (const engine of engines) {
      const outcome = engine.solve(problem, { seed: 1, effort: engine.efforts[0] });
      expect(faultsBeside(problem, outcome, truth), engine.name).toEqual([]);
    }
  });
});

describe('the engines beside complete enumeration of every tier', () => {
  it.each(Array.from({ length: 300 }, (_, seed) => 10_000 + seed))(
    'no plan is better than the best of all, and proven tiers are equal, problem %i',
    (seed) => {
      const problem = randomProblem(seed, tinyShape);
      const truth = bruteForce(problem);
      if (truth.kind === 'unfinished') throw new Error('too large to enumerate');
      for (const engine of engines) {
        const outcome = engine.solve(problem, { seed: 1, effort: engine.efforts[1] });
        expect(faultsBeside(problem, outcome, truth), engine.name).toEqual([]);
      }
    },
  );
});
