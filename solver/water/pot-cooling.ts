/** A pot off the heat, lid on or off: its falling temperature, and until when it is hot enough to soak in. */
import type { Pot } from './pot.ts';
import { potLoss, type Surroundings } from './pot-loss.ts';
import { massKg, specificHeat } from './properties.ts';

/** Coolest that water to soak in may be, °C. Common practice, without a source. @see SOAK_PRACTICE in sources.ts */
export const SOAK_C = 85;
/**
 * Losses are taken this much greater than reckoned before water is called hot enough: a lid lifted to ladle, a draught. Open
 * beakers of the one series of readings found cooled up to 1.36 times as fast as reckoned.
 */
export const GUARD = 1.4;
const STEP_K = 0.5;

/**
 * Minutes for a pot of water to fall from one temperature to another, exact.
 *
 * @param ml water, measured cold, mL
 * @param guard losses are taken so many times greater, ≥ 1
 * @returns 0 where it is as cool already; `Infinity` at or below the room's temperature
 */
export function coolPotMinutes(
  pot: Pot,
  ml: number,
  fromC: number,
  toC: number,
  around: Surroundings,
  lidded: boolean,
  guard = 1,
): number {
  if (toC >= fromC) return 0;
  if (toC <= around.roomC) return Infinity;
  const waterKg = massKg(ml, around.tapC);
  let seconds = 0;
  for (let celsius = fromC; celsius > toC; celsius -= STEP_K) {
    const step = Math.min(STEP_K, celsius - toC);
    seconds += stepSeconds(pot, waterKg, celsius, step, around, lidded, guard);
  }
  return seconds / 60;
}

/** Temperature of a pot of water some minutes after it came off the heat, °C. Never below the room's. */
export function celsiusOfPot(
  pot: Pot,
  ml: number,
  fromC: number,
  minutes: number,
  around: Surroundings,
  lidded: boolean,
): number {
  const waterKg = massKg(ml, around.tapC);
  let [celsius, left] = [fromC, minutes * 60];
  while (celsius > around.roomC + STEP_K) {
    const took = stepSeconds(pot, waterKg, celsius, STEP_K, around, lidded, 1);
    if (took >= left) return celsius - (STEP_K * left) / took;
    left -= took;
    celsius -= STEP_K;
  }
  return celsius;
}

function stepSeconds(
  pot: Pot,
  waterKg: number,
  celsius: number,
  step: number,
  around: Surroundings,
  lidded: boolean,
  guard: number,
): number {
  const middle = celsius - step / 2;
  const takenKJ = (waterKg * specificHeat(middle) + pot.metalKJPerK) * step;
  return (takenKJ * 1000) / (guard * potLoss(pot, middle, around, lidded, false).watts);
}

/**
 * Minutes that water just off the boil stays hot enough to soak in, exact, with the guard.
 *
 * @param ml the least that is in the pot, mL
 * @param soakC coolest allowed, °C
 * @returns 0 where water boils below it
 */
export function soakMinutes(pot: Pot, ml: number, around: Surroundings, lidded: boolean, soakC = SOAK_C): number {
  return coolPotMinutes(pot, ml, around.boilsC, soakC, around, lidded, GUARD);
}
