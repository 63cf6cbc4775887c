/** The decisions of a dive, newest last, each with the place of the trail before it. Levels count from 1; 0 is before all decisions. */
import type { Trail } from '../propagation/trail.ts';

/** An option of a choice was taken: choice, option. */
export const OPTION = 0;
/** A slot was raised to fix an endpoint: slot, value. */
export const BOUND = 1;
/** A demand was served: number of the candidate. */
export const DEMAND = 2;

export class Decisions {
  /** Number of decisions in force. */
  depth = 0;
  private mark = new Int32Array(256);
  private kinds = new Int32Array(256);
  private first = new Int32Array(256);
  private second = new Int32Array(256);
  private base = 0;

  constructor(private readonly trail: Trail) {}

  /** Begins anew on top of what the trail holds now. */
  begin(): void {
    this.depth = 0;
    this.base = this.trail.mark();
  }

  /** Takes back everything since `begin`. */
  unwind(): void {
    this.trail.undo(this.base);
    this.depth = 0;
  }

  push(kind: number, a: number, b: number): void {
    if (this.depth === this.mark.length) this.grow();
    this.mark[this.depth] = this.trail.mark();
    this.kinds[this.depth] = kind;
    this.first[this.depth] = a;
    this.second[this.depth] = b;
    this.depth++;
  }

  /** Undoes the newest decision. */
  pop(): void {
    this.undoTo(this.depth);
  }

  /**
   * Undoes the decision of the level and all newer ones; its parts can still be read until the next `push`.
   * @throws Error where there is no such decision (a promise of our own broken)
   */
  undoTo(level: number): void {
    if (level < 1 || level > this.depth) throw new Error(`no decision ${level} among ${this.depth}`);
    this.depth = level - 1;
    this.trail.undo(this.mark[this.depth] as number);
  }

  kind(level: number): number {
    return this.kinds[level - 1] as number;
  }
  a(level: number): number {
    return this.first[level - 1] as number;
  }
  b(level: number): number {
    return this.second[level - 1] as number;
  }

  /** Level of the decision in force when the cell last changed, 0 when it did not since `begin`. */
  levelOfChange(address: number): number {
    return this.levelOf(this.trail.lastChange(address));
  }

  /** The newer of two cells' levels of change. */
  levelOfEither(a: number, b: number): number {
    return this.levelOf(Math.max(this.trail.lastChange(a), this.trail.lastChange(b)));
  }

  /** What the cell held before the decision of the level. */
  valueBefore(level: number, address: number): number {
    return this.trail.valueAt(address, this.mark[level - 1] as number);
  }

  private levelOf(at: number): number {
    if (at < this.base) return 0;
    let level = this.depth;
    while (level > 0 && (this.mark[level - 1] as number) > at) level--;
    return level;
  }

  private grow(): void {
    const larger = (old: Int32Array): Int32Array<ArrayBuffer> => {
      const next = new Int32Array(old.length * 2);
      next.set(old);
      return next;
    };
    this.mark = larger(this.mark);
    this.kinds = larger(this.kinds);
    this.first = larger(this.first);
    this.second = larger(this.second);
  }
}
