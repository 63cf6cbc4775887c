/**
 * A smallest clash: of items that cannot all be kept, some that cannot be kept together while any fewer of them can.
 *
 * Notation: B is kept for now, C is being divided, and B ∪ C is known to clash. C is halved; what is needed of its second half
 * beside the whole first is found, then what is needed of the first half beside that. Of k members among n about 2k·log₂(n/k) + 2k
 * sets are asked about.
 *
 * Example: of { a, b, c, d } where b and d clash, the answer is [b, d].
 *
 * Source: Junker, "QuickXplain: preferred explanations and relaxations for over-constrained problems" (AAAI 2004).
 */
export type Verdict = 'clash' | 'fits' | 'unknown';

export interface SmallestClash<T> {
  /** They clash together, always: that is never guessed. Empty where what is not among the items clashes by itself. */
  readonly members: readonly T[];
  /** For each set without one member it was shown that it fits; false where one could not be decided. */
  readonly minimal: boolean;
}

/**
 * @param items known to clash together; those that are named first are rather in the answer
 * @param test tells whether a set of items can be kept together. `clash` for a set means it for every larger set. A set that is
 *   `unknown` counts as one that fits, so the answer may then be larger than it need be
 */
export function smallestClash<T>(items: readonly T[], test: (kept: readonly T[]) => Verdict): SmallestClash<T> {
  const members = test([]) === 'clash' ? [] : divide([], false, items, test);
  const minimal = members.every((member) => test(members.filter((other) => other !== member)) === 'fits');
  return { members: items.filter((item) => members.includes(item)), minimal };
}

/** What is needed of C beside B. `grown`: B is larger than it was when it last was known to fit. */
function divide<T>(
  kept: readonly T[],
  grown: boolean,
  open: readonly T[],
  test: (kept: readonly T[]) => Verdict,
): readonly T[] {
  if (grown && test(kept) === 'clash') return [];
  if (open.length <= 1) return open;
  const half = open.length >> 1;
  const first = open.slice(0, half);
  const second = open.slice(half);
  const ofSecond = divide([...kept, ...first], true, second, test);
  const ofFirst = divide([...kept, ...ofSecond], ofSecond.length > 0, first, test);
  return [...ofFirst, ...ofSecond];
}
