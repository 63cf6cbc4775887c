/** Food into boiling water: how far it falls, and how long until it boils again. */
import type { Pot } from './pot.ts';
import { potLoss, type Surroundings } from './pot-loss.ts';
import { massKg, specificHeat } from './properties.ts';

export interface Food {
  readonly massG: number;
  /** kJ/(kg·K). */
  readonly specificHeat: number;
  readonly celsius: number;
}

export interface Dip {
  /** Temperature of water, metal and food were they mixed at once: the lowest that the water can fall to, °C. */
  readonly lowestC: number;
  /** Minutes until all of it is at the boil again; `Infinity`: never. */
  readonly recoveryMinutes: number;
  /** Heat that the food takes, kJ. */
  readonly foodKJ: number;
}

/**
 * The dip when food goes into boiling water. Mixed at once: real food warms slower, so the water falls less far and for longer,
 * and the heat to be made good is the same.
 *
 * @param ml water in the pot, measured cold, mL
 * @param heatW heat given to the pot, W
 * @see HEAT_BALANCE in sources.ts
 */
export function dipOf(pot: Pot, ml: number, food: Food, heatW: number, around: Surroundings, lidded: boolean): Dip {
  const { boilsC } = around;
  const waterKg = massKg(ml, around.tapC);
  const foodKJPerK = (food.massG / 1000) * food.specificHeat;
  const foodKJ = foodKJPerK * Math.max(0, boilsC - food.celsius);
  const kJPerK = (celsius: number): number => waterKg * specificHeat(celsius) + pot.metalKJPerK;
  const hot = kJPerK(boilsC);
  const lowestC =
    hot + foodKJPerK === 0 ? boilsC : (hot * boilsC + foodKJPerK * Math.min(food.celsius, boilsC)) / (hot + foodKJPerK);
  const net = heatW - potLoss(pot, boilsC, around, lidded, true).watts;
  return { lowestC, recoveryMinutes: foodKJ === 0 ? 0 : net <= 0 ? Infinity : (foodKJ * 1000) / net / 60, foodKJ };
}
