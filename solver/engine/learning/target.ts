/**
 * Where between bound and value to look for the next plan. A tight target makes propagation strong: it is often met or refuted long
 * before one step below the best plan is.
 *
 * The first target is half-way. One that is neither met nor refuted within its conflicts is followed by others, nearer to the value and
 * nearer to the bound in turn, with ever more conflicts, and less of the work goes to targets.
 *
 * Source: destructive improvement in both directions, Klein & Scholl (1999).
 */
import { Restarts } from './restarts.ts';
import type { Slice, Step } from './proof.ts';

/** Conflicts of the first target, and how they grow once all places have been tried. */
const CONFLICTS = 1500;
const GROWTH = 1.5;
/** Places of targets between bound (0) and value (1). */
const PLACES = [0.5, 0.8, 0.2, 0.95, 0] as const;

export class Target {
  private place = 0;
  private conflicts = CONFLICTS;
  private left = CONFLICTS;
  private asked = -1;
  private failures = 0;
  private restarts = new Restarts();

  /** Work for targets, as a share of all other; boundless while they are met or refuted. */
  get share(): number {
    return this.failures === 0 ? Infinity : 1 / (1 + this.failures);
  }

  /**
   * Asks for a plan at the target for one slice.
   *
   * @param bound the tier's bound, at least two below the value
   * @param aim asks about a target within conflicts
   * @param conflicts all conflicts so far
   */
  ask(
    bound: number,
    value: number,
    slice: Slice,
    aim: (target: number, slice: Slice, restarts: Restarts) => Step,
    conflicts: () => number,
  ): Step {
    const target = Math.min(value - 1, bound + Math.floor((value - 1 - bound) * PLACES[this.place]!));
    if (target !== this.asked) this.renew(target);
    const before = conflicts();
    const step = aim(target, { ...slice, conflicts: Math.min(this.left, slice.conflicts) }, this.restarts);
    this.left -= conflicts() - before;
    if (step === 'spent') {
      if (this.left <= 0) this.next();
    } else if (step !== 'stopped') this.failures = 0;
    return step;
  }

  private renew(target: number): void {
    this.asked = target;
    this.left = this.conflicts;
    this.restarts = new Restarts();
  }

  private next(): void {
    this.failures++;
    this.asked = -1;
    this.place = (this.place + 1) % PLACES.length;
    if (this.place === 0) this.conflicts *= GROWTH;
  }
}
