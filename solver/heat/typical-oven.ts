/**
 * What an oven is like of which nobody has read anything: heat capacity and loss by usable volume and kind, from published energy
 * figures. Two energies fix the two unknowns of an oven of 40 L, C and U, worked by hand:
 *
 *     pre-heating, 20 → 200 °C in 12 min:   C·180 K + U·90 K·720 s            = 0.32 kWh
 *     standard cycle, 180 K over the room:  C·180 K + U·180 K·(2700 − 360) s  = SEC(40 L) − heat of the wet brick
 *
 * Heating up, the oven is half as much hotter than the room on the mean as at its end; the cycle takes 45 min, 12 of them heating
 * up. That gives C = 5.2 kJ/K and U = 3.2 W/K. Other volumes have them in proportion to SEC(V), small counter ovens, which the
 * standard does not cover, in proportion to V.
 *
 * The loss while hot is not published for any oven. What the brick evaporates counts as loss here, so the loss is rather high
 * and the afterheat rather short. Two or three readings of the oven at hand are worth more than all of this.
 */
import type { OvenKind } from '../kitchen/kitchen.ts';
import type { Source } from '../source.ts';
import type { Working } from '../working.ts';
import { ENERGY_LABEL, standardConsumptionKWh } from './oven-energy-standard.ts';
import type { OvenModel } from './oven-model.ts';
import { BRICK, BRICK_J, CYCLE, CYCLE_MIN } from './oven-standard-cycle.ts';

const J_PER_KWH = 3.6e6;

const PREHEAT: Source = {
  standing: 'secondary',
  cite: 'A private meter test of one small combination oven of 1.6 to 2.2 kW: 12 min and 0.32 kWh to 200 °C; low authority, its volume taken as 40 L',
};
/** For whoever shows a typical value: the weakest of what it rests on. */
export const TYPICAL_OVEN: Source = {
  standing: 'from-memory',
  cite: 'Typical oven of this volume, worked out from published energy figures and a cycle length from memory; the loss of a hot oven was not found in print',
};
const GAS_SHARE_SOURCE: Source = {
  standing: 'secondary',
  cite: 'A consumer energy guide of older ovens, quoted in the press: one hour at 350 °F takes 2.0 kWh electric or 0.112 therm of gas',
  region: 'United States',
};

const PREHEAT_KWH = 0.32;
const PREHEAT_S = 12 * 60;
const RISE_K = 180;
const CYCLE_S = CYCLE_MIN * 60;
const REFERENCE_L = 40;

/** Loss of the 40 L oven, W/K: the second line above less the first. */
const REFERENCE_LOSS_W_PER_K =
  (standardConsumptionKWh(REFERENCE_L, 'electric') * J_PER_KWH - BRICK_J - PREHEAT_KWH * J_PER_KWH) /
  (RISE_K * (CYCLE_S - PREHEAT_S));

/** Heat capacity of the 40 L oven, J/K: the first line above. */
const REFERENCE_CAPACITY_J_PER_K =
  (PREHEAT_KWH * J_PER_KWH - (REFERENCE_LOSS_W_PER_K * RISE_K * PREHEAT_S) / 2) / RISE_K;

/** Part of the gas's heat that stays in the oven, by the same hour in an electric and a gas oven; 1 therm is 29.3 kWh. */
export const GAS_SHARE = 2.0 / (0.112 * 29.3001);

const scaleOf = (volumeL: number, kind: OvenKind): number =>
  kind === 'counter'
    ? volumeL / REFERENCE_L
    : standardConsumptionKWh(volumeL, 'electric') / standardConsumptionKWh(REFERENCE_L, 'electric');

/** Smallest volume reckoned with, L, so that an oven written down with none still has a heat capacity. */
const LEAST_L = 5;

/**
 * A typical oven.
 *
 * @param volumeL usable volume, L
 * @param powerW rated power, W; for gas the heat of what is burnt
 * @returns its model; fan and conventional heat share it, since nothing published tells them apart
 * @see source: `TYPICAL_OVEN`
 */
export function typicalOven(volumeL: number, kind: OvenKind, powerW: number): OvenModel {
  const scale = scaleOf(Math.max(LEAST_L, volumeL), kind);
  return {
    capacityJPerK: REFERENCE_CAPACITY_J_PER_K * scale,
    lossWPerK: REFERENCE_LOSS_W_PER_K * scale,
    powerW,
    enteringShare: kind === 'gas' ? GAS_SHARE : 1,
  };
}

/** Workings of the typical heat capacity and loss, in the same words as the derivation above. */
export function typicalOvenWorking(
  volumeL: number,
  kind: OvenKind,
): { readonly capacity: Working; readonly loss: Working } {
  const scale = scaleOf(Math.max(LEAST_L, volumeL), kind);
  const share = { symbol: 's', name: 'this oven against one of 40 L', value: scale, unit: '1', source: ENERGY_LABEL };
  const preheat = [
    { symbol: 'E₁', name: 'energy of pre-heating', value: PREHEAT_KWH * J_PER_KWH, unit: 'J', source: PREHEAT },
    { symbol: 't₁', name: 'time of pre-heating', value: PREHEAT_S, unit: 's', source: PREHEAT },
    { symbol: 'ΔT', name: 'rise over the room', value: RISE_K, unit: 'K', source: PREHEAT },
  ];
  const loss: Working = {
    name: 'Typical heat loss of an oven of this volume',
    value: REFERENCE_LOSS_W_PER_K * scale,
    unit: 'W/K',
    formula: 'U = s · (SEC − Qb − E₁) / (ΔT · (t₂ − t₁))',
    inputs: [
      share,
      {
        symbol: 'SEC',
        name: 'standard consumption of a 40 L oven',
        value: standardConsumptionKWh(REFERENCE_L, 'electric') * J_PER_KWH,
        unit: 'J',
        source: ENERGY_LABEL,
      },
      { symbol: 'Qb', name: 'heat of the wet brick', value: BRICK_J, unit: 'J', source: BRICK },
      ...preheat,
      { symbol: 't₂', name: 'time of the standard cycle', value: CYCLE_S, unit: 's', source: CYCLE },
    ],
    source: TYPICAL_OVEN,
    caution: 'No published figure of the loss of a hot oven was found. Read your own oven instead.',
  };
  const capacity: Working = {
    name: 'Typical heat capacity of an oven of this volume',
    value: REFERENCE_CAPACITY_J_PER_K * scale,
    unit: 'J/K',
    formula: 'C = s · (E₁ − U₀ · ΔT/2 · t₁) / ΔT',
    inputs: [
      share,
      ...preheat,
      { symbol: 'U₀', name: 'loss of a 40 L oven', value: REFERENCE_LOSS_W_PER_K, unit: 'W/K', source: TYPICAL_OVEN },
    ],
    source: TYPICAL_OVEN,
    parts: [loss],
  };
  return { capacity, loss };
}

/** Working of the part of a gas oven's heat that stays in the oven. */
export const gasShareWorking = (): Working => ({
  name: "Part of the gas's heat that stays in the oven",
  value: GAS_SHARE,
  unit: '1',
  formula: 'η = Ee / Eg',
  inputs: [
    { symbol: 'Ee', name: 'an hour in an electric oven', value: 2.0, unit: 'kWh', source: GAS_SHARE_SOURCE },
    { symbol: 'Eg', name: 'an hour in a gas oven', value: 0.112 * 29.3001, unit: 'kWh', source: GAS_SHARE_SOURCE },
  ],
  source: GAS_SHARE_SOURCE,
});
