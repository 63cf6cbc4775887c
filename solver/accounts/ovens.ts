/**
 * Ovens of a plan. An oven's energy is borne by what it heated, by share of a rack times minutes; what dries or crisps in its
 * afterheat bears nothing. Alone, a component has an oven to itself: cold at first, heated for its first use, kept on from its
 * first to its last use at the times of the plan, then off; and what used afterheat has to be heated for.
 */
import { sourceOfFit } from '../heat/oven-calibration.ts';
import { ovenHeat, type OvenHeat } from '../heat/oven-heat.ts';
import { ovenProgramme, type WindowUse } from '../heat/oven-programme.ts';
import { dialWindow, heatMinutes } from '../heat/oven-tables.ts';
import type { Reading, Use } from '../checker/reading.ts';
import { minutesUp } from '../kitchen/scaling.ts';
import type { Need } from '../kitchen/step.ts';
import type { Working } from '../working.ts';
import { electricity, gas, type Amount } from './amounts.ts';
import type { AloneEntry, SourceEntry } from './entry.ts';
import { ovenDraw, type OvenDraw } from './oven-course-energy.ts';
import { sharedOut } from './shares.ts';

type OvenUse = Use & { readonly need: Extract<Need, { use: 'oven' }> };

const isOvenUse = (use: Use): use is OvenUse => use.need.use === 'oven';

/** Energy of uses that have the oven to themselves, Wh; 0 where its dial or power cannot serve them. */
function aloneWh(heat: OvenHeat, uses: readonly OvenUse[]): number {
  const windows = uses.flatMap(({ need, place }): readonly (WindowUse & { readonly cold: boolean })[] =>
    dialWindow(heat.oven, need.leastC, need.mostC) === null
      ? []
      : [
          {
            start: place.from,
            end: place.until,
            function: need.function,
            leastC: need.leastC,
            mostC: need.mostC,
            cold: need.coldStart === true,
          },
        ],
  );
  const first = [...windows].sort((a, b) => a.start - b.start)[0];
  if (first === undefined) return 0;
  const preheat = first.cold
    ? 0
    : minutesUp(heatMinutes(heat, heat.roomC, dialWindow(heat.oven, first.leastC, first.mostC)!.leastC));
  if (!Number.isFinite(preheat)) return 0;
  const until = Math.max(...windows.map(({ end }) => end));
  const programme = ovenProgramme(heat, windows, { from: first.start - preheat, until }, until);
  return programme === null ? 0 : ovenDraw(heat, programme.settings, until).wattHours;
}

/** The oven's draw, worked out. */
function working(heat: OvenHeat, draw: OvenDraw): Working {
  const { oven } = heat;
  return {
    name: `Energy of ${oven.name}`,
    value: draw.wattHours,
    unit: 'Wh',
    formula: 'E = t₁·P / 60 + E₂',
    inputs: [
      { symbol: 't₁', name: 'minutes at full power', value: draw.heatingMinutes, unit: 'min' },
      { symbol: 'P', name: 'rated power', value: oven.powerW, unit: 'W' },
      {
        symbol: 'E₂',
        name: `energy of the ${Math.round(draw.holdingMinutes)} min in which a temperature is held`,
        value: draw.holdingWh,
        unit: 'Wh',
        ...(oven.holdingW === undefined ? { source: sourceOfFit(heat.fit()) } : {}),
      },
    ],
    source: { standing: 'derived', cite: 'Heat balance: full power while it heats, the holding draw while it holds' },
    caution: 'Opened doors and cold food are not in it.',
  };
}

/** One entry for each oven that the plan switches on. */
export function ovenEntries({ plan, uses }: Reading): readonly SourceEntry[] {
  return plan.ovens.flatMap(({ oven: id, settings }): readonly SourceEntry[] => {
    const oven = plan.kitchen.ovens.find((each) => each.id === id);
    if (oven === undefined) return [];
    const heat = ovenHeat(oven, plan.kitchen.roomC);
    const draw = ovenDraw(heat, settings, plan.allAwayMinutes);
    const energy = (wattHours: number): Amount => (oven.kind === 'gas' ? gas(wattHours) : electricity(wattHours));
    const inside = uses.filter(isOvenUse).filter(({ place }) => place.oven === id);
    const heated = inside.filter(({ need }) => need.afterheat !== true);
    const shares = heated.map(({ component, place }) => ({
      component: component.id,
      weight: place.amount * (place.until - place.from),
    }));
    const alone = (['kept-hot', 'afterheat'] as const).flatMap((by) => {
      const own = inside.filter(({ need }) => (need.afterheat === true) === (by === 'afterheat'));
      const components = [...new Set(own.map(({ component }) => component.id))];
      // What has the oven to itself takes alone what it took.
      if (by === 'kept-hot' && components.length === 1)
        return [{ component: components[0]!, by: 'own' as const, amount: energy(draw.wattHours) }];
      return components.map((component): AloneEntry => ({
        component,
        by,
        amount: energy(
          aloneWh(
            heat,
            own.filter((use) => use.component.id === component),
          ),
        ),
      }));
    });
    const amount = energy(draw.wattHours);
    return [
      {
        kind: 'oven',
        id,
        name: oven.name,
        amount,
        borne: sharedOut(amount, shares),
        alone,
        workings: [working(heat, draw)],
      },
    ];
  });
}
