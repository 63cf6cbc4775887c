/**
 * When a search begins anew: after so many conflicts by the Luby sequence.
 *
 * Source: Luby, Sinclair, Zuckerman (1993), Optimal speedup of Las Vegas algorithms.
 */

const RESTART_UNIT = 100;

/** A sequence of restarts that outlives one call. */
export class Restarts {
  private run = 0;
  /** Conflicts left until the next one. */
  left = RESTART_UNIT;

  /** Begins the next run; returns its conflicts. */
  next(): number {
    this.left = RESTART_UNIT * luby(++this.run);
    return this.left;
  }
}

/** The Luby sequence 1 1 2 1 1 2 4 …, from i = 1. */
export function luby(i: number): number {
  let k = i;
  for (;;) {
    let size = 1;
    while (size - 1 < k) size *= 2;
    // Now size − 1 ≥ k.
    if (size - 1 === k) return size / 2;
    k -= size / 2 - 1;
  }
}
