/**
 * An oven's heat capacity and loss from a few of the user's readings, by least squares.
 *
 * The readings know two numbers: how fast the cold oven rises at full power, r = η·P/C, and its time constant τ = C/U:
 *
 *     t minutes from cold:              T = Tr + r·τ·(1 − e^(−t/τ))
 *     t minutes after switching off:    T = Tr + (T₀ − Tr)·e^(−t/τ)
 *
 * For a given τ the best r is a division, so only τ is searched for: along a fine row of values, then between the two neighbours
 * of the best. No start value is needed, and nothing can run away. With the rated power, r gives C and τ gives U.
 *
 * Where there is no reading of one kind, what it would have told comes from the typical oven of the volume: without a reading
 * after switching off τ is drawn to the typical one, without a reading of heating up C is the typical one.
 */
import type { OvenKind } from '../kitchen/kitchen.ts';
import type { Source } from '../source.ts';
import type { Working } from '../working.ts';
import { timeConstantMin, type OvenModel } from './oven-model.ts';
import { soundReadings, type HeatReading, type OffReading, type OvenReadings } from './oven-readings.ts';
import { TYPICAL_OVEN, typicalOven } from './typical-oven.ts';

/** Where a number of the fit is from; `both`: few readings, held near the typical value. */
export type Basis = 'readings' | 'both' | 'typical';

export type FittedReading = (
  ({ readonly kind: 'toHeat' } & HeatReading) | ({ readonly kind: 'afterOff' } & OffReading)
) & {
  /** What the fitted oven has then, °C, and the reading less that. */
  readonly modelC: number;
  readonly residualC: number;
};

export interface OvenFit {
  readonly model: OvenModel;
  readonly capacityFrom: Basis;
  readonly timeConstantFrom: Basis;
  /** In the order of the user's readings; those with a fault are left out. */
  readonly readings: readonly FittedReading[];
  /** Root of the mean square of the residuals, K; 0 without readings. */
  readonly rmsK: number;
}

export interface CalibratedOven {
  readonly volumeL: number;
  readonly kind: OvenKind;
  readonly powerW: number;
}

export const FITTED_OVEN: Source = {
  standing: 'reading',
  cite: 'Least squares through the readings of this oven',
};

/** Spread of a household reading, K, and of typical ovens about the typical time constant, as a logarithm. Common practice. */
const READING_SPREAD_K = 5;
const TYPICAL_SPREAD = 0.4;

/** Time constants that are tried, minutes. */
const [SHORTEST_MIN, LONGEST_MIN, STEPS] = [1, 6000, 150];

const shape = (minutes: number, tau: number): number => -tau * Math.expm1(-minutes / tau);

const byTime = (a: HeatReading, b: HeatReading): number => a.minutes - b.minutes || a.celsius - b.celsius;

/** Smallest value of a function of one number: along a row of values, then by golden section about the best. */
function leastAt(badness: (x: number) => number, from: number, to: number): number {
  const step = (to - from) / STEPS;
  let [best, least] = [from, badness(from)];
  for (let index = 1; index <= STEPS; index++) {
    const value = badness(from + index * step);
    if (value < least) [best, least] = [from + index * step, value];
  }
  let [low, high] = [Math.max(from, best - step), Math.min(to, best + step)];
  const golden = (Math.sqrt(5) - 1) / 2;
  for (let round = 0; round < 50; round++) {
    const [a, b] = [high - golden * (high - low), low + golden * (high - low)];
    if (badness(a) <= badness(b)) high = b;
    else low = a;
  }
  return (low + high) / 2;
}

/**
 * Fits an oven to readings of it.
 *
 * @param roomC temperature of the room at the readings, °C
 * @param readings none, some or many; those that cannot be (`readingFaults`) are left out
 * @returns the fitted oven, with each reading against it and which of its numbers are the user's own
 */
export function calibrateOven(oven: CalibratedOven, roomC: number, readings: OvenReadings): OvenFit {
  const typical = typicalOven(oven.volumeL, oven.kind, oven.powerW);
  const sound = soundReadings(readings, roomC, oven);
  // Sorted, so that sums do not depend on the order of the readings.
  const heat = [...sound.toHeat].sort(byTime);
  const off = [...sound.afterOff].sort((a, b) => byTime(a, b) || a.fromC - b.fromC);
  const rise = (tau: number): number => {
    const sums = heat.reduce(
      ({ over, under }, { minutes, celsius }) => {
        const f = shape(minutes, tau);
        return { over: over + f * (celsius - roomC), under: under + f * f };
      },
      { over: 0, under: 0 },
    );
    return sums.over / sums.under;
  };
  const heatedC = (minutes: number, tau: number, r: number): number => roomC + r * shape(minutes, tau);
  const fallenC = ({ fromC, minutes }: OffReading, tau: number): number =>
    roomC + (fromC - roomC) * Math.exp(-minutes / tau);
  const typicalLog = Math.log(timeConstantMin(typical));

  const badness = (logTau: number): number => {
    const tau = Math.exp(logTau);
    const r = heat.length === 0 ? 0 : rise(tau);
    const squares =
      heat.reduce((sum, { minutes, celsius }) => sum + (celsius - heatedC(minutes, tau, r)) ** 2, 0) +
      off.reduce((sum, reading) => sum + (reading.celsius - fallenC(reading, tau)) ** 2, 0);
    const drawn = off.length === 0 ? ((logTau - typicalLog) / TYPICAL_SPREAD) ** 2 : 0;
    return squares / READING_SPREAD_K ** 2 + drawn;
  };
  const tau =
    heat.length + off.length === 0
      ? timeConstantMin(typical)
      : Math.exp(leastAt(badness, Math.log(SHORTEST_MIN), Math.log(LONGEST_MIN)));

  const entering = oven.powerW * typical.enteringShare;
  const capacityJPerK = heat.length === 0 || entering === 0 ? typical.capacityJPerK : (entering * 60) / rise(tau);
  const model = { ...typical, capacityJPerK, lossWPerK: capacityJPerK / (tau * 60) };
  const r = (entering * 60) / capacityJPerK;
  const fitted: FittedReading[] = [
    ...sound.toHeat.map((reading) => {
      const modelC = heatedC(reading.minutes, tau, r);
      return { kind: 'toHeat' as const, ...reading, modelC, residualC: reading.celsius - modelC };
    }),
    ...sound.afterOff.map((reading) => {
      const modelC = fallenC(reading, tau);
      return { kind: 'afterOff' as const, ...reading, modelC, residualC: reading.celsius - modelC };
    }),
  ];
  return {
    model,
    capacityFrom: heat.length === 0 ? 'typical' : off.length === 0 ? 'both' : 'readings',
    timeConstantFrom: off.length > 0 ? 'readings' : heat.length > 0 ? 'both' : 'typical',
    readings: fitted,
    rmsK: Math.sqrt(fitted.reduce((sum, { residualC }) => sum + residualC ** 2, 0) / Math.max(1, fitted.length)),
  };
}

/** Source of a fit as a whole: the user's readings, or the typical oven where one of its numbers is typical. */
export const sourceOfFit = (fit: OvenFit): Source =>
  fit.capacityFrom === 'readings' && fit.timeConstantFrom === 'readings' ? FITTED_OVEN : TYPICAL_OVEN;

/** Workings of the two numbers that a fit comes to; the readings stand as inputs. */
export function fitWorking(fit: OvenFit, roomC: number): { readonly capacity: Working; readonly loss: Working } {
  const source = sourceOfFit(fit);
  const tau = timeConstantMin(fit.model);
  const read = fit.readings.map((reading, index) => ({
    symbol: `T${index + 1}`,
    name:
      reading.kind === 'toHeat'
        ? `read ${reading.minutes} min after switching on`
        : `read ${reading.minutes} min after switching off at ${reading.fromC} °C`,
    value: reading.celsius,
    unit: '°C',
  }));
  const room = { symbol: 'Tr', name: 'temperature of the room', value: roomC, unit: '°C' };
  const entering = fit.model.powerW * fit.model.enteringShare;
  const capacity: Working = {
    name: 'Heat capacity of this oven',
    value: fit.model.capacityJPerK,
    unit: 'J/K',
    formula: 'C = 60·η·P / r, r the rise per minute of the cold oven that leaves the least squares',
    inputs: [
      { symbol: 'η·P', name: 'power that enters', value: entering, unit: 'W' },
      { symbol: 'r', name: 'rise of the cold oven', value: (entering * 60) / fit.model.capacityJPerK, unit: 'K/min' },
      room,
      ...read,
    ],
    source,
    caution: `The readings are met to ${fit.rmsK.toFixed(1)} K on the mean.`,
  };
  return {
    capacity,
    loss: {
      name: 'Heat loss of this oven',
      value: fit.model.lossWPerK,
      unit: 'W/K',
      formula: 'U = C / (60·τ), τ the time constant that leaves the least squares',
      inputs: [
        { symbol: 'C', name: 'heat capacity', value: fit.model.capacityJPerK, unit: 'J/K', source },
        { symbol: 'τ', name: 'time constant', value: tau, unit: 'min', source },
        room,
        ...read,
      ],
      source,
      parts: [capacity],
    },
  };
}
