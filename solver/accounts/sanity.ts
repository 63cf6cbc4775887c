/** Lines that hold the account's models against published yardsticks: an oven against its standard consumption, a hob against its limit. */
import { sourceOfFit } from '../heat/oven-calibration.ts';
import { ovenHeat } from '../heat/oven-heat.ts';
import { standardCycle, standardCycleWorking } from '../heat/oven-standard-cycle.ts';
import { ENERGY_LABEL } from '../heat/oven-energy-standard.ts';
import type { Plan } from '../kitchen/plan.ts';
import type { Source } from '../source.ts';
import { boilMinutesExact } from '../water/boil.ts';
import { surroundingsOf } from '../water/pot-loss.ts';
import { massKg } from '../water/properties.ts';
import { HOB_LIMIT } from '../water/sources.ts';
import type { Working } from '../working.ts';

export interface SanityLine {
  /** What is compared, as a sentence's beginning. */
  readonly name: string;
  readonly value: number;
  readonly yardstick: number;
  readonly unit: string;
  /** Whether the figure is where the yardstick lets one expect it. */
  readonly plausible: boolean;
  readonly source: Source;
  readonly working?: Working;
}

/** Electric hobs put on the market in the EU since 2019 use less than this in the standard's test, Wh for each kg of water. */
export const HOB_LIMIT_WH_PER_KG = 195;
/** A model within this factor of the standard consumption is called plausible. Common practice. */
const OVEN_WITHIN = 1.5;

function ovenLine(plan: Plan, id: string): readonly SanityLine[] {
  const oven = plan.kitchen.ovens.find((each) => each.id === id);
  if (oven === undefined) return [];
  const fit = ovenHeat(oven, plan.kitchen.roomC).fit();
  const mode = oven.functions.includes('conventional') ? 'conventional' : 'fan';
  const cycle = standardCycle(fit.model, oven.volumeL, mode);
  if (cycle === 'never') return [];
  const working = standardCycleWorking(fit.model, oven.volumeL, mode, sourceOfFit(fit));
  return [
    {
      name: `A standard cycle in ${oven.name} (${oven.volumeL} L) against the standard consumption of its volume`,
      value: cycle.modelKWh,
      yardstick: cycle.standardKWh,
      unit: 'kWh',
      plausible: cycle.ratio < OVEN_WITHIN && cycle.ratio > 1 / OVEN_WITHIN,
      source: ENERGY_LABEL,
      ...(working === null ? {} : { working }),
    },
  ];
}

/** Wh that an electric hob draws for each kg of a pool's water, from cold to the boil, against the limit of the standard's test. */
function hobLine(plan: Plan, course: Plan['pools'][number]): readonly SanityLine[] {
  const { kitchen } = plan;
  const pool = (plan.session.pools ?? []).find(({ id }) => id === course.pool);
  const pan = kitchen.pans.find(({ id }) => id === course.pan);
  const burner = kitchen.hob.burners.find(({ id }) => id === course.boils[0]?.burner);
  if (kitchen.hob.heat === 'gas' || pool === undefined || pan === undefined || burner === undefined) return [];
  const minutes = boilMinutesExact(kitchen, burner, pan, pool.waterMl, pan.lid, false);
  const value = (minutes * burner.powerW) / 60 / massKg(pool.waterMl, surroundingsOf(kitchen).tapC);
  return [
    {
      name: `${pool.name} to the boil on ${burner.name}, for each kg of water, against the limit of the standard's own test`,
      value,
      yardstick: HOB_LIMIT_WH_PER_KG,
      unit: 'Wh/kg',
      plausible: value < HOB_LIMIT_WH_PER_KG,
      source: HOB_LIMIT,
    },
  ];
}

/** One line for each oven and each pool that the plan uses. */
export const sanityLines = (plan: Plan): readonly SanityLine[] => [
  ...plan.ovens.flatMap(({ oven }) => ovenLine(plan, oven)),
  ...plan.pools.flatMap((course) => hobLine(plan, course)),
];
