/** Hot water from the kitchen's measured tables: minutes to the boil, and how long it stays hot enough to soak in. */
import type { Burner, Kitchen, Pan } from '../kitchen/kitchen.ts';
import { minutesDown, minutesUp } from '../kitchen/scaling.ts';

/**
 * Minutes to bring cold water to the boil on a burner, rounded up.
 * @param ml volume, mL, ≥ 0
 */
export function boilMinutesOnBurner(burner: Burner, ml: number, lidded: boolean): number {
  return minutesUp((ml / 1000) * (lidded ? burner.boilMinutesPerLitre.lidded : burner.boilMinutesPerLitre.open));
}

/** Minutes to bring cold water to the boil in the kettle, rounded up; fills beyond what it holds are boiled one after another. */
export function boilMinutesInKettle(kettle: NonNullable<Kitchen['kettle']>, ml: number): number {
  return minutesUp((ml / 1000) * kettle.minutesPerLitre);
}

/**
 * Share of the time from cold that water off the heat needs to boil again within its hot time. Invented until the heat model
 * gives it: hot enough to soak means well above half way from cold to the boil.
 */
const REBOIL_SHARE = 0.5;

/** Minutes to bring water back to the boil that is still hot enough to soak in, rounded up. */
export function reboilMinutes(burner: Burner, ml: number, lidded: boolean): number {
  return minutesUp(
    (ml / 1000) * (lidded ? burner.boilMinutesPerLitre.lidded : burner.boilMinutesPerLitre.open) * REBOIL_SHARE,
  );
}

/** Minutes that water off the heat, lid on, stays hot enough to soak in: by the pan's table, rounded down; 0 without one. */
export function staysHotMinutes(pan: Pan, ml: number): number {
  const table = pan.staysHot ?? [];
  const first = table[0];
  if (first === undefined) return 0;
  if (ml <= first.ml) return minutesDown((first.minutes * ml) / Math.max(1, first.ml));
  for (let index = 1; index < table.length; index++) {
    const from = table[index - 1]!;
    const to = table[index]!;
    if (ml <= to.ml)
      return minutesDown(from.minutes + ((to.minutes - from.minutes) * (ml - from.ml)) / (to.ml - from.ml));
  }
  return minutesDown(table.at(-1)!.minutes);
}
