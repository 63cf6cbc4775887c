/** Numbers of a kitchen that take long to reckon and are asked for again and again: remembered as long as its document is. */
import type { Kitchen } from '../kitchen/kitchen.ts';

const known = new WeakMap<Kitchen, WeakMap<object, Map<string, number>>>();

/**
 * A number of a thing in a kitchen, reckoned once.
 *
 * @param kitchen a document that does not change
 * @param thing what the number is of, such as one of its pans; it does not change either
 * @param on everything else that the number hangs on
 */
export function remembered(kitchen: Kitchen, thing: object, on: string, reckon: () => number): number {
  let things = known.get(kitchen);
  if (things === undefined) known.set(kitchen, (things = new WeakMap<object, Map<string, number>>()));
  let numbers = things.get(thing);
  if (numbers === undefined) things.set(thing, (numbers = new Map<string, number>()));
  const before = numbers.get(on);
  if (before !== undefined) return before;
  const value = reckon();
  numbers.set(on, value);
  return value;
}
