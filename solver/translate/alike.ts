/** Options of a choice that lead to the same value, taken together: one constraint for all of them. */
import type { Literal } from '../engine/problem.ts';
import { picks } from './problem-builder.ts';

export interface Alike {
  readonly value: number;
  /** The choice takes one of these options; empty: whatever it takes. */
  readonly literals: readonly Literal[];
}

/**
 * @param things what each option stands for
 * @param choice null: nothing to choose
 * @param counts options that do not count are forbidden elsewhere
 * @param valueOf asked with undefined where no option stands for anything
 * @returns one entry for each value, in the order of the options
 */
export function alike<T>(
  things: readonly (T | undefined)[],
  choice: string | null,
  counts: (thing: T) => boolean,
  valueOf: (thing: T | undefined) => number,
): readonly Alike[] {
  const byValue = new Map<number, number[]>();
  things.forEach((thing, option) => {
    if (thing === undefined || !counts(thing)) return;
    const value = valueOf(thing);
    byValue.set(value, [...(byValue.get(value) ?? []), option]);
  });
  if (byValue.size === 0 && things.length === 0) return [{ value: valueOf(undefined), literals: [] }];
  return [...byValue].map(([value, options]) => ({
    value,
    literals: byValue.size === 1 ? [] : picks(choice, ...options),
  }));
}
