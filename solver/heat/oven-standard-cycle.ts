/** The standard cycle that the published consumption of ovens is measured by, and what an oven model says of it: a sanity line. */
import type { Source } from '../source.ts';
import type { Working } from '../working.ts';
import { courseEnergy } from './oven-energy.ts';
import { standardConsumptionKWh, standardConsumptionWorking } from './oven-energy-standard.ts';
import { LUMPED_MODEL, modelInputs, type OvenModel } from './oven-model.ts';

/** Sensible heat of the standard load: a brick of 0.92 kg with 1.05 kg of water in it, warmed by 55 K. J. */
export const BRICK_J = (0.92 * 840 + 1.05 * 4186) * 55;

export const BRICK: Source = {
  standing: 'from-memory',
  cite: 'EN 60350-1: the soaked brick of the energy test, its masses and the specific heat of brick from memory, not verified; 55 K as reported of the standard',
  region: 'European Union',
};
/** Minutes that a cycle takes. */
export const CYCLE_MIN = 45;
export const CYCLE: Source = {
  standing: 'from-memory',
  cite: 'Length of the standard cycle from memory, not verified',
};
const ROOM: Source = {
  standing: 'published',
  cite: 'EN 60350-1:2016, clause 5.1: 23 ± 2 °C in the test room for the energy test',
  region: 'European Union',
};
const RISES: Source = {
  standing: 'from-memory',
  cite: 'EN 60350-1, clause 7.4: rise of 180 K conventional and 155 K with fan, from memory, not verified',
};

const TEST_ROOM_C = 23;
const riseK = (mode: 'conventional' | 'fan'): number => (mode === 'conventional' ? 180 : 155);

export interface StandardCycle {
  /** Heat that this oven and the standard load take, kWh, without what the load evaporates. */
  readonly modelKWh: number;
  /** Standard consumption of an electric oven of its volume, kWh. */
  readonly standardKWh: number;
  /** The first over the second. Far from 1 means that a reading, the volume or the power is doubtful. */
  readonly ratio: number;
}

/**
 * What this oven would use for a cycle like the standard one, against the standard consumption of its volume.
 *
 * @param model of the oven, measured or typical; what enters counts, so a gas oven can be compared too
 * @param volumeL usable volume, L
 * @returns `never` where power cannot reach the temperature of the test
 */
export function standardCycle(
  model: OvenModel,
  volumeL: number,
  mode: 'conventional' | 'fan',
): StandardCycle | 'never' {
  const toC = TEST_ROOM_C + riseK(mode);
  const heated = courseEnergy(model, TEST_ROOM_C, TEST_ROOM_C, [{ kind: 'heat', toC }]);
  if (heated === 'never') return 'never';
  const minutes = Math.max(0, CYCLE_MIN - heated.minutes);
  const held = courseEnergy(model, TEST_ROOM_C, toC, [{ kind: 'hold', minutes }]);
  if (held === 'never') return 'never';
  const modelKWh = (heated.enteredWh + held.enteredWh + BRICK_J / 3600) / 1000;
  const standardKWh = standardConsumptionKWh(volumeL, 'electric');
  return { modelKWh, standardKWh, ratio: modelKWh / standardKWh };
}

/**
 * Working of the sanity line.
 * @param source of the model's heat capacity and loss
 * @returns null where power cannot reach the temperature of the test
 */
export function standardCycleWorking(
  model: OvenModel,
  volumeL: number,
  mode: 'conventional' | 'fan',
  source: Source,
): Working | null {
  const cycle = standardCycle(model, volumeL, mode);
  if (cycle === 'never') return null;
  return {
    name: 'A cycle like the standard one in this oven, against the standard consumption for its volume',
    value: cycle.ratio,
    unit: '1',
    formula: 'r = (t₁·η·P + (t − t₁)·U·ΔT + Qb) / SEC, t₁ the time to heat by ΔT',
    inputs: [
      ...modelInputs(model, source),
      { symbol: 'Tr', name: 'temperature of the test room', value: TEST_ROOM_C, unit: '°C', source: ROOM },
      { symbol: 'ΔT', name: 'rise over the room', value: riseK(mode), unit: 'K', source: RISES },
      { symbol: 't', name: 'time of the cycle', value: CYCLE_MIN, unit: 'min', source: CYCLE },
      { symbol: 'Qb', name: 'heat of the wet brick', value: BRICK_J, unit: 'J', source: BRICK },
      { symbol: 'SEC', name: 'standard consumption', value: cycle.standardKWh, unit: 'kWh' },
    ],
    source: LUMPED_MODEL,
    caution: 'A yardstick: what the wet brick evaporates is left out, and the length of the cycle is from memory.',
    parts: [standardConsumptionWorking(volumeL, 'electric')],
  };
}
