/**
 * Energy of an oven's course: what was drawn, what entered, what is stored in the oven at the end, and what went to the room.
 * Each is worked out on its own, so that they can be held against each other: entered = stored + lost.
 */
import type { Source } from '../source.ts';
import type { Working } from '../working.ts';
import {
  celsiusLater,
  enteringW,
  holdingDrawW,
  hottestC,
  LUMPED_MODEL,
  minutesToHeat,
  modelInputs,
  timeConstantMin,
  type OvenModel,
} from './oven-model.ts';

/** A stretch of a course: heated at full power to a temperature, held where it is, or switched off. */
export type Stretch =
  | { readonly kind: 'heat'; readonly toC: number }
  | { readonly kind: 'hold'; readonly minutes: number }
  | { readonly kind: 'off'; readonly minutes: number };

/** Energy, Wh. What is stored can be negative: given off again. */
export interface CourseEnergy {
  readonly drawnWh: number;
  readonly enteredWh: number;
  readonly storedWh: number;
  readonly lostWh: number;
  readonly minutes: number;
  /** Temperature at the end, °C. */
  readonly endC: number;
}

const WH_PER_J = 1 / 3600;

/** Heat lost, J, while the temperature runs from `fromC` towards `towardsC`: U·∫(T − Tr) dt of the exponential. */
function lostRunning(model: OvenModel, roomC: number, fromC: number, towardsC: number, minutes: number): number {
  const tau = timeConstantMin(model) * 60;
  const seconds = minutes * 60;
  const integral = (towardsC - roomC) * seconds + (fromC - towardsC) * tau * (1 - Math.exp(-seconds / tau));
  return model.lossWPerK * integral;
}

interface Leg {
  readonly minutes: number;
  readonly enteredJ: number;
  readonly lostJ: number;
  readonly endC: number;
}

function leg(model: OvenModel, roomC: number, fromC: number, stretch: Stretch): Leg | 'never' {
  switch (stretch.kind) {
    case 'heat': {
      const minutes = minutesToHeat(model, roomC, fromC, stretch.toC);
      if (minutes === 'never') return 'never';
      const lostJ = lostRunning(model, roomC, fromC, hottestC(model, roomC), minutes);
      return { minutes, enteredJ: enteringW(model) * minutes * 60, lostJ, endC: Math.max(fromC, stretch.toC) };
    }
    case 'hold': {
      const seconds = stretch.minutes * 60;
      return {
        minutes: stretch.minutes,
        enteredJ: holdingDrawW(model, roomC, fromC) * model.enteringShare * seconds,
        lostJ: model.lossWPerK * (fromC - roomC) * seconds,
        endC: fromC,
      };
    }
    case 'off': {
      const { minutes } = stretch;
      const endC = celsiusLater(model, roomC, fromC, 'off', minutes);
      return { minutes, enteredJ: 0, lostJ: lostRunning(model, roomC, fromC, roomC, minutes), endC };
    }
  }
}

/**
 * Energy of a course from one temperature through several stretches.
 *
 * @param fromC temperature at its start, °C, at least the room's
 * @param course stretches in their order; what is held must be below what power can reach
 * @returns the sums in Wh, or `never` where a stretch heats to what power cannot reach
 */
export function courseEnergy(
  model: OvenModel,
  roomC: number,
  fromC: number,
  course: readonly Stretch[],
): CourseEnergy | 'never' {
  let [minutes, enteredJ, lostJ, celsius] = [0, 0, 0, fromC];
  for (const stretch of course) {
    const done = leg(model, roomC, celsius, stretch);
    if (done === 'never') return 'never';
    minutes += done.minutes;
    enteredJ += done.enteredJ;
    lostJ += done.lostJ;
    celsius = done.endC;
  }
  return {
    drawnWh: (enteredJ / model.enteringShare) * WH_PER_J,
    enteredWh: enteredJ * WH_PER_J,
    storedWh: model.capacityJPerK * (celsius - fromC) * WH_PER_J,
    lostWh: lostJ * WH_PER_J,
    minutes,
    endC: celsius,
  };
}

/**
 * Working of heating an oven and holding it: the draw of the most common course.
 *
 * @param holdMinutes minutes for which the temperature is held
 * @returns null where power cannot reach the temperature
 */
export function heatAndHoldWorking(
  model: OvenModel,
  roomC: number,
  toC: number,
  holdMinutes: number,
  source: Source,
): Working | null {
  const energy = courseEnergy(model, roomC, roomC, [
    { kind: 'heat', toC },
    { kind: 'hold', minutes: holdMinutes },
  ]);
  if (energy === 'never') return null;
  return {
    name: `Energy drawn to heat the oven to ${toC} °C and hold it for ${holdMinutes} min`,
    value: energy.drawnWh,
    unit: 'Wh',
    formula: 'E = (t₁·P + t₂·U·(T − Tr)/η) / 60',
    inputs: [
      ...modelInputs(model, source),
      { symbol: 't₁', name: 'time to heat up', value: energy.minutes - holdMinutes, unit: 'min' },
      { symbol: 't₂', name: 'time held', value: holdMinutes, unit: 'min' },
      { symbol: 'T', name: 'temperature held', value: toC, unit: '°C' },
      { symbol: 'Tr', name: 'temperature of the room', value: roomC, unit: '°C' },
    ],
    source: LUMPED_MODEL,
  };
}
