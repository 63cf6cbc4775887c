/** What a burner draws to keep a pan at the boil, or just below it: the pan's losses there, over the burner's efficiency. */
import { panFits, type Burner, type Kitchen, type Pan } from '../kitchen/kitchen.ts';
import { burnerEfficiency } from './heat-sources.ts';
import { potOf } from './pot.ts';
import { potLoss, surroundingsOf } from './pot-loss.ts';
import { remembered } from './remembered.ts';

/** A simmer is so much below the boil, K. Common practice, without a source. */
export const SIMMER_BELOW_K = 5;

export type Kept = 'boil' | 'simmer';

/** Temperature at which a pan is kept, °C. */
export const keptC = (kitchen: Kitchen, kept: Kept): number =>
  surroundingsOf(kitchen).boilsC - (kept === 'boil' ? 0 : SIMMER_BELOW_K);

/**
 * Mean draw of a burner that keeps a pan just at the boil or at a simmer, W; never more than its rated power.
 * @param lidded the lid is on
 */
export function keepDrawW(kitchen: Kitchen, burner: Burner, pan: Pan, lidded: boolean, kept: Kept): number {
  const watts = remembered(
    kitchen,
    pan,
    `kept ${kept} ${lidded}`,
    () => potLoss(potOf(pan), keptC(kitchen, kept), surroundingsOf(kitchen), lidded, true).watts,
  );
  return Math.min(burner.powerW, watts / burnerEfficiency(kitchen.hob, burner));
}

/** The same for the pan of its size that loses most, W: where the pan is still to be chosen; 0 where no pan is of its size. */
export function mostKeepDrawW(
  kitchen: Kitchen,
  burner: Burner,
  lidded: boolean,
  kept: Kept,
  pans: readonly Pan[] = kitchen.pans,
): number {
  return Math.max(
    0,
    ...pans
      .filter((pan) => panFits(burner, pan))
      .map((pan) => keepDrawW(kitchen, burner, pan, lidded && pan.lid, kept)),
  );
}
