/** What a burner draws. */
import type { Burner } from '../kitchen/kitchen.ts';

/** Share of its rated power that a burner needs to keep a pan simmering. Common practice, without a source. */
export const SIMMER_SHARE = 0.35;

/** Draw of a burner, W, rounded up. */
export function burnerWatts(burner: Burner, heat: 'full' | 'simmer'): number {
  return Math.ceil(heat === 'full' ? burner.powerW : burner.powerW * SIMMER_SHARE);
}
