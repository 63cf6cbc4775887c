/** A mixed-integer linear program, built term by term and written in the CPLEX LP file format. */

/** A linear expression: a constant and a coefficient for each column. */
export interface Sum {
  readonly constant: number;
  readonly terms: ReadonlyMap<string, number>;
}

export const zero: Sum = { constant: 0, terms: new Map() };

export function constant(value: number): Sum {
  return { constant: value, terms: new Map() };
}

/** The sum of expressions, each times its factor. */
export function combine(...parts: readonly (readonly [number, Sum])[]): Sum {
  let total = 0;
  const terms = new Map<string, number>();
  for (const [factor, sum] of parts) {
    total += factor * sum.constant;
    for (const [column, coefficient] of sum.terms) {
      terms.set(column, (terms.get(column) ?? 0) + factor * coefficient);
    }
  }
  return { constant: total, terms };
}

export function add(...sums: readonly Sum[]): Sum {
  return combine(...sums.map((sum) => [1, sum] as const));
}

export class LinearProgram {
  private readonly rows = new Set<string>();
  private readonly binaries: string[] = [];
  private readonly bounds: string[] = [];
  private broken = false;

  /** A new column of 0 or 1. */
  binary(): Sum {
    const column = `x${this.binaries.length}`;
    this.binaries.push(column);
    return { constant: 0, terms: new Map([[column, 1]]) };
  }

  /** A new column of any real number from 0 to `most`. */
  real(most: number): Sum {
    const column = `y${this.bounds.length}`;
    this.bounds.push(` 0 <= ${column} <= ${most}`);
    return { constant: 0, terms: new Map([[column, 1]]) };
  }

  /** Asks that `left ≤ right`. */
  atMost(left: Sum, right: Sum): void {
    this.row(combine([1, left], [-1, right]), '<=');
  }

  /** Asks that `left = right`. */
  equal(left: Sum, right: Sum): void {
    this.row(combine([1, left], [-1, right]), '=');
  }

  private row(sum: Sum, relation: '<=' | '='): void {
    const terms = [...sum.terms].filter(([, coefficient]) => coefficient !== 0);
    const right = -sum.constant;
    if (terms.length === 0) {
      // A row without columns is a plain fact; a false one makes the whole program infeasible.
      if (relation === '<=' ? right < 0 : right !== 0) this.broken = true;
      return;
    }
    this.rows.add(`${written(terms)} ${relation} ${right}`);
  }

  /** True when a row without columns is false, so that there is no solution and nothing to solve. */
  get isBroken(): boolean {
    return this.broken;
  }

  /** The program as LP-format text, minimising `objective` without its constant. */
  text(objective: Sum): string {
    // The format wants at least one column in the objective.
    const goal = objective.terms.size > 0 ? [...objective.terms] : [...this.real(0).terms];
    const rows = [...this.rows].map((row, index) => ` r${index}: ${row}`);
    if (rows.length === 0) rows.push(` r0: ${written(goal)} >= -1000000`);
    return [
      'Minimize',
      ` obj: ${written(goal)}`,
      'Subject To',
      ...rows,
      'Bounds',
      ...this.bounds,
      ...(this.binaries.length > 0 ? ['Binary', ...this.binaries.map((name) => ` ${name}`)] : []),
      'End',
      '',
    ].join('\n');
  }
}

/** Terms with their signs, broken into lines, since readers of the format limit the length of a line. */
function written(terms: readonly (readonly [string, number])[]): string {
  return terms
    .map(([column, coefficient], index) => {
      const size = Math.abs(coefficient);
      const sign = coefficient < 0 ? '-' : '+';
      return `${index > 0 && index % 12 === 0 ? '\n ' : ''}${sign} ${size === 1 ? '' : `${size} `}${column}`;
    })
    .join(' ');
}
