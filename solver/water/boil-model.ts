/**
 * Heating water in a pot: what comes in is stored in water and metal or lost to the room, kelvin by kelvin. The published
 * efficiencies were measured with pans that lose heat too; reckoning the pan's loss beside them puts the boil two or three per
 * cent late, which is the side to err on.
 */
import { BARE, type Pot } from './pot.ts';
import { potLoss, type Surroundings } from './pot-loss.ts';
import { latentHeat, massKg, specificHeat } from './properties.ts';

export interface Heating {
  /** `Infinity`: never, the losses reach the heat given. */
  readonly minutes: number;
  /** Heat given to the pot, kJ; stored in water and metal; lost to the room. `in = stored + lost`. */
  readonly inKJ: number;
  readonly storedKJ: number;
  readonly lostKJ: number;
  /** Vapour that left an open pot, kg. */
  readonly vapourKg: number;
}

const NEVER: Heating = { minutes: Infinity, inKJ: Infinity, storedKJ: 0, lostKJ: Infinity, vapourKg: Infinity };
const STEP_K = 1;

/** Heat that water and metal take up between two temperatures, kJ; steps as in the heating. */
export function storedKJ(pot: Pot, waterKg: number, fromC: number, toC: number): number {
  let sum = 0;
  for (let celsius = fromC; celsius < toC; celsius += STEP_K) {
    const step = Math.min(STEP_K, toC - celsius);
    sum += (waterKg * specificHeat(celsius + step / 2) + pot.metalKJPerK) * step;
  }
  return sum;
}

/**
 * Heating a pot of water from one temperature to another.
 *
 * @param ml water, measured cold, mL
 * @param fromC to `toC`, °C, both up to the boiling point
 * @param heatW heat given to the pot, W: power times efficiency
 * @returns minutes and where the heat went; `never` where the losses reach the heat given
 */
export function heatPot(
  pot: Pot,
  ml: number,
  fromC: number,
  toC: number,
  heatW: number,
  around: Surroundings,
  lidded: boolean,
): Heating {
  if (toC <= fromC) return { minutes: 0, inKJ: 0, storedKJ: 0, lostKJ: 0, vapourKg: 0 };
  if (heatW <= potLoss(pot, toC, around, lidded, true).watts) return NEVER;
  const waterKg = massKg(ml, around.tapC);
  let [seconds, stored, lost, vapourKg] = [0, 0, 0, 0];
  for (let celsius = fromC; celsius < toC; celsius += STEP_K) {
    const step = Math.min(STEP_K, toC - celsius);
    const middle = celsius + step / 2;
    const loss = potLoss(pot, middle, around, lidded, true);
    const takenKJ = (waterKg * specificHeat(middle) + pot.metalKJPerK) * step;
    const took = (takenKJ * 1000) / (heatW - loss.watts);
    seconds += took;
    stored += takenKJ;
    lost += (loss.watts * took) / 1000;
    vapourKg += loss.vapour * took;
  }
  return { minutes: seconds / 60, inKJ: (heatW * seconds) / 1000, storedKJ: stored, lostKJ: lost, vapourKg };
}

/**
 * Heating water in a kettle, whose published efficiency has its own losses in it.
 * @param heatW power times efficiency, W
 */
export function heatKettle(ml: number, fromC: number, toC: number, heatW: number, tapC: number): Heating {
  const stored = storedKJ(BARE, massKg(ml, tapC), fromC, toC);
  const minutes = heatW <= 0 ? Infinity : (stored * 1000) / heatW / 60;
  return { minutes, inKJ: stored, storedKJ: stored, lostKJ: 0, vapourKg: 0 };
}

export interface Boiling {
  /** Heat that keeps it just at the boil, W into the pot. */
  readonly heatW: number;
  /** Water that leaves as vapour at just that heat, mL/min. */
  readonly vapourMlPerMin: number;
}

/** What keeps a pot just at the boil. Whatever more is given boils water away. */
export function keepBoiling(pot: Pot, around: Surroundings, lidded: boolean): Boiling {
  const loss = potLoss(pot, around.boilsC, around, lidded, true);
  return { heatW: loss.watts, vapourMlPerMin: loss.vapour * 60 * 1000 };
}

/**
 * Water that boils away while more heat is given than the boil needs, mL.
 * @param heatW given to the pot, W
 */
export function boiledAwayMl(pot: Pot, heatW: number, minutes: number, around: Surroundings, lidded: boolean): number {
  const loss = potLoss(pot, around.boilsC, around, lidded, true);
  const surplusW = Math.max(0, heatW - loss.watts);
  return ((surplusW / 1000 / latentHeat(around.boilsC)) * 60 + loss.vapour * 60) * minutes * 1000;
}
