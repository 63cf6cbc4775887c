/**
 * Prices of the rows of a linear program: least Σ cost × variable over variables ≥ 0 with Σ coefficient × variable ≤ limit in each row and all
 * costs > 0, by the dual simplex method on a dense tableau.
 *
 * Prices come in floating point and are a hint, not a proof: of the bound that they give, each user sees to it that it is true whatever
 * they are. Where costs tie, the method may stand still for long, so a variable that costs nothing is given a very small cost.
 *
 * Source: Lemke (1954), The dual method of solving the linear programming problem, Naval Research Logistics Quarterly 1, 36–47. Only
 * + − × / on doubles, so every machine agrees.
 */
export interface Program {
  readonly variables: number;
  readonly rows: number;
  /** Row by row, a coefficient for each variable. */
  readonly coefficients: Float64Array;
  readonly limits: Float64Array;
  /** By variable, > 0. */
  readonly costs: Float64Array;
}

/** A row is kept when it is broken by no more than this; smaller coefficients are no pivots; smaller factors change nothing. */
const FEASIBLE = 1e-7;
const PIVOT = 1e-7;
const ZERO = 1e-9;

/**
 * @param most pivots at most; where they do not suffice, the prices reached so far are as true and give less
 * @returns the price of each row, ≥ 0
 */
export function rowPrices(program: Program, most: number): Float64Array {
  const tableau = new Tableau(program);
  for (let pivots = 0; pivots < most; pivots++) {
    const row = tableau.mostBroken();
    const column = row < 0 ? -1 : tableau.entering(row);
    if (column < 0) break;
    tableau.pivot(row, column);
  }
  return tableau.prices();
}

/** The columns of what is not in the basis: what enters it hands its column to what leaves. */
class Tableau {
  private readonly table: Float64Array;
  private readonly right: Float64Array;
  private readonly reduced: Float64Array;
  /** What stands in each column and row: a variable, or `variables` + row for the slack of a row. */
  private readonly inColumn: Int32Array;
  private readonly inRow: Int32Array;
  private readonly variables: number;
  private readonly rows: number;

  constructor({ variables, rows, coefficients, limits, costs }: Program) {
    this.variables = variables;
    this.rows = rows;
    this.table = coefficients.slice();
    this.right = limits.slice();
    this.reduced = costs.slice();
    this.inColumn = Int32Array.from({ length: variables }, (_, j) => j);
    this.inRow = Int32Array.from({ length: rows }, (_, i) => variables + i);
  }

  /** @returns the row broken most, −1 where all are kept */
  mostBroken(): number {
    let row = -1;
    let least = -FEASIBLE;
    for (let i = 0; i < this.rows; i++) {
      if (this.right[i]! >= least) continue;
      least = this.right[i]!;
      row = i;
    }
    return row;
  }

  /** @returns the column that can mend the row at the least cost, −1 where none can; of equal ones the largest coefficient */
  entering(row: number): number {
    const { table, reduced, variables } = this;
    const base = row * variables;
    let column = -1;
    let least = Infinity;
    for (let j = 0; j < variables; j++) {
      const a = table[base + j]!;
      if (a >= -PIVOT) continue;
      const ratio = reduced[j]! / -a;
      if (ratio > least || (ratio === least && a >= table[base + column]!)) continue;
      least = ratio;
      column = j;
    }
    return column;
  }

  pivot(row: number, column: number): void {
    const { table, right, reduced, variables, inRow, inColumn } = this;
    const base = row * variables;
    const inverse = 1 / table[base + column]!;
    for (let j = 0; j < variables; j++) table[base + j]! *= inverse;
    table[base + column] = inverse;
    right[row]! *= inverse;
    for (let i = 0; i < this.rows; i++) {
      if (i === row) continue;
      const factor = table[i * variables + column]!;
      if (Math.abs(factor) < ZERO) table[i * variables + column] = 0;
      else {
        this.subtract(table, i * variables, base, column, factor, inverse);
        right[i]! -= factor * right[row]!;
      }
    }
    this.subtract(reduced, 0, base, column, reduced[column]!, inverse);
    const leaves = inRow[row]!;
    inRow[row] = inColumn[column]!;
    inColumn[column] = leaves;
  }

  private subtract(
    from: Float64Array,
    at: number,
    base: number,
    column: number,
    factor: number,
    inverse: number,
  ): void {
    const { table, variables } = this;
    for (let j = 0; j < variables; j++) from[at + j]! -= factor * table[base + j]!;
    from[at + column] = -factor * inverse;
  }

  prices(): Float64Array {
    const prices = new Float64Array(this.rows);
    this.inColumn.forEach((what, j) => {
      if (what >= this.variables) prices[what - this.variables] = Math.max(0, this.reduced[j]!);
    });
    return prices;
  }
}
