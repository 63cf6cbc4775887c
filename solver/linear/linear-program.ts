// The types of a file without any are ambient, and nothing can import those.
// eslint-disable-next-line @typescript-eslint/triple-slash-reference
/// <reference path="./lp-solver-build.d.ts" />
/**
 * Linear programs, and small integer ones, by the library `javascript-lp-solver`, which only this folder knows.
 *
 * The library works in floating point, and on integer programs it may end early with fractional or wrong values. So nothing it
 * says is taken on trust: an answer is given only where its whole numbers satisfy every row exactly. That the answer is
 * the best there is cannot be seen from it; who needs that has to prove it otherwise.
 */
import solver from '../../node_modules/javascript-lp-solver/dist/index.browser.mjs';

/** Position of a variable and its coefficient, an integer. */
export type LinearTerm = readonly [variable: number, coefficient: number];

/** `least ≤ Σ coefficient × variable ≤ most`; either may be absent. Integers. */
export interface LinearRow {
  readonly terms: readonly LinearTerm[];
  readonly least?: number;
  readonly most?: number;
}

/** Maximise Σ coefficient × variable over variables that are all ≥ 0 and whole. */
export interface LinearProgram {
  readonly variables: number;
  readonly maximise: readonly LinearTerm[];
  readonly rows: readonly LinearRow[];
  /**
   * Whether the corners of the program are whole in any case (its matrix is totally unimodular: differences, flows,
   * assignments). Otherwise the variables are branched on.
   */
  readonly wholeCorners: boolean;
}

export type LinearAnswer =
  /** Whole values that satisfy every row, and the value that they give. */
  | { readonly kind: 'found'; readonly values: readonly number[]; readonly value: number }
  /** Nothing, or nothing that holds: no program of this size should be judged infeasible by it. */
  | { readonly kind: 'failed'; readonly reason: string };

/** How far a number may lie from a whole one to be meant by it: far above rounding, far below a half. */
const NEAR = 1e-5;

/**
 * Solves a program and checks the answer in whole numbers.
 *
 * @param program integers below 2^31 throughout
 */
export function solveLinear(program: LinearProgram): LinearAnswer {
  const { variables, maximise, rows, wholeCorners } = program;
  const names = Array.from({ length: variables }, (_, variable) => `x${variable}`);
  const columns: Record<string, Record<string, number>> = {};
  for (const name of names) columns[name] = {};
  const put = (variable: number, row: string, coefficient: number): void => {
    const column = columns[names[variable]!]!;
    column[row] = (column[row] ?? 0) + coefficient;
  };
  const constraints: Record<string, { min?: number; max?: number }> = {};
  for (const [variable, coefficient] of maximise) put(variable, 'value', coefficient);
  rows.forEach(({ terms, least, most }, row) => {
    const name = `r${row}`;
    constraints[name] = {
      ...(least === undefined ? {} : { min: least }),
      ...(most === undefined ? {} : { max: most }),
    };
    for (const [variable, coefficient] of terms) put(variable, name, coefficient);
  });
  const answer = solver.Solve({
    optimize: 'value',
    opType: 'max',
    constraints,
    variables: columns,
    ...(wholeCorners ? {} : { ints: Object.fromEntries(names.map((name) => [name, 1])) }),
  });
  if (answer['feasible'] !== true) return { kind: 'failed', reason: 'no values found' };
  if (answer['bounded'] === false) return { kind: 'failed', reason: 'no largest value' };
  const values: number[] = [];
  for (const name of names) {
    const value = answer[name] ?? 0;
    if (typeof value !== 'number' || !Number.isFinite(value)) return { kind: 'failed', reason: `${name} has no value` };
    const whole = Math.round(value);
    if (Math.abs(value - whole) > NEAR || whole < 0) return { kind: 'failed', reason: `${name} is ${value}` };
    values.push(whole);
  }
  const sum = (terms: readonly LinearTerm[]): number =>
    terms.reduce((total, [variable, coefficient]) => total + coefficient * values[variable]!, 0);
  const broken = rows.findIndex(({ terms, least, most }) => {
    const total = sum(terms);
    return total < (least ?? -Infinity) || total > (most ?? Infinity);
  });
  if (broken >= 0) return { kind: 'failed', reason: `row ${broken} does not hold` };
  return { kind: 'found', values, value: sum(maximise) };
}
