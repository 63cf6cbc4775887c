/** What a burner draws. */
import type { Burner } from '../kitchen/kitchen.ts';

/**
 * Share of its rated power that is kept free for a burner that simmers: it is switched in turns, and may draw more for a moment
 * than its mean. Common practice, without a source; what it uses is reckoned from the pan (`water/simmer.ts`).
 */
export const SIMMER_SHARE = 0.35;

/** What is kept free for a burner within the limits of power, W, rounded up. */
export function burnerWatts(burner: Burner, heat: 'full' | 'simmer'): number {
  return Math.ceil(heat === 'full' ? burner.powerW : burner.powerW * SIMMER_SHARE);
}
