/** The working of a number: how it came about, in a form that a person can check by hand. */
import type { Source } from './source.ts';

export interface WorkingInput {
  /** As the formula writes it, such as `m` or `ΔT`. */
  readonly symbol: string;
  readonly name: string;
  readonly value: number;
  /** Unit symbol of the SI or in common use beside it: kg, °C, min, Wh; `1` for a bare number. */
  readonly unit: string;
  /** Absent: what the user gave. */
  readonly source?: Source;
}

export interface Working {
  /** What it is, such as "Time to the boil". */
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** In symbols of the inputs, such as `t = (m·c + C)·ΔT / (η·P)`. */
  readonly formula: string;
  readonly inputs: readonly WorkingInput[];
  /** Of the formula. */
  readonly source: Source;
  /** What a person should know before relying on it. */
  readonly caution?: string;
  /** Workings of those inputs that are computed themselves. */
  readonly parts?: readonly Working[];
}
