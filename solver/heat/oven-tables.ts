/**
 * Time to heat and to cool between two temperatures, and the temperature after some minutes, by an oven's curves. Speeds depend on
 * the temperature alone.
 */
import type { Oven } from '../kitchen/kitchen.ts';
import type { OvenHeat } from './oven-heat.ts';

/**
 * Minutes to heat from one temperature to another, exact.
 * @returns 0 where it is already as hot; `Infinity` where the oven does not reach so high
 */
export function heatMinutes({ heating }: OvenHeat, fromC: number, toC: number): number {
  if (toC <= fromC) return 0;
  const until = heating.minutesAt(toC);
  return until === Infinity ? Infinity : until - heating.minutesAt(fromC);
}

/**
 * Minutes to fall from one temperature to another with the heat off, exact.
 * @returns 0 where it is already as cool; `Infinity` where the oven does not fall so low
 */
export function coolMinutes({ cooling }: OvenHeat, fromC: number, toC: number): number {
  if (toC >= fromC) return 0;
  const until = cooling.minutesAt(toC);
  return until === Infinity ? Infinity : until - cooling.minutesAt(fromC);
}

/**
 * Temperature some minutes later, heating or falling towards the dial's setting and then holding it.
 * @param settingC the dial, °C; null: switched off
 */
export function celsiusAfter(
  { heating, cooling }: OvenHeat,
  fromC: number,
  settingC: number | null,
  minutes: number,
): number {
  if (settingC !== null && settingC >= fromC) {
    const since = heating.minutesAt(fromC);
    if (since === Infinity) return fromC;
    return Math.min(settingC, Math.max(fromC, heating.celsiusAt(since + minutes)));
  }
  const since = cooling.minutesAt(fromC);
  if (since === Infinity) return fromC;
  return Math.max(settingC ?? -Infinity, Math.min(fromC, cooling.celsiusAt(since + minutes)));
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
