/** Many short lists of integers in two flat arrays: list `i` is `items[start[i]] … items[start[i + 1] − 1]`. */
export interface SparseLists {
  readonly start: Int32Array;
  readonly items: Int32Array;
}

/** Packs lists of integers; the order of lists and items is kept. */
export function packLists(lists: readonly (readonly number[])[]): SparseLists {
  const start = new Int32Array(lists.length + 1);
  let count = 0;
  lists.forEach((list, index) => {
    count += list.length;
    start[index + 1] = count;
  });
  const items = new Int32Array(count);
  lists.forEach((list, index) => items.set(list, start[index]));
  return { start, items };
}

/** `count` empty lists to be filled. */
export function emptyLists(count: number): number[][] {
  return Array.from({ length: count }, () => []);
}

/**
 * The places of each key: list `k` has, ascending, every index `i` with `keys[i] = k`.
 *
 * @param count number of keys, which run from 0
 */
export function placesOf(count: number, keys: ArrayLike<number>): SparseLists {
  const start = new Int32Array(count + 1);
  for (let i = 0; i < keys.length; i++) start[(keys[i] as number) + 1] = (start[(keys[i] as number) + 1] as number) + 1;
  for (let k = 0; k < count; k++) start[k + 1] = (start[k + 1] as number) + (start[k] as number);
  const next = start.slice();
  const items = new Int32Array(keys.length);
  for (let i = 0; i < keys.length; i++) {
    const at = next[keys[i] as number] as number;
    next[keys[i] as number] = at + 1;
    items[at] = i;
  }
  return { start, items };
}

/**
 * The lists seen from their items: list `i` has, ascending, every list in which `i` was.
 *
 * @param count items run from 0 to `count − 1`
 */
export function turnedAround({ start, items }: SparseLists, count: number): SparseLists {
  const list = new Int32Array(items.length);
  for (let k = 0; k < start.length - 1; k++) list.fill(k, start[k], start[k + 1]);
  const places = placesOf(count, items);
  return { start: places.start, items: places.items.map((place) => list[place] as number) };
}
