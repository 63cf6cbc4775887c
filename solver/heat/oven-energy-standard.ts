/**
 * What the published rules of the European Union say of an oven's energy: the standard consumption of a cavity by its volume, the
 * efficiency index and class, and the limits under which an oven may be sold. A yardstick for the oven model, not a prediction.
 */
import type { Source } from '../source.ts';
import type { Working } from '../working.ts';

/**
 * Read in Annex II: units, rounding, the better of two modes. The two numbers of the electric formula were checked against the
 * declared values of the public register, which they give back exactly.
 */
export const ENERGY_LABEL: Source = {
  standing: 'derived',
  cite: 'Commission Delegated Regulation (EU) No 65/2014, Annex II, with declared values of the public product register',
  region: 'European Union',
};
const CLASSES: Source = {
  standing: 'published',
  cite: 'Commission Delegated Regulation (EU) No 65/2014, Annex I, Table 1',
  region: 'European Union',
};
const LIMITS: Source = {
  standing: 'published',
  cite: 'Commission Regulation (EU) No 66/2014, Annexes I and IV',
  region: 'European Union',
};
/** The gas formula was not seen in print. */
const GAS_FORMULA: Source = {
  standing: 'from-memory',
  cite: 'Standard consumption of a gas oven, SEC = 0.044·V + 3.53 MJ, from memory, not verified',
};

const rounded = (value: number, places: number): number => {
  const scale = 10 ** places;
  return Math.round(value * scale + 1e-9) / scale;
};

/** 1 kWh in MJ. */
const MJ_PER_KWH = 3.6;

/**
 * Standard energy consumption of a cavity over one standard cycle, kWh, not rounded.
 *
 * @param volumeL usable volume, whole litres, > 0
 * @see source: `ENERGY_LABEL`; for gas from memory, not verified
 */
export function standardConsumptionKWh(volumeL: number, heat: 'electric' | 'gas'): number {
  return heat === 'electric' ? 0.0042 * volumeL + 0.55 : (0.044 * volumeL + 3.53) / MJ_PER_KWH;
}

/**
 * Energy efficiency index of a cavity, to one decimal: what the oven uses over what is standard for its volume, × 100.
 * Both are rounded to 2 decimals first, as the rule says, in kWh for electric and in MJ for gas ovens.
 *
 * @param consumptionKWh declared for a cycle in the better of its modes, kWh
 */
export function efficiencyIndex(consumptionKWh: number, volumeL: number, heat: 'electric' | 'gas'): number {
  const perKWh = heat === 'gas' ? MJ_PER_KWH : 1;
  const standard = rounded(standardConsumptionKWh(volumeL, heat) * perKWh, 2);
  return rounded((rounded(consumptionKWh * perKWh, 2) / standard) * 100, 1);
}

/** Classes from best to worst with the index below which each ends. */
export const EFFICIENCY_CLASSES = [
  { name: 'A+++', below: 45 },
  { name: 'A++', below: 62 },
  { name: 'A+', below: 82 },
  { name: 'A', below: 107 },
  { name: 'B', below: 132 },
  { name: 'C', below: 159 },
  { name: 'D', below: Infinity },
] as const;
export type EfficiencyClass = (typeof EFFICIENCY_CLASSES)[number]['name'];

/**
 * Class of an efficiency index.
 * @see source: Commission Delegated Regulation (EU) No 65/2014, Annex I, Table 1
 */
export const efficiencyClass = (index: number): EfficiencyClass =>
  EFFICIENCY_CLASSES.find(({ below }) => index < below)!.name;

/**
 * Indexes that an oven put on the market must be below, by the day from which they hold, and the best of 2014.
 * @see source: Commission Regulation (EU) No 66/2014, Annexes I and IV; days reckoned from publication on 31 January 2014
 */
export const ECODESIGN_LIMITS = {
  steps: [
    { from: '2015-02-20', indexBelow: 146 },
    { from: '2016-02-20', indexBelow: 121 },
    { from: '2019-02-20', indexBelow: 96 },
  ],
  benchmark: { electric: 70.7, gas: 75.4 },
  source: LIMITS,
} as const;

/**
 * Index that an oven put on the market on a day must be below.
 *
 * @param day `YYYY-MM-DD`
 * @returns null before the first step
 */
export const indexLimitOn = (day: string): number | null =>
  ECODESIGN_LIMITS.steps.filter(({ from }) => from <= day).at(-1)?.indexBelow ?? null;

/** Working of `standardConsumptionKWh`. */
export function standardConsumptionWorking(volumeL: number, heat: 'electric' | 'gas'): Working {
  const source = heat === 'electric' ? ENERGY_LABEL : GAS_FORMULA;
  return {
    name: 'Standard energy consumption of the oven for one cycle',
    value: standardConsumptionKWh(volumeL, heat),
    unit: 'kWh',
    formula: heat === 'electric' ? 'SEC = 0.0042·V + 0.55' : 'SEC = (0.044·V + 3.53) / 3.6',
    inputs: [{ symbol: 'V', name: 'usable volume', value: volumeL, unit: 'L' }],
    source,
  };
}

/** Working of `efficiencyIndex`, with the class in its name. */
export function efficiencyWorking(consumptionKWh: number, volumeL: number, heat: 'electric' | 'gas'): Working {
  const value = efficiencyIndex(consumptionKWh, volumeL, heat);
  return {
    name: `Energy efficiency index of the oven (class ${efficiencyClass(value)})`,
    value,
    unit: '1',
    formula: 'EEI = EC / SEC · 100',
    inputs: [
      { symbol: 'EC', name: 'declared consumption for one cycle', value: consumptionKWh, unit: 'kWh' },
      {
        symbol: 'SEC',
        name: 'standard consumption for one cycle',
        value: standardConsumptionKWh(volumeL, heat),
        unit: 'kWh',
      },
    ],
    source: CLASSES,
    parts: [standardConsumptionWorking(volumeL, heat)],
  };
}
