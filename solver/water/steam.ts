/** Steam over a boiling pot: the water it takes, the heat, and whether the pot can steam for so long. */
import { boiledAwayMl } from './boil-model.ts';
import type { Pot } from './pot.ts';
import { potLoss, type Surroundings } from './pot-loss.ts';
import { latentHeat } from './properties.ts';

export interface Steaming {
  /** Water that leaves the pot, mL: what condenses on the food runs back only where the tier drains, so it counts. */
  readonly waterMl: number;
  /** Heat given to the pot, kJ. */
  readonly inKJ: number;
  /** Whether the least volume is still in the pot at the end. */
  readonly lasts: boolean;
  /** Longest it can steam before the water falls to the least, minutes; `Infinity` where nothing boils away. */
  readonly longestMinutes: number;
}

/**
 * Steaming over a pot that boils.
 *
 * @param ml water in the pot when the steaming begins, mL
 * @param leastMl least that must stay in it, mL
 * @param heatW heat given to the pot, W
 * @see HEAT_BALANCE in sources.ts
 */
export function steam(
  pot: Pot,
  ml: number,
  leastMl: number,
  heatW: number,
  minutes: number,
  around: Surroundings,
): Steaming {
  // The tiers have a lid: what is given beyond the losses leaves as steam between them.
  const perMinute = boiledAwayMl(pot, heatW, 1, around, true);
  const spare = Math.max(0, ml - leastMl);
  const longestMinutes = perMinute === 0 ? Infinity : spare / perMinute;
  return {
    waterMl: perMinute * minutes,
    inKJ: (heatW * minutes * 60) / 1000,
    lasts: minutes <= longestMinutes,
    longestMinutes,
  };
}

/**
 * Heat that must be given to a pot so that enough steam rises for food in the tiers, W.
 *
 * @param foodKJ heat that the food takes
 * @param minutes in which it is to take it
 */
export function steamHeatW(pot: Pot, foodKJ: number, minutes: number, around: Surroundings): number {
  return potLoss(pot, around.boilsC, around, true, true).watts + (foodKJ * 1000) / (minutes * 60);
}

/** Steam that condenses on food to give it its heat, mL of water. */
export const condensedMl = (foodKJ: number, around: Surroundings): number =>
  (foodKJ / latentHeat(around.boilsC)) * 1000;
