/** Numbers of a kitchen that take long to reckon and are asked for again and again: remembered as long as its document is. */
import type { Kitchen } from '../kitchen/kitchen.ts';

const known = new WeakMap<Kitchen, Map<string, number>>();

/**
 * A number of a kitchen, reckoned once.
 *
 * @param kitchen a document that does not change
 * @param on everything else that the number hangs on
 */
export function remembered(kitchen: Kitchen, on: readonly unknown[], reckon: () => number): number {
  let numbers = known.get(kitchen);
  if (numbers === undefined) known.set(kitchen, (numbers = new Map<string, number>()));
  const key = JSON.stringify(on);
  const before = numbers.get(key);
  if (before !== undefined) return before;
  const value = reckon();
  numbers.set(key, value);
  return value;
}
