/** Ovens: when the heat is on, the turns of the dial, and a preheating entry until the first thing goes in. */
import { ovenHeat } from '../../heat/oven-heat.ts';
import { ovenProgramme, type WindowUse } from '../../heat/oven-programme.ts';
import type { OvenProgramme, PlannedStep } from '../../kitchen/plan.ts';
import type { Translation } from '../legend.ts';
import type { Reading } from './reading.ts';

/**
 * @param steps of the plan, which go into the ovens
 * @param until the plan's last minute
 */
export function ovens(
  t: Translation,
  reading: Reading,
  steps: readonly PlannedStep[],
  until: number,
): { readonly programmes: readonly OvenProgramme[]; readonly preheats: readonly PlannedStep[] } {
  const programmes: OvenProgramme[] = [];
  const preheats: PlannedStep[] = [];
  for (const legend of t.ovens) {
    const fire = reading.at(legend.fire);
    const uses: WindowUse[] = steps.flatMap((step) =>
      step.places
        .filter((place) => place.kind === 'rack' && place.oven === legend.oven.id && place.afterheat !== true)
        .map((place) => ({
          start: place.from,
          end: place.until,
          function: place.function!,
          leastC: place.leastC!,
          mostC: place.mostC!,
        })),
    );
    if (fire === null || uses.length === 0) continue;
    const programme = ovenProgramme(
      ovenHeat(legend.oven, t.kitchen.roomC),
      uses,
      { from: fire.start, until: fire.end },
      until,
    );
    if (programme !== null) programmes.push(programme);
    const first = Math.min(...uses.map((use) => use.start));
    if (first > fire.start) {
      preheats.push({
        id: `${legend.oven.id}/preheat`,
        kind: 'preheat',
        component: legend.oven.id,
        step: 'preheat',
        name: `${legend.oven.name} heats`,
        batch: 1,
        alternative: 0,
        start: fire.start,
        end: first,
        segments: [{ hands: 'off', start: fire.start, end: first }],
        places: [],
        inFinish: false,
      });
    }
  }
  return { programmes, preheats };
}
