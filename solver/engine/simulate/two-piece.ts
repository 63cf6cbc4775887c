/**
 * Chance for lengths: a two-piece triangle, from "as early as" over "as planned" to "as late as".
 *
 * The side is drawn in proportion to its width; the distance from the peak is the width times the lesser of two even draws, whose
 * density falls evenly to nothing. Both pieces together have the density of the triangular distribution with that peak. Whole
 * numbers throughout, so that a seed gives the same draws everywhere.
 *
 * @see source: the triangular distribution, e.g. Johnson, Kotz, Balakrishnan, Continuous Univariate Distributions 2, chapter 26
 */
import type { Random } from '../random.ts';

/** Parts of a minute that simulated times are counted in. */
export const TICKS = 64;

/** Draws are of this many even steps. */
const STEPS = 65_536;

/**
 * @param early most that it can be less than planned, ticks, whole, 0–1,000,000
 * @param late most that it can be more than planned, ticks, whole, 0–1,000,000
 * @returns ticks more (or, negative, less) than planned
 */
export function twoPiece(random: Random, early: number, late: number): number {
  const width = early + late;
  if (width === 0) return 0;
  const isLate = random.below(width) >= early;
  const bits = random.next();
  const least = Math.min(bits & 0xffff, bits >>> 16);
  const side = isLate ? late : early;
  const distance = Math.floor((side * least + STEPS / 2) / STEPS);
  return isLate ? distance : -distance;
}
