import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveLinear, type LinearProgram, type LinearTerm } from '../../../solver/linear/linear-program.ts';
import { seeded } from '../../support/seeded.ts';

describe('solveLinear', () => {
  it('finds the best mix of two products', () => {
    // source: F. S. Hillier & G. J. Lieberman, Introduction to Operations Research, ch. 3, Wyndor Glass Co.: (2, 6), 36.
    const answer = solveLinear({
      variables: 2,
      maximise: [
        [0, 3],
        [1, 5],
      ],
      rows: [
        { terms: [[0, 1]], most: 4 },
        { terms: [[1, 2]], most: 12 },
        {
          terms: [
            [0, 3],
            [1, 2],
          ],
          most: 18,
        },
      ],
      wholeCorners: true,
    });
    expect(answer).toEqual({ kind: 'found', values: [2, 6], value: 36 });
  });

  it('says so where there are no values, and where there is no largest', () => {
    const crossed = { terms: [[0, 1]] as const, least: 3, most: 2 };
    expect(solveLinear({ variables: 1, maximise: [[0, 1]], rows: [crossed], wholeCorners: true }).kind).toBe('failed');
    expect(solveLinear({ variables: 1, maximise: [[0, 1]], rows: [], wholeCorners: true }).kind).toBe('failed');
  });

  it('never gives fractions for whole ones', () => {
    // The corner of x + y ≤ 1, x + z ≤ 1, y + z ≤ 1 is (½, ½, ½): told that corners are whole, it refuses; else it branches.
    const program = (wholeCorners: boolean): LinearProgram => ({
      variables: 3,
      maximise: [
        [0, 1],
        [1, 1],
        [2, 1],
      ],
      rows: [
        [0, 1],
        [0, 2],
        [1, 2],
      ].map((pair) => ({ terms: pair.map((variable): LinearTerm => [variable, 1]), most: 1 })),
      wholeCorners,
    });
    expect(solveLinear(program(true)).kind).toBe('failed');
    expect(solveLinear(program(false))).toMatchObject({ kind: 'found', value: 1 });
  });

  it('agrees with trying all values, on small random programs', () => {
    let found = 0;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (seed) => {
        const chance = seeded(seed);
        const most = 4;
        const rows = Array.from({ length: chance.int(1, 4) }, () => ({
          terms: [0, 1, 2].map((variable): LinearTerm => [variable, chance.int(-3, 3)]),
          most: chance.int(0, 9),
        }));
        const maximise = [0, 1, 2].map((variable): LinearTerm => [variable, chance.int(-4, 4)]);
        const bounds = [0, 1, 2].map((variable) => ({ terms: [[variable, 1]] as const, most }));
        const answer = solveLinear({ variables: 3, maximise, rows: [...rows, ...bounds], wholeCorners: false });
        let best = -Infinity;
        for (let code = 0; code < (most + 1) ** 3; code++) {
          const values = [
            code % (most + 1),
            Math.floor(code / (most + 1)) % (most + 1),
            Math.floor(code / (most + 1) ** 2),
          ];
          const sum = (terms: readonly LinearTerm[]): number =>
            terms.reduce((total, [variable, coefficient]) => total + coefficient * values[variable]!, 0);
          if (rows.every((row) => sum(row.terms) <= row.most)) best = Math.max(best, sum(maximise));
        }
        // All 0 is allowed, so there is something to find.
        if (answer.kind !== 'found') return;
        found++;
        expect(answer.value).toBe(best);
      }),
      { numRuns: 300 },
    );
    expect(found).toBeGreaterThan(285);
  });
});
