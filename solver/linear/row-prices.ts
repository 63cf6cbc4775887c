// The types of a file without any are ambient, and nothing can import those.
// eslint-disable-next-line @typescript-eslint/triple-slash-reference
/// <reference path="./lp-solver-build.d.ts" />
/**
 * Prices of the rows of a linear program: least Σ cost × variable over variables ≥ 0 with Σ coefficient × variable ≤ limit in each row and all
 * costs > 0. The library tells no prices, so it is handed the dual program, whose variables they are.
 *
 * Prices come in floating point and are a hint, not a proof: of the bound that they give, each user sees to it that it is true whatever
 * they are.
 *
 * Source: Gale, Kuhn, Tucker (1951), Linear programming and the theory of games, for duality.
 */
import solver from '../../node_modules/javascript-lp-solver/dist/index.browser.mjs';

export interface PricedProgram {
  readonly variables: number;
  readonly rows: number;
  /** Row by row, a coefficient for each variable. */
  readonly coefficients: Float64Array;
  readonly limits: Float64Array;
  /** By variable, > 0. */
  readonly costs: Float64Array;
}

/** @returns the price of each row, ≥ 0; all 0 where the library finds none */
export function rowPrices({ variables, rows, coefficients, limits, costs }: PricedProgram): Float64Array {
  const constraints: Record<string, { max: number }> = {};
  costs.forEach((max, j) => (constraints[`c${j}`] = { max }));
  const columns: Record<string, Record<string, number>> = {};
  for (let i = 0; i < rows; i++) {
    const column: Record<string, number> = { worth: -limits[i]! };
    for (let j = 0; j < variables; j++) {
      const coefficient = coefficients[i * variables + j]!;
      if (coefficient !== 0) column[`c${j}`] = -coefficient;
    }
    columns[`y${i}`] = column;
  }
  const answer = solver.Solve({ optimize: 'worth', opType: 'max', constraints, variables: columns });
  const prices = new Float64Array(rows);
  if (answer['feasible'] !== true || answer['bounded'] === false) return prices;
  for (let i = 0; i < rows; i++) {
    const price = answer[`y${i}`];
    if (typeof price === 'number' && Number.isFinite(price)) prices[i] = Math.max(0, price);
  }
  return prices;
}
