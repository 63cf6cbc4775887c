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
