/** Amounts of energy and water, and what they cost at a kitchen's tariff. */
import type { Kitchen } from '../kitchen/kitchen.ts';

export interface Amount {
  readonly electricWh: number;
  readonly gasWh: number;
  readonly waterMl: number;
}

/** An amount with its money and carbon. */
export interface Priced extends Amount {
  /** Electricity and gas together, Wh. */
  readonly wattHours: number;
  /** In the currency of the tariff. */
  readonly cost: number;
  /** g of CO₂; null: the tariff lacks a factor for what was used. */
  readonly carbonG: number | null;
}

export const NOTHING: Amount = { electricWh: 0, gasWh: 0, waterMl: 0 };

export const electricity = (wattHours: number): Amount => ({ ...NOTHING, electricWh: wattHours });
export const gas = (wattHours: number): Amount => ({ ...NOTHING, gasWh: wattHours });
export const water = (ml: number): Amount => ({ ...NOTHING, waterMl: ml });

/** Energy of a burner: gas on a gas hob. */
export const hobEnergy = (kitchen: Pick<Kitchen, 'hob'>, wattHours: number): Amount =>
  kitchen.hob.heat === 'gas' ? gas(wattHours) : electricity(wattHours);

export const times = (amount: Amount, share: number): Amount => ({
  electricWh: amount.electricWh * share,
  gasWh: amount.gasWh * share,
  waterMl: amount.waterMl * share,
});

export const sum = (amounts: readonly Amount[]): Amount =>
  amounts.reduce(
    (total, each) => ({
      electricWh: total.electricWh + each.electricWh,
      gasWh: total.gasWh + each.gasWh,
      waterMl: total.waterMl + each.waterMl,
    }),
    NOTHING,
  );

export const minus = (from: Amount, taken: Amount): Amount => sum([from, times(taken, -1)]);

/** An amount at the tariff: Wh at the price of a kWh, mL at the price of a m³, and the carbon of what has a factor. */
export function priced(amount: Amount, tariff: Kitchen['tariff']): Priced {
  const { electricWh, gasWh, waterMl } = amount;
  const { carbonGPerKWh, gasCarbonGPerKWh } = tariff;
  const unknown = (electricWh !== 0 && carbonGPerKWh === undefined) || (gasWh !== 0 && gasCarbonGPerKWh === undefined);
  return {
    electricWh,
    gasWh,
    waterMl,
    wattHours: electricWh + gasWh,
    cost:
      (electricWh * tariff.electricityPerKWh) / 1000 +
      (gasWh * tariff.gasPerKWh) / 1000 +
      (waterMl * tariff.waterPerM3) / 1e6,
    carbonG: unknown ? null : (electricWh * (carbonGPerKWh ?? 0)) / 1000 + (gasWh * (gasCarbonGPerKWh ?? 0)) / 1000,
  };
}
