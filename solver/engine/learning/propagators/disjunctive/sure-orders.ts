/**
 * Which tasks of a list are surely before which, as rows of bits that follow the order literals along the trail.
 *
 * Of a list of 87 tasks a row is three words, so that "which of these are not yet after i" is three operations, where asking the
 * literals one by one would be 87 look-ups.
 */
import type { Trail } from '../../trail.ts';

export class SureOrders {
  /** Words of a row. */
  readonly words: number;
  /** By direction: row k, at k · words, has a bit for each task that k is surely before. */
  readonly after: readonly [Int32Array, Int32Array];

  private readonly trail: Trail;
  private readonly count: number;
  /** literals[k · count + l]: true when k is before l; never both of a pair. */
  private readonly literals: Int32Array;
  /** Pairs that became sure above level 0, and on which level, oldest first. */
  private readonly pairs: Int32Array;
  private readonly levels: Int32Array;
  private used = 0;

  constructor(trail: Trail, count: number, literals: Int32Array) {
    this.trail = trail;
    this.count = count;
    this.literals = literals;
    this.words = (count + 31) >> 5;
    this.after = [new Int32Array(count * this.words), new Int32Array(count * this.words)];
    this.pairs = new Int32Array(count * count);
    this.levels = new Int32Array(count * count);
    literals.forEach((literal, pair) => {
      if (literal === trail.alwaysTrue) this.flip(pair);
    });
  }

  /** The literal that k is before l, in the time of a direction. */
  literal(direction: number, k: number, l: number): number {
    return this.literals[direction === 0 ? k * this.count + l : l * this.count + k]!;
  }

  /** (slot, pair) for each literal that may become true. */
  watches(): (readonly [number, number])[] {
    const { trail } = this;
    const watches: (readonly [number, number])[] = [];
    this.literals.forEach((literal, pair) => {
      if (literal !== 0 && literal !== trail.alwaysTrue && literal !== trail.alwaysFalse)
        watches.push([trail.slotOf(literal), pair]);
    });
    return watches;
  }

  /** Takes in a pair k · count + l when its literal is true. */
  note(pair: number): void {
    if (!this.trail.isTrue(this.literals[pair]!)) return;
    const k = (pair / this.count) | 0;
    const l = pair - k * this.count;
    if (((this.after[0][k * this.words + (l >> 5)]! >>> (l & 31)) & 1) !== 0) return;
    this.flip(pair);
    if (this.trail.level === 0) return;
    this.pairs[this.used] = pair;
    this.levels[this.used++] = this.trail.level;
  }

  /** Takes in that k is before l, in the time of a direction, when that is true. */
  takeIn(direction: number, k: number, l: number): void {
    this.note(direction === 0 ? k * this.count + l : l * this.count + k);
  }

  /** Forgets what became sure above a level. */
  backtrack(level: number): void {
    while (this.used > 0 && this.levels[this.used - 1]! > level) this.flip(this.pairs[--this.used]!);
  }

  private flip(pair: number): void {
    const k = (pair / this.count) | 0;
    const l = pair - k * this.count;
    this.after[0][k * this.words + (l >> 5)]! ^= 1 << (l & 31);
    this.after[1][l * this.words + (k >> 5)]! ^= 1 << (k & 31);
  }
}
