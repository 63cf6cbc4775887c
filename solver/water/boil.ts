/**
 * Hot water as a kitchen's plans reckon with it, in whole minutes: what the user has measured, and where nothing was measured,
 * what the heat model gives for burner, pan, lid, tap water and altitude.
 */
import type { Burner, Kettle, Kitchen, Pan } from '../kitchen/kitchen.ts';
import { minutesDown, minutesUp } from '../kitchen/scaling.ts';
import { heatKettle, heatPot } from './boil-model.ts';
import { burnerHeatW, kettleHeatW } from './heat-sources.ts';
import { BARE, potOf } from './pot.ts';
import { soakMinutes, SOAK_C } from './pot-cooling.ts';
import { surroundingsOf } from './pot-loss.ts';
import { remembered } from './remembered.ts';

/** Exact minutes from one temperature to the boil; what was measured from cold is taken in proportion. */
function minutesToBoil(
  kitchen: Kitchen,
  burner: Burner,
  pan: Pan | undefined,
  ml: number,
  lidded: boolean,
  fromC: number | null,
): number {
  const around = surroundingsOf(kitchen);
  const start = fromC ?? around.tapC;
  const measured = burner.boilMinutesPerLitre;
  if (measured === undefined) {
    const heatW = burnerHeatW(kitchen.hob, burner);
    return remembered(kitchen, pan ?? BARE, `boil ${ml} ${start} ${heatW} ${lidded}`, () => {
      const pot = pan === undefined ? BARE : potOf(pan);
      return heatPot(pot, ml, start, around.boilsC, heatW, around, lidded).minutes;
    });
  }
  const share = Math.max(0, around.boilsC - start) / (around.boilsC - around.tapC);
  return (ml / 1000) * (lidded ? measured.lidded : measured.open) * share;
}

/**
 * Minutes to bring cold water to the boil on a burner, rounded up.
 *
 * @param pan the pan it is in; undefined: not known, and water alone is reckoned
 * @param ml volume, mL, ≥ 0
 * @returns `Infinity` where the burner never brings it to the boil
 */
export function boilMinutesOnBurner(
  kitchen: Kitchen,
  burner: Burner,
  pan: Pan | undefined,
  ml: number,
  lidded: boolean,
): number {
  return minutesUp(minutesToBoil(kitchen, burner, pan, ml, lidded, null));
}

/** Minutes to bring cold water to the boil in the kettle, rounded up; fills beyond what it holds are boiled one after another. */
export function boilMinutesInKettle(kitchen: Kitchen, kettle: Kettle, ml: number): number {
  return minutesUp(kettleMinutesExact(kitchen, kettle, ml));
}

/** The same, exact. */
export function kettleMinutesExact(kitchen: Kitchen, kettle: Kettle, ml: number): number {
  if (kettle.minutesPerLitre !== undefined) return (ml / 1000) * kettle.minutesPerLitre;
  const { tapC, boilsC } = surroundingsOf(kitchen);
  return heatKettle(ml, tapC, boilsC, kettleHeatW(kettle), tapC).minutes;
}

/** Minutes to the boil on a burner, exact. @param again water that is still hot enough to soak in, not cold */
export const boilMinutesExact = (
  kitchen: Kitchen,
  burner: Burner,
  pan: Pan | undefined,
  ml: number,
  lidded: boolean,
  again: boolean,
): number => minutesToBoil(kitchen, burner, pan, ml, lidded, again ? SOAK_C : null);

/** Minutes to bring water back to the boil that is still hot enough to soak in, rounded up. */
export function reboilMinutes(
  kitchen: Kitchen,
  burner: Burner,
  pan: Pan | undefined,
  ml: number,
  lidded: boolean,
): number {
  return minutesUp(minutesToBoil(kitchen, burner, pan, ml, lidded, SOAK_C));
}

/** Minutes that water off the heat, lid on where there is one, stays hot enough to soak in, rounded down. */
export function staysHotMinutes(kitchen: Kitchen, pan: Pan, ml: number): number {
  const table = pan.staysHot ?? [];
  const first = table[0];
  if (first === undefined) {
    return minutesDown(
      remembered(kitchen, pan, `soak ${ml}`, () => soakMinutes(potOf(pan), ml, surroundingsOf(kitchen), pan.lid)),
    );
  }
  if (ml <= first.ml) return minutesDown((first.minutes * ml) / Math.max(1, first.ml));
  for (let index = 1; index < table.length; index++) {
    const from = table[index - 1]!;
    const to = table[index]!;
    if (ml <= to.ml)
      return minutesDown(from.minutes + ((to.minutes - from.minutes) * (ml - from.ml)) / (to.ml - from.ml));
  }
  return minutesDown(table.at(-1)!.minutes);
}
