/**
 * How often rules are asked that only add strength: every time while they often say something, the more seldom the less they say, and at
 * least once in sixteen times, so that they are heard again where they have become useful.
 *
 * Lengths that can grow, as of a thing held until the next place is free, leave such rules with little to say. It is counted, never timed.
 */

/** Rules are asked every time while they say something in more than so many of the times (measured on shops, with and without blocking). */
const WORTH = 0.06;
const LONGEST_REST = 16;
/** Times asked after which both counts are halved, so that what was long ago counts less. */
const MEMORY = 1000;

export class Seldom {
  private asked = 1;
  private said = 1;
  private left = 0;

  /** Whether they are to be asked this time; then `tell` what came of it. */
  due(): boolean {
    if (--this.left > 0) return false;
    this.left = Math.max(1, Math.min(LONGEST_REST, Math.floor((WORTH * this.asked) / this.said)));
    return true;
  }

  /** @param something whether they said something when they were asked */
  tell(something: boolean): void {
    this.asked++;
    if (something) this.said++;
    if (this.asked < MEMORY) return;
    this.asked /= 2;
    this.said /= 2;
  }
}
