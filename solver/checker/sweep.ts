/** Sums over time: where what is held at once exceeds what there is. */

interface Held {
  readonly from: number;
  readonly until: number;
  readonly amount: number;
}

/**
 * The moments at which a sum first rises above a capacity, one for each time that it does.
 *
 * @param held amounts over [from, until)
 * @returns the minute, the sum there, and all that is held then
 */
export function firstOver<T extends Held>(
  held: readonly T[],
  capacity: number,
): readonly { readonly minute: number; readonly sum: number; readonly together: readonly T[] }[] {
  const minutes = [...new Set(held.map(({ from }) => from))].sort((a, b) => a - b);
  const at = (minute: number): readonly T[] => held.filter(({ from, until }) => from <= minute && minute < until);
  return minutes.flatMap((minute) => {
    const together = at(minute);
    const sum = together.reduce((total, { amount }) => total + amount, 0);
    if (sum <= capacity) return [];
    const fresh = together.filter(({ from }) => from === minute);
    return fresh.length === 0 ? [] : [{ minute, sum, together }];
  });
}
