/** What the evolutions of projects share: how parents are chosen, who makes room, and when two lists are one. */
import type { Random } from '../random.ts';

/** The better of two members drawn, the first where they are equal. @param values of the members, less is better */
export function chooseParent(values: Float64Array, size: number, random: Random): number {
  const a = random.below(size);
  const b = random.below(size);
  return values[a]! <= values[b]! ? a : b;
}

/** The first of the worst members. */
export function worstOf(values: Float64Array, size: number): number {
  let worst = 0;
  for (let k = 1; k < size; k++) if (values[k]! > values[worst]!) worst = k;
  return worst;
}

/** Whether two lists of the same length are the same. */
export function sameList(a: Int32Array, b: Int32Array): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}
