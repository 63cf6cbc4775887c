/**
 * The heat of one oven of a kitchen, for all who plan and check: its curves from the user's own tables where they are given, else
 * from the model fitted to the user's readings, else from the typical oven of its volume.
 */
import type { Oven } from '../kitchen/kitchen.ts';
import { onceOn } from '../kitchen/once.ts';
import { modelCurve, tableCurve, type HeatCurve } from './heat-curve.ts';
import { calibrateOven, type OvenFit } from './oven-calibration.ts';
import { enteringW, holdingDrawW } from './oven-model.ts';
import type { OvenReadings } from './oven-readings.ts';

export interface OvenHeat {
  readonly oven: Oven;
  readonly roomC: number;
  readonly heating: HeatCurve;
  readonly cooling: HeatCurve;
  /** The model through the tables or readings, or the typical one: what energies and recovery are reckoned with. */
  readonly fit: () => OvenFit;
  /** Guard of the afterheat, K: by so much hotter or cooler than reckoned the oven may be, and the food is still in its window. */
  readonly afterheatGuardK: number;
}

/** Readings that an oven's document amounts to: the rows of its tables, else those written as such. */
function readingsOf({ heating, cooling, readings }: Oven): OvenReadings {
  const top = cooling?.[0];
  return {
    toHeat: heating === undefined ? readings?.toHeat : heating.filter(({ minutes }) => minutes > 0),
    afterOff:
      top === undefined
        ? readings?.afterOff
        : cooling!.slice(1).map((row) => ({ ...row, fromC: top.celsius, minutes: row.minutes - top.minutes })),
  };
}

/**
 * The model fitted to what an oven's document says of it.
 *
 * @param roomC temperature of the kitchen, °C
 */
export const fitOfOven = onceOn((oven: Oven, roomC: number): OvenFit =>
  calibrateOven({ volumeL: oven.volumeL, kind: oven.kind ?? 'electric', powerW: oven.powerW }, roomC, readingsOf(oven)),
);

/** Guards, K. Common practice: a household thermometer and thermostat are right to about so much. */
const FITTED_GUARD_K = 2;
const TYPICAL_GUARD_K = 10;

/**
 * The heat of an oven in its kitchen.
 *
 * @param oven as its kitchen has it
 * @param roomC temperature of the kitchen, °C
 */
export function ovenHeat(oven: Oven, roomC: number): OvenHeat {
  // Only where something asks for it: an oven with tables of its own mostly needs none.
  const fit = (): OvenFit => fitOfOven(oven, roomC);
  const curve = (course: 'heating' | 'cooling'): HeatCurve => {
    const table = oven[course];
    return table === undefined ? modelCurve(fit().model, roomC, course) : tableCurve(table, course);
  };
  return {
    oven,
    roomC,
    fit,
    heating: curve('heating'),
    cooling: curve('cooling'),
    // A table is taken as it stands.
    afterheatGuardK:
      oven.cooling !== undefined ? 0 : fit().timeConstantFrom === 'readings' ? FITTED_GUARD_K : TYPICAL_GUARD_K,
  };
}

/** Mean draw while a temperature is held, W: the kitchen's own figure, else the model's. */
export const holdingW = ({ oven, fit, roomC }: OvenHeat, celsius: number): number =>
  oven.holdingW ?? holdingDrawW(fit().model, roomC, celsius);

/** Heat that full power gives over what holding a temperature takes, W; at least 0. */
export function spareW(heat: OvenHeat, celsius: number): number {
  const { model } = heat.fit();
  return Math.max(0, enteringW(model) - holdingW(heat, celsius) * model.enteringShare);
}
