/** Share of what a heat source draws that gets into the water. */
import type { Burner, Kitchen, Kettle } from '../kitchen/kitchen.ts';

/** By the hob's kind of heat. @see HOB_EFFICIENCY in sources.ts */
export const EFFICIENCY = { induction: 0.84, ceramic: 0.74, gas: 0.4 } as const;
/** Of an electric kettle. @see KETTLE_EFFICIENCY in sources.ts */
export const KETTLE_SHARE = 0.84;

/** Efficiency of a burner, 0–1: what the kitchen says, or what is published for its kind of heat. */
export const burnerEfficiency = (hob: Kitchen['hob'], burner: Pick<Burner, 'efficiency'>): number =>
  burner.efficiency ?? EFFICIENCY[hob.heat];

/** Heat that a burner at full power gives to a pan, W. */
export const burnerHeatW = (hob: Kitchen['hob'], burner: Burner): number =>
  burnerEfficiency(hob, burner) * burner.powerW;

/** Heat that the kettle gives to its water, W. */
export const kettleHeatW = (kettle: Pick<Kettle, 'powerW'>): number => KETTLE_SHARE * kettle.powerW;
