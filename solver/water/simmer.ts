/** What a burner draws to keep a pan at the boil: the pan's losses there, over the burner's efficiency. */
import { panFits, type Burner, type Kitchen, type Pan } from '../kitchen/kitchen.ts';
import { keepBoiling } from './boil-model.ts';
import { burnerEfficiency } from './heat-sources.ts';
import { potOf } from './pot.ts';
import { surroundingsOf } from './pot-loss.ts';

/**
 * Mean draw of a burner that keeps a pan just at the boil, W; never more than its rated power.
 * @param lidded the lid is on
 */
export function simmerDrawW(kitchen: Kitchen, burner: Burner, pan: Pan, lidded: boolean): number {
  const { heatW } = keepBoiling(potOf(pan), surroundingsOf(kitchen), lidded);
  return Math.min(burner.powerW, heatW / burnerEfficiency(kitchen.hob, burner));
}

/** The same for the pan of its size that loses most, W: where the pan is still to be chosen; 0 where no pan is of its size. */
export function mostSimmerDrawW(
  kitchen: Kitchen,
  burner: Burner,
  lidded: boolean,
  pans: readonly Pan[] = kitchen.pans,
): number {
  return Math.max(
    0,
    ...pans.filter((pan) => panFits(burner, pan)).map((pan) => simmerDrawW(kitchen, burner, pan, lidded && pan.lid)),
  );
}
