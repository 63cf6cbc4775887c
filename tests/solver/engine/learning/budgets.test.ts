import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SCALE, stocksOf, weightsOf, type Stock } from '../../../../solver/engine/learning/model/budgets.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';

/** The energy that the weights say is needed at least; every task is there. */
function boundOf(
  weights: readonly number[],
  stocks: readonly Stock[],
  energies: readonly (readonly number[])[],
): number {
  let sum = 0;
  energies.forEach((modes, t) => {
    const costs = modes.map(
      (energy, m) => SCALE * energy + stocks.reduce((cost, stock, s) => cost + weights[s]! * stock.drawn[t]![m]!, 0),
    );
    sum += Math.min(...costs);
  });
  return (sum - stocks.reduce((worth, { amount }, s) => worth + weights[s]! * amount, 0)) / SCALE;
}

/** The least energy by complete enumeration of the modes; infinite where the stocks allow none. */
function leastOf(stocks: readonly Stock[], energies: readonly (readonly number[])[]): number {
  const visit = (t: number, left: readonly number[], energy: number): number => {
    if (left.some((amount) => amount < 0)) return Infinity;
    if (t === energies.length) return energy;
    return Math.min(
      ...energies[t]!.map((more, m) =>
        visit(
          t + 1,
          left.map((amount, s) => amount - stocks[s]!.drawn[t]![m]!),
          energy + more,
        ),
      ),
    );
  };
  return visit(
    0,
    stocks.map(({ amount }) => amount),
    0,
  );
}

describe('The energy that tasks need when stocks are short', () => {
  it('is told by weights of the stocks: a cheap mode for one of two tasks only needs 10, where 2 would do without the stock', () => {
    const energies = [
      [9, 1],
      [9, 1],
    ];
    const stocks = [
      {
        amount: 2,
        drawn: [
          [0, 2],
          [0, 2],
        ],
      },
    ];
    const weights = weightsOf(stocks, energies, [true, true])!;
    expect(leastOf(stocks, energies)).toBe(10);
    expect(boundOf(weights, stocks, energies)).toBeGreaterThan(9);
    expect(boundOf(weights, stocks, energies)).toBeLessThanOrEqual(10);
  });

  it('has no weights where there is enough for every task', () => {
    const stocks = [{ amount: 4, drawn: [[0, 2]] }];
    expect(weightsOf(stocks, [[9, 1]], [true])).toBeNull();
  });

  it('is never bounded above what complete enumeration finds, nor below what the cheapest modes need', () => {
    const small = fc.integer({ min: 0, max: 9 });
    const drawn = fc.record({ energy: small, draws: fc.tuple(small, small) });
    fc.assert(
      fc.property(
        fc.array(fc.array(drawn, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 5 }),
        fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 30 })),
        (tasks, amounts) => {
          const energies = tasks.map((modes) => modes.map(({ energy }) => energy));
          const stocks = amounts.map((amount, s) => ({
            amount,
            drawn: tasks.map((modes) => modes.map(({ draws }) => draws[s]!)),
          }));
          const always = tasks.map(() => true);
          const weights = weightsOf(stocks, energies, always);
          if (weights === null) return;
          expect(weights.every((weight) => Number.isInteger(weight) && weight >= 0)).toBe(true);
          const bound = boundOf(weights, stocks, energies);
          expect(bound).toBeLessThanOrEqual(leastOf(stocks, energies));
          expect(bound).toBeGreaterThan(energies.reduce((sum, modes) => sum + Math.min(...modes), 0));
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });

  it('counts only reservoirs that nothing fills, and only draws that hang on the mode alone', () => {
    const task = (id: string): Problem['tasks'][number] => ({
      id,
      choice: `of-${id}`,
      modes: [0, 1].map(() => ({ shortest: 1, longest: 1, uses: [] })),
    });
    const draw = (amount: number, ...when: { choice: string; options: number[] }[]) => ({
      point: { task: 'a', at: 'start' as const },
      amount,
      if: when,
    });
    const problem = {
      tasks: [task('a'), task('b')],
      reservoirs: [
        { id: 'pool', initial: 0, events: [draw(3), draw(-3)] },
        {
          id: 'stock',
          initial: 9,
          events: [
            draw(-1),
            draw(-2, { choice: 'of-a', options: [1] }),
            draw(-4, { choice: 'of-a', options: [0] }, { choice: 'of-b', options: [0] }),
          ],
        },
      ],
    } as unknown as Problem;
    expect(stocksOf(problem)).toEqual([
      {
        amount: 9,
        drawn: [
          [1, 3],
          [0, 0],
        ],
      },
    ]);
  });
});
