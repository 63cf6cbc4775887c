/** Afterheat: how long a switched-off oven stays within a window. */
import type { Working } from '../working.ts';
import { sourceOfFit } from './oven-calibration.ts';
import type { OvenHeat } from './oven-heat.ts';
import { LUMPED_MODEL, modelInputs } from './oven-model.ts';
import { coolMinutes } from './oven-tables.ts';

interface Window {
  readonly leastC: number;
  readonly mostC: number;
}

/** Minutes after switching off in which the oven is surely in the window, exact. */
export interface AfterheatSpan {
  readonly from: number;
  readonly until: number;
}

/**
 * When a switched-off, shut oven is surely within a window: once the hottest it may be has fallen into it, until the coolest it may
 * be falls out of it. The guard is added to the hottest and taken from the coolest, for a thermometer and a thermostat are never
 * quite right.
 *
 * @param offC what the oven may have when it is switched off, °C
 * @param window what the food in it accepts, °C
 * @param guardK K, ≥ 0; absent: that of the oven's heat
 * @returns null where it is never surely in it: too cool when switched off, never as cool, or out before it is in
 */
export function afterheatSpan(
  heat: OvenHeat,
  offC: Window,
  window: Window,
  guardK = heat.afterheatGuardK,
): AfterheatSpan | null {
  const [hottest, coolest] = [offC.mostC + guardK, offC.leastC - guardK];
  if (coolest < window.leastC) return null;
  const from = coolMinutes(heat, hottest, window.mostC);
  const until = coolMinutes(heat, coolest, window.leastC);
  return from <= until && from !== Infinity ? { from, until } : null;
}

/**
 * Working of how long a switched-off oven stays above a temperature, with the guard.
 *
 * @returns null where it is too cool to begin with, or where the oven's cooling is a table of the user's own
 */
export function afterheatWorking(
  heat: OvenHeat,
  offC: number,
  leastC: number,
  guardK = heat.afterheatGuardK,
): Working | null {
  const fit = heat.fit();
  const value = coolMinutes(heat, offC - guardK, leastC);
  if (heat.oven.cooling !== undefined || offC - guardK < leastC || value === Infinity) return null;
  return {
    name: `Minutes that the oven, switched off at ${offC} °C, stays at ${leastC} °C or hotter`,
    value,
    unit: 'min',
    formula: 't = C/(60·U) · ln((T₀ − g − Tr) / (T − Tr))',
    inputs: [
      ...modelInputs(fit.model, sourceOfFit(fit)).slice(0, 2),
      { symbol: 'T₀', name: 'temperature when it is switched off', value: offC, unit: '°C' },
      {
        symbol: 'g',
        name: 'guard',
        value: guardK,
        unit: 'K',
        source: {
          standing: 'common-practice',
          cite: 'Guard for what a household thermometer and thermostat are out by',
        },
      },
      { symbol: 'T', name: 'least temperature wanted', value: leastC, unit: '°C' },
      { symbol: 'Tr', name: 'temperature of the room', value: heat.roomC, unit: '°C' },
    ],
    source: LUMPED_MODEL,
    caution:
      'With the door kept shut. Afterheat dries, crisps or keeps hot; it never cooks raw meat, poultry, fish or egg through.',
  };
}
