/**
 * An oven's heat from the kitchen's measured tables: time to heat and to cool between two temperatures, and the temperature
 * after some minutes. Linear between readings; beyond the last reading the oven stays where it is. Speeds depend on the
 * temperature alone.
 */
import type { Oven } from '../kitchen/kitchen.ts';

type Curve = readonly { readonly minutes: number; readonly celsius: number }[];

/** Minutes on a monotone curve at which it passes a temperature; clamped to its ends. */
function minutesAt(curve: Curve, celsius: number, rising: boolean): number {
  const first = curve[0]!;
  const before = (reading: number): boolean => (rising ? reading < celsius : reading > celsius);
  if (!before(first.celsius)) return first.minutes;
  for (let index = 1; index < curve.length; index++) {
    const from = curve[index - 1]!;
    const to = curve[index]!;
    if (!before(to.celsius)) {
      return from.minutes + ((to.minutes - from.minutes) * (celsius - from.celsius)) / (to.celsius - from.celsius);
    }
  }
  return curve.at(-1)!.minutes;
}

function celsiusAt(curve: Curve, minutes: number): number {
  const first = curve[0]!;
  if (minutes <= first.minutes) return first.celsius;
  for (let index = 1; index < curve.length; index++) {
    const from = curve[index - 1]!;
    const to = curve[index]!;
    if (minutes <= to.minutes) {
      return from.celsius + ((to.celsius - from.celsius) * (minutes - from.minutes)) / (to.minutes - from.minutes);
    }
  }
  return curve.at(-1)!.celsius;
}

/**
 * Minutes to heat from one temperature to another, exact.
 * @returns 0 where it is already as hot; `Infinity` where the table does not reach so high
 */
export function heatMinutes(oven: Oven, fromC: number, toC: number): number {
  if (toC <= fromC) return 0;
  if (toC > oven.heating.at(-1)!.celsius) return Infinity;
  return minutesAt(oven.heating, toC, true) - minutesAt(oven.heating, fromC, true);
}

/**
 * Minutes to fall from one temperature to another with the heat off, exact.
 * @returns 0 where it is already as cool; `Infinity` where the table does not fall so low
 */
export function coolMinutes(oven: Oven, fromC: number, toC: number): number {
  if (toC >= fromC) return 0;
  if (toC < oven.cooling.at(-1)!.celsius) return Infinity;
  return minutesAt(oven.cooling, toC, false) - minutesAt(oven.cooling, fromC, false);
}

/**
 * Temperature some minutes later, heating or falling towards the dial's setting and then holding it.
 * @param settingC the dial, °C; null: switched off
 */
export function celsiusAfter(oven: Oven, fromC: number, settingC: number | null, minutes: number): number {
  if (settingC !== null && settingC >= fromC) {
    return Math.min(settingC, celsiusAt(oven.heating, minutesAt(oven.heating, fromC, true) + minutes));
  }
  if (fromC <= oven.cooling.at(-1)!.celsius) return fromC;
  const fallen = celsiusAt(oven.cooling, minutesAt(oven.cooling, fromC, false) + minutes);
  return Math.max(settingC ?? -Infinity, Math.min(fromC, fallen));
}

/**
 * A window narrowed to the positions the dial has.
 * @returns least and most setting inside the window, or null where the dial has none
 */
export function dialWindow(
  oven: Oven,
  leastC: number,
  mostC: number,
): { readonly leastC: number; readonly mostC: number } | null {
  const { leastC: from, mostC: to, stepC } = oven.dial;
  const least = Math.max(from, from + Math.ceil((leastC - from) / stepC - 1e-9) * stepC);
  const most = Math.min(to, from + Math.floor((mostC - from) / stepC + 1e-9) * stepC);
  return least <= most ? { leastC: least, mostC: most } : null;
}
