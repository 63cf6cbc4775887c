/** What an oven draws through the turns of its dial: full power while it heats, its holding draw where it holds, nothing as it falls. */
import { holdingW, type OvenHeat } from '../heat/oven-heat.ts';
import { celsiusAfter, heatMinutes } from '../heat/oven-tables.ts';
import type { OvenProgramme } from '../kitchen/plan.ts';

export interface OvenDraw {
  readonly wattHours: number;
  /** Minutes at full power. */
  readonly heatingMinutes: number;
  /** Minutes at which a temperature was held, and the energy of these. */
  readonly holdingMinutes: number;
  readonly holdingWh: number;
}

/**
 * Draw of an oven that is as cold as its room before the first setting; from its curves and its holding draw.
 *
 * @param settings in order of time; the last switches off, or the oven is off at `until`
 * @param until end of the reckoning, minutes
 * @see `ovenHeat` for where its curves come from
 */
export function ovenDraw(heat: OvenHeat, settings: OvenProgramme['settings'], until: number): OvenDraw {
  let [celsius, heatingMinutes, holdingMinutes, holdingWh] = [heat.roomC, 0, 0, 0];
  settings.forEach(({ minute, celsius: dialC }, index) => {
    const end = settings[index + 1]?.minute ?? until;
    for (let now = minute; now < end; now++) {
      if (dialC !== null && dialC >= celsius) {
        const heating = Math.min(1, heatMinutes(heat, celsius, dialC));
        heatingMinutes += heating;
        holdingMinutes += 1 - heating;
        holdingWh += ((1 - heating) * holdingW(heat, dialC)) / 60;
      }
      celsius = celsiusAfter(heat, celsius, dialC, 1);
    }
  });
  return {
    wattHours: (heatingMinutes * heat.oven.powerW) / 60 + holdingWh,
    heatingMinutes,
    holdingMinutes,
    holdingWh,
  };
}
