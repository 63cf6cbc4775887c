/** Seeded chance for tests: the same seed gives the same draws on any machine. */
export interface Seeded {
  /** A number in [0, 1). */
  readonly next: () => number;
  /** An integer from `least` to `most`, both included. */
  readonly int: (least: number, most: number) => number;
  /** True with probability `p`. */
  readonly chance: (p: number) => boolean;
  /** One entry of a list that is not empty. */
  readonly pick: <T>(list: readonly T[]) => T;
  /** A new list with the same entries in random order. */
  readonly shuffle: <T>(list: readonly T[]) => T[];
  /** `count` different entries, in random order; all of them where the list is shorter. */
  readonly sample: <T>(list: readonly T[], count: number) => T[];
}

/**
 * Opens a stream of seeded chance.
 *
 * @param seed any integer; its low 32 bits are used
 * @returns the draws, each advancing the same stream
 * @see source: the public-domain mixing function "mulberry32" (T. Ettinger, 2017)
 */
export function seeded(seed: number): Seeded {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const int = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1));
  const shuffle = <T>(list: readonly T[]): T[] => {
    const mixed = [...list];
    for (let i = mixed.length - 1; i > 0; i -= 1) {
      const j = int(0, i);
      const kept = mixed[i] as T;
      mixed[i] = mixed[j] as T;
      mixed[j] = kept;
    }
    return mixed;
  };
  return {
    next,
    int,
    chance: (p) => next() < p,
    pick: (list) => {
      if (list.length === 0) throw new Error('nothing to pick from');
      return list[int(0, list.length - 1)] as (typeof list)[number];
    },
    shuffle,
    sample: (list, count) => shuffle(list).slice(0, count),
  };
}
