import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../../solver/engine/problem.ts';
import { solve } from '../../../../solver/engine/solve.ts';
import { bruteForce } from '../../../support/brute-force.ts';
import { randomProblem, tinyShape } from '../../../support/random-problem.ts';
import { problemWith, task, use } from '../build-problem.ts';

/** Tasks of which each pair shares one thing that only one can have at a time, a thing of their own for each pair. */
function handshake(lengths: readonly number[]): Problem {
  const pair = (i: number, j: number): string => `${Math.min(i, j)}-${Math.max(i, j)}`;
  const things = lengths.flatMap((_, i) => lengths.slice(0, i).map((_length, j) => pair(i, j)));
  return problemWith({
    tasks: lengths.map((length, i) =>
      task(
        `task ${i}`,
        length,
        lengths.flatMap((_, j) => (i === j ? [] : [use(pair(i, j))])),
      ),
    ),
    resources: things.map((id) => ({ id, capacity: 1 })),
  });
}

describe('tasks of which no two can overlap', () => {
  it('need the sum of their lengths, though no resource has more than two of them', () => {
    // By hand: 4 + 5 + 6 + 7 one after the other; the fullest resource alone has 13 minutes of work.
    expect(solve(handshake([4, 5, 6, 7]), { seed: 1, effort: 20_000 })).toMatchObject({
      kind: 'proven',
      tiers: [{ value: 22, bound: 22 }],
    });
  });

  it('never bound a tier above its least value by complete enumeration', () => {
    let bounded = 0;
    for (let seed = 61_000; seed < 61_120; seed++) {
      const problem = randomProblem(seed, tinyShape);
      const truth = bruteForce(problem);
      if (truth.kind !== 'optimal') continue;
      const outcome = solve(problem, { seed: 1, effort: 3_000 });
      if (!('tiers' in outcome)) continue;
      bounded++;
      expect(outcome.tiers[0]?.bound, `problem ${seed}`).toBeLessThanOrEqual(truth.values[0] as number);
    }
    expect(bounded).toBeGreaterThan(50);
  });
});
