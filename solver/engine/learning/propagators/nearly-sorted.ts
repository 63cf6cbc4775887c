/**
 * Sorts the first tasks of a list by a key, in place, by insertion: a list nearly in order costs one pass.
 *
 * @param key by task
 * @param count how many of the list
 */
export function sortNearlySorted(list: Int32Array, key: Int32Array, count = list.length): void {
  for (let i = 1; i < count; i++) {
    const k = list[i]!;
    const value = key[k]!;
    let j = i;
    while (j > 0 && key[list[j - 1]!]! > value) {
      list[j] = list[j - 1]!;
      j--;
    }
    list[j] = k;
  }
}
