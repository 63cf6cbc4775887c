/**
 * What a cold load costs an oven: the air that the open door lets out, the food and the metal under it are heated with the power
 * that holding the temperature leaves over. The minutes are the most it can be: all that the food takes up to the boiling point of
 * its water counts as due before the oven is hot again, and every kilogram as a kilogram of water, of ice where it is frozen, which
 * no food exceeds.
 */
import type { Oven } from '../kitchen/kitchen.ts';
import { minutesUp } from '../kitchen/scaling.ts';
import type { Need } from '../kitchen/step.ts';
import type { Source } from '../source.ts';
import { PAN_METALS, WATER_TABLE } from '../water/sources.ts';
import type { Working } from '../working.ts';
import { sourceOfFit } from './oven-calibration.ts';
import { holdingW, ovenHeat, spareW, type OvenHeat } from './oven-heat.ts';
import { LUMPED_MODEL } from './oven-model.ts';
import { dialWindow } from './oven-tables.ts';

export interface OvenLoad {
  /** Food, g. */
  readonly massG: number;
  /** Its temperature when it goes in, °C. */
  readonly fromC: number;
  /** Metal under it, g, as warm as the room. */
  readonly trayG: number;
}

/** J/(g·K); of water the mean of the table from cold to the boil. */
const WATER = 4.19;
const STEEL = 0.5;
/** To thaw, J/g. */
const FUSION = 334;
const WATER_BOILS_C = 100;

const AIR_HEAT: Source = {
  standing: 'derived',
  cite: 'Ideal gas of two-atomed molecules: 7/2 · p/T for each m³ and kelvin, at 101.325 kPa',
};

/** Heat capacity of the air in a volume, at the temperature of the room that comes in for it, J/K. */
export const airJPerK = (volumeL: number, roomC: number): number =>
  ((3.5 * 101_325) / (roomC + 273.15)) * (volumeL / 1000);

/** Heat that thaws a gram of the load, J. */
const thawing = (load: OvenLoad): number => (load.fromC < 0 ? FUSION : 0);

/** Heat that the oven must make up for, J. */
function owed({ oven, roomC }: OvenHeat, atC: number, load: OvenLoad): number {
  const over = Math.max(0, atC - roomC);
  const rise = Math.max(0, Math.min(atC, WATER_BOILS_C) - load.fromC);
  return airJPerK(oven.volumeL, roomC) * over + load.trayG * STEEL * over + load.massG * (WATER * rise + thawing(load));
}

/**
 * Minutes in which an oven makes up for a door opened once and a cold load put in, exact.
 *
 * @param atC temperature that it holds, °C
 * @param load food and metal; none: the door alone
 * @returns `Infinity` where holding the temperature takes all the power there is
 */
export function recoveryMinutes(heat: OvenHeat, atC: number, load: OvenLoad): number {
  const spare = spareW(heat, atC);
  return spare === 0 ? Infinity : owed(heat, atC, load) / spare / 60;
}

/**
 * Whole minutes, rounded up, by which the load of a need lengthens its step in an oven, at the highest setting of its window.
 *
 * @param need an oven need with a load, grown to the amount
 * @returns 0 without a load; `Infinity` where the oven never makes up for it or its dial has no setting for the need
 */
export function recoveryOfNeed(oven: Oven, roomC: number, need: OvenNeed): number {
  if (need.load === undefined) return 0;
  const asked = loadOfNeed(oven, need);
  return asked === null ? Infinity : minutesUp(recoveryMinutes(ovenHeat(oven, roomC), asked.atC, asked.load));
}

/**
 * Working of the minutes behind `recoveryOfNeed`, before they are rounded up.
 * @returns null where there is no load, or no minutes come of it
 */
export function recoveryWorkingOfNeed(heat: OvenHeat, need: OvenNeed): Working | null {
  const asked = loadOfNeed(heat.oven, need);
  return asked === null ? null : recoveryWorking(heat, asked.atC, asked.load);
}

type OvenNeed = Extract<Need, { use: 'oven' }>;

/** The load of a need and the setting at which it is reckoned; null without a load, or where the dial has no setting for the need. */
function loadOfNeed(oven: Oven, need: OvenNeed): { readonly atC: number; readonly load: OvenLoad } | null {
  const window = dialWindow(oven, need.leastC, need.mostC);
  if (need.load === undefined || window === null) return null;
  const { massG = 0, fromC, trayG = 0 } = need.load;
  return { atC: window.mostC, load: { massG, fromC, trayG } };
}

/**
 * Working of `recoveryMinutes`.
 * @returns null where the oven never makes up for it
 */
export function recoveryWorking(heat: OvenHeat, atC: number, load: OvenLoad): Working | null {
  const value = recoveryMinutes(heat, atC, load);
  if (value === Infinity) return null;
  const fit = heat.fit();
  return {
    name: `Minutes in which the oven makes up for an open door and a cold load at ${atC} °C`,
    value,
    unit: 'min',
    formula: 't = (Ca·(T − Tr) + mt·ct·(T − Tr) + m·(c·(min(T, 100) − T₀) + L)) / (60·(η·P − η·Ph))',
    inputs: [
      {
        symbol: 'Ca',
        name: 'heat capacity of the air',
        value: airJPerK(heat.oven.volumeL, heat.roomC),
        unit: 'J/K',
        source: AIR_HEAT,
      },
      { symbol: 'T', name: 'temperature held', value: atC, unit: '°C' },
      { symbol: 'Tr', name: 'temperature of the room', value: heat.roomC, unit: '°C' },
      { symbol: 'mt', name: 'metal under the food', value: load.trayG, unit: 'g' },
      { symbol: 'ct', name: 'specific heat of steel', value: STEEL, unit: 'J/(g·K)', source: PAN_METALS },
      { symbol: 'm', name: 'food', value: load.massG, unit: 'g' },
      { symbol: 'c', name: 'specific heat, of water as the most', value: WATER, unit: 'J/(g·K)', source: WATER_TABLE },
      { symbol: 'L', name: 'heat that thaws it', value: thawing(load), unit: 'J/g', source: WATER_TABLE },
      { symbol: 'T₀', name: 'temperature of the food', value: load.fromC, unit: '°C' },
      { symbol: 'P', name: 'rated power', value: heat.oven.powerW, unit: 'W' },
      {
        symbol: 'η',
        name: 'part of the power that enters',
        value: fit.model.enteringShare,
        unit: '1',
        source: sourceOfFit(fit),
      },
      { symbol: 'Ph', name: 'draw while holding', value: holdingW(heat, atC), unit: 'W' },
    ],
    source: LUMPED_MODEL,
    caution: 'The most it can be. Whether raw food is cooked through, a probe says.',
  };
}
