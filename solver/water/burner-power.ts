/** What is kept free for a burner within the limits of power. */
import type { Burner, Kitchen } from '../kitchen/kitchen.ts';
import { mostKeepDrawW } from './simmer.ts';

/**
 * Share of its rated power that is kept free for a burner that simmers: it is switched in turns, and may draw more for a moment
 * than its mean. Common practice, without a source; what it uses is reckoned from the pan (`simmer.ts`).
 */
export const SIMMER_SHARE = 0.35;

/**
 * What is kept free for a burner, W, rounded up: its rated power, or for a simmer a share of it, and no less than the mean draw under the
 * widest open pan that fits.
 */
export function burnerWatts(kitchen: Kitchen, burner: Burner, heat: 'full' | 'simmer'): number {
  if (heat === 'full') return Math.ceil(burner.powerW);
  return Math.ceil(Math.max(burner.powerW * SIMMER_SHARE, mostKeepDrawW(kitchen, burner, false, 'simmer')));
}
