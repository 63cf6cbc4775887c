/**
 * Which bound literals to decide next: exponentially decaying activity of each ⟦x ≥ v⟧, kept in a binary heap.
 *
 * Only literals that have taken part in a conflict enter the heap; before that the core branches by earliest start. A literal that
 * was found decided and taken out comes back when the level at which it was taken out is undone.
 *
 * Source: Moskewicz et al. (2001); Eén & Sörensson (2003) for the growing increment. Only + and × on doubles, so every machine agrees.
 */
import { widened } from './widened.ts';
import type { Trail } from './trail.ts';

const LARGEST = 1e100;

export class Activity {
  private readonly trail: Trail;
  private readonly growth: number;
  private score = new Float64Array(0);
  private place = new Int32Array(0);
  private heap = new Int32Array(0);
  private size = 0;
  private increment = 1;
  /** Literal numbers taken out, with the level at which that happened. */
  private taken = new Int32Array(0);
  private takenLevel = new Int32Array(0);
  private takenCount = 0;
  private slotOfNumber = new Int32Array(0);

  /** @param growth how much each conflict counts beside the one before it, above 1 */
  constructor(trail: Trail, growth: number) {
    this.trail = trail;
    this.growth = growth;
  }

  seal(): void {
    const count = this.trail.literals;
    const { score, place, heap, taken, takenLevel } = this;
    this.score = new Float64Array(count);
    this.score.set(score);
    this.place = new Int32Array(count).fill(-1);
    this.place.set(place);
    this.heap = widened(heap, count);
    this.taken = widened(taken, count);
    this.takenLevel = widened(takenLevel, count);
    this.slotOfNumber = new Int32Array(count);
    for (let x = 0; x < this.trail.variables; x++) {
      const from = this.trail.literalBase[2 * x]!;
      const until = this.trail.literalBase[2 * x + 1]!;
      for (let n = from; n < until; n++) this.slotOfNumber[n] = 2 * x;
    }
  }

  /** Small first scores from a seed (xorshift), so that ties break differently. */
  sprinkle(seed: number): void {
    let state = (seed ^ 0x9e3779b9) | 0 || 1;
    for (let n = 0; n < this.score.length; n++) {
      state ^= state << 13;
      state ^= state >>> 17;
      state ^= state << 5;
      this.score[n] = (state >>> 8) * (1e-4 / 0x1000000);
    }
  }

  /** The number of ⟦x ≥ v⟧ behind (slot, value) or its negation. */
  private numberOf(slot: number, value: number): number {
    const even = slot & ~1;
    const v = even === slot ? value : 1 - value;
    return this.trail.literalBase[even]! + v - this.trail.initial[even]! - 1;
  }

  /** A literal took part in a conflict. */
  bump(slot: number, value: number, factor: number): void {
    const n = this.numberOf(slot, value);
    const score = this.score[n]! + this.increment * factor;
    this.score[n] = score;
    if (score > LARGEST) this.rescale();
    if (this.place[n]! >= 0) this.up(this.place[n]!);
    else this.insert(n);
  }

  decay(): void {
    this.increment *= this.growth;
  }

  private rescale(): void {
    for (let n = 0; n < this.score.length; n++) this.score[n]! *= 1 / LARGEST;
    this.increment *= 1 / LARGEST;
  }

  /** Forgets all activity, so that a new objective starts fresh. */
  reset(): void {
    this.score.fill(0);
    this.place.fill(-1);
    this.size = 0;
    this.takenCount = 0;
    this.increment = 1;
  }

  /**
   * Takes out the most active undecided literal.
   * @returns its ⟦x ≥ v⟧ as the literal (2x, v) packed, or 0 when the heap has none (0 is never a literal of an undecided variable)
   */
  next(): number {
    const trail = this.trail;
    while (this.size > 0) {
      const n = this.heap[0]!;
      this.size--;
      this.place[n] = -1;
      if (this.size > 0) {
        this.heap[0] = this.heap[this.size]!;
        this.place[this.heap[0]] = 0;
        this.down(0);
      }
      const slot = this.slotOfNumber[n]!;
      const value = n - trail.literalBase[slot]! + trail.initial[slot]! + 1;
      // Facts never come back.
      if (trail.root[slot]! >= value || trail.root[slot | 1]! >= 1 - value) continue;
      this.taken[this.takenCount] = n;
      this.takenLevel[this.takenCount++] = trail.level;
      if (trail.bound[slot]! < value && trail.bound[slot | 1]! < 1 - value) return trail.literal(slot, value);
    }
    return 0;
  }

  /** Brings back what was taken out above a level; the literal decided at the next level is among what its parent took. */
  restore(level: number): void {
    while (this.takenCount > 0 && this.takenLevel[this.takenCount - 1]! >= level) {
      const n = this.taken[--this.takenCount]!;
      if (this.place[n]! < 0) this.insert(n);
    }
  }

  private insert(n: number): void {
    this.heap[this.size] = n;
    this.place[n] = this.size;
    this.up(this.size++);
  }

  /** Higher score first, ties by number. */
  private before(a: number, b: number): boolean {
    const d = this.score[a]! - this.score[b]!;
    return d > 0 || (d === 0 && a < b);
  }

  private up(at: number): void {
    const n = this.heap[at]!;
    let i = at;
    while (i > 0) {
      const parent = (i - 1) >> 1;
      const m = this.heap[parent]!;
      if (!this.before(n, m)) break;
      this.heap[i] = m;
      this.place[m] = i;
      i = parent;
    }
    this.heap[i] = n;
    this.place[n] = i;
  }

  private down(at: number): void {
    const n = this.heap[at]!;
    let i = at;
    for (;;) {
      let child = 2 * i + 1;
      if (child >= this.size) break;
      if (child + 1 < this.size && this.before(this.heap[child + 1]!, this.heap[child]!)) child++;
      const m = this.heap[child]!;
      if (!this.before(m, n)) break;
      this.heap[i] = m;
      this.place[m] = i;
      i = child;
    }
    this.heap[i] = n;
    this.place[n] = i;
  }
}
