/**
 * When the work of each group usually starts: where work that a plan leaves out would go.
 *
 * @param groups group of each task
 * @param starts start of each task; negative: it is not there
 * @returns by task the mean start of the tasks of its group that are there; 0 where none is
 */
export function usualStarts(groups: ArrayLike<number>, starts: ArrayLike<number>): Float64Array {
  const sums = new Map<number, { sum: number; count: number }>();
  for (let task = 0; task < groups.length; task++) {
    const start = starts[task] as number;
    if (start < 0) continue;
    const entry = sums.get(groups[task] as number) ?? { sum: 0, count: 0 };
    sums.set(groups[task] as number, entry);
    entry.sum += start;
    entry.count++;
  }
  return Float64Array.from(groups, (of) => {
    const entry = sums.get(of);
    return entry === undefined ? 0 : entry.sum / entry.count;
  });
}
