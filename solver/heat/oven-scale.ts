/** Scales of an oven's dial: degrees Celsius and Fahrenheit, gas marks, and the setting of a fan oven for a conventional one. */
import type { Source } from '../source.ts';
import type { Working } from '../working.ts';

export const toFahrenheit = (celsius: number): number => celsius * 1.8 + 32;
export const toCelsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

/** No standard defines the marks; three independent printed tables agree. */
export const GAS_MARKS: Source = {
  standing: 'secondary',
  cite: 'Tables of gas marks in common print; no standard defines them. °F = 250 + 25 · mark from mark 1 up',
  region: 'United Kingdom',
};
export const FAN_OFFSET: Source = {
  standing: 'common-practice',
  cite: 'Common practice: a fan oven is set 20 °C lower; others say 25 to 30 °C',
};

/** By how much a fan oven is set lower than a conventional one, K, where the kitchen does not say. */
export const DEFAULT_FAN_OFFSET_K = 20;

/** A mark with what the dial of a British oven says for it, °C. Some dials say a range. */
export interface GasMark {
  readonly mark: number;
  readonly fahrenheit: number;
  readonly dialC: readonly [number, number];
}

/** Marks from the coolest to the hottest. @see source: `GAS_MARKS` */
export const GAS_MARK_TABLE: readonly GasMark[] = [
  { mark: 0.25, fahrenheit: 225, dialC: [110, 110] },
  { mark: 0.5, fahrenheit: 250, dialC: [120, 130] },
  { mark: 1, fahrenheit: 275, dialC: [140, 140] },
  { mark: 2, fahrenheit: 300, dialC: [150, 150] },
  { mark: 3, fahrenheit: 325, dialC: [160, 170] },
  { mark: 4, fahrenheit: 350, dialC: [180, 180] },
  { mark: 5, fahrenheit: 375, dialC: [190, 190] },
  { mark: 6, fahrenheit: 400, dialC: [200, 200] },
  { mark: 7, fahrenheit: 425, dialC: [220, 220] },
  { mark: 8, fahrenheit: 450, dialC: [230, 230] },
  { mark: 9, fahrenheit: 475, dialC: [240, 240] },
];

/**
 * Exact temperature of a gas mark, °C.
 *
 * @param mark ¼, ½, or 1 to 9
 * @returns null for a mark that no dial has
 */
export function gasMarkCelsius(mark: number): number | null {
  const row = GAS_MARK_TABLE.find((each) => each.mark === mark);
  return row === undefined ? null : toCelsius(row.fahrenheit);
}

/** The gas mark nearest to a temperature; the lower one where two are as near. Beyond the ends: the last one. */
export const nearestGasMark = (celsius: number): number =>
  GAS_MARK_TABLE.reduce((best, row) =>
    Math.abs(toCelsius(row.fahrenheit) - celsius) < Math.abs(toCelsius(best.fahrenheit) - celsius) - 1e-9 ? row : best,
  ).mark;

/** Working of the gas mark for a temperature. */
export function gasMarkWorking(celsius: number): Working {
  const value = nearestGasMark(celsius);
  return {
    name: `Gas mark nearest to ${celsius} °C`,
    value,
    unit: '1',
    formula: 'M with (250 + 25·M − 32)/1.8 nearest to T; below mark 1 its halves: 250 °F is ½, 225 °F ¼',
    inputs: [{ symbol: 'T', name: 'temperature', value: celsius, unit: '°C' }],
    source: GAS_MARKS,
    caution: 'Dials differ by a good ten degrees; a thermometer in the oven tells.',
  };
}

/** ¼ and ½ as they stand on a dial. */
export const gasMarkText = (mark: number): string => (mark === 0.25 ? '¼' : mark === 0.5 ? '½' : `${mark}`);

export interface Window {
  readonly leastC: number;
  readonly mostC: number;
}

/**
 * A window of a conventional oven as a fan oven is set for it.
 * @param offsetK by how much lower, K, ≥ 0
 */
export const fanWindow = ({ leastC, mostC }: Window, offsetK = DEFAULT_FAN_OFFSET_K): Window => ({
  leastC: leastC - offsetK,
  mostC: mostC - offsetK,
});

/** The other way: a window of a fan oven as a conventional one is set for it. */
export const conventionalWindow = ({ leastC, mostC }: Window, offsetK = DEFAULT_FAN_OFFSET_K): Window => ({
  leastC: leastC + offsetK,
  mostC: mostC + offsetK,
});

/** Working of a conversion from °C to °F. */
export const fahrenheitWorking = (celsius: number): Working => ({
  name: `${celsius} °C in °F`,
  value: toFahrenheit(celsius),
  unit: '°F',
  formula: 'F = 1.8·T + 32',
  inputs: [{ symbol: 'T', name: 'temperature', value: celsius, unit: '°C' }],
  source: { standing: 'published', cite: 'Definition of the degree Fahrenheit by the degree Celsius' },
});

/** Working of a fan oven's setting; the offset is the kitchen's own where it gives one. */
export const fanWorking = (conventionalC: number, offsetK?: number): Working => ({
  name: `Setting of a fan oven for ${conventionalC} °C conventional`,
  value: conventionalC - (offsetK ?? DEFAULT_FAN_OFFSET_K),
  unit: '°C',
  formula: 'Tf = T − d',
  inputs: [
    { symbol: 'T', name: 'conventional setting', value: conventionalC, unit: '°C' },
    {
      symbol: 'd',
      name: 'how much lower a fan oven is set',
      value: offsetK ?? DEFAULT_FAN_OFFSET_K,
      unit: 'K',
      ...(offsetK === undefined ? { source: FAN_OFFSET } : {}),
    },
  ],
  source: FAN_OFFSET,
  caution: 'Raw food is cooked through when a probe says so, not when the dial does.',
});
