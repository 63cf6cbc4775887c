/**
 * Seeded chance for search, the same on every machine.
 *
 * @see source: the public-domain mixing function "mulberry32" (T. Ettinger, 2017)
 */
export class Random {
  private state: number;

  /** @param seed any 32-bit integer */
  constructor(seed: number) {
    this.state = seed | 0;
  }

  /** The next 32 bits as an unsigned integer. */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) | 0;
    let x = this.state;
    x = Math.imul(x ^ (x >>> 15), x | 1);
    x ^= x + Math.imul(x ^ (x >>> 7), x | 61);
    return (x ^ (x >>> 14)) >>> 0;
  }

  /** A whole number from 0 to `bound − 1`; `bound` from 1 to 2^31. */
  below(bound: number): number {
    // Kept as a float otherwise, in whatever object it is put.
    return (this.next() % bound) | 0;
  }

  /** True in `percent` of 100 cases. */
  percent(percent: number): boolean {
    return this.below(100) < percent;
  }
}
