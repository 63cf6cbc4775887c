import fc from 'fast-check';
import highsLoader from 'highs';
import { describe, expect, test } from 'vitest';
import { rowPrices } from '../../../solver/linear/row-prices.ts';

describe('Row prices', () => {
  test('give the value that HiGHS finds for random programs with a solution', async () => {
    const highs = await highsLoader();
    const coefficient = fc.integer({ min: -4, max: 4 });
    const row = fc.record({
      terms: fc.tuple(coefficient, coefficient, coefficient, coefficient),
      limit: fc.integer({ min: -9, max: 9 }),
    });
    const cost = fc.integer({ min: 1, max: 9 });
    let solved = 0;
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), fc.tuple(cost, cost, cost, cost), (rows, costs) => {
        const sum = (terms: readonly number[]): string =>
          terms.map((term, j) => `${term < 0 ? '-' : '+'} ${Math.abs(term)} x${j}`).join(' ');
        const lines = rows.map(({ terms, limit }, i) => ` c${i}: ${sum(terms)} <= ${limit}`);
        const answer = highs.solve(`Minimize\n obj: ${sum(costs)}\nSubject To\n${lines.join('\n')}\nEnd\n`);
        if (answer.Status !== 'Optimal') return;
        solved++;
        const prices = rowPrices({
          variables: 4,
          rows: rows.length,
          coefficients: Float64Array.from(rows.flatMap(({ terms }) => terms)),
          limits: Float64Array.from(rows, ({ limit }) => limit),
          costs: Float64Array.from(costs),
        });
        // Duality: what the rows are worth at these prices, and no variable costs less than what it frees.
        const worth = rows.reduce((all, { limit }, i) => all - prices[i]! * limit, 0);
        expect(worth).toBeCloseTo(answer.ObjectiveValue, 6);
        costs.forEach((each, j) => {
          const freed = rows.reduce((all, { terms }, i) => all - prices[i]! * terms[j]!, 0);
          expect(freed).toBeLessThanOrEqual(each + 1e-6);
        });
      }),
      { seed: 2, numRuns: 300 },
    );
    expect(solved).toBeGreaterThan(100);
  });
});
