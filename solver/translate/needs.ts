/** Needs: the modes in which a place is held, with the soil it takes and gives, its power and its energy. */
import type { Mode, Use } from '../engine/problem.ts';
import { burnerWatts } from '../water/burner-power.ts';
import { dialWindow } from '../heat/oven-tables.ts';
import type { StepInstance } from '../kitchen/expand.ts';
import { panFits, type Burner, type Kitchen } from '../kitchen/kitchen.ts';
import { onceFor, onceForBoth } from '../kitchen/once.ts';
import type { Session } from '../kitchen/session.ts';
import { boilMinutesInKettle, boilMinutesOnBurner } from '../water/boil.ts';
import { mostKeepDrawW } from '../water/simmer.ts';
import type { Need } from '../kitchen/step.ts';
import type { HandSoil } from './hands.ts';
import type { Length } from './lengths.ts';
import type { PlaceOption, Translation } from './legend.ts';
import { placeOptions } from './places.ts';
import { poolOptions } from './pools.ts';
import { draws, wattHoursPerMinute } from './power.ts';
import { thingSoil } from './soil.ts';

/** The things that can meet a need in this kitchen and session. */
export const optionsOf = (t: Translation, need: Need): readonly PlaceOption[] => optionsIn(t.session, t.kitchen)(need);

const optionsIn = onceForBoth((session: Session, kitchen: Kitchen) =>
  onceFor((need: Need) => (need.use === 'pool' ? poolOptions(session, kitchen, need) : placeOptions(kitchen, need))),
);

/** Number of a window among those wanted of an oven; new windows are added. */
function classOf(t: Translation, ovenId: string, need: Extract<Need, { use: 'oven' }>): number {
  const oven = t.kitchen.ovens.find((candidate) => candidate.id === ovenId)!;
  const window = dialWindow(oven, need.leastC, need.mostC)!;
  const classes = t.ovenClasses.get(ovenId) ?? [];
  t.ovenClasses.set(ovenId, classes);
  const known = classes.findIndex(
    (each) => each.function === need.function && each.leastC === window.leastC && each.mostC === window.mostC,
  );
  return known >= 0 ? known : classes.push({ function: need.function, ...window }) - 1;
}

/** Every pan of a component has its lid on. */
const alwaysLidded = onceFor(({ steps, holds }: StepInstance['component']): boolean =>
  [...steps.flatMap((step) => [...step.needs, ...(step.alternatives ?? []).flatMap((way) => way.needs)])]
    .concat((holds ?? []).map((hold) => hold.need))
    .every((need) => need.use !== 'pan' || need.lid === true),
);

/** Wh that a burner said to simmer takes on top, at full power until the water of its step boils. */
function boilOnTopWh(
  t: Translation,
  burner: Burner,
  heat: 'full' | 'simmer',
  mean: number,
  instance: Pick<StepInstance, 'component'> & Partial<Pick<StepInstance, 'ways'>>,
): number {
  const boiled = (instance.ways ?? []).map(({ parts }) =>
    parts.reduce((sum, part) => sum + (part.hands === 'off' ? part.boilMl : 0), 0),
  );
  const ml = Math.max(0, ...boiled);
  if (heat === 'full' || ml === 0) return 0;
  const lidded = alwaysLidded(instance.component);
  const minutes = t.kitchen.pans
    .filter((pan) => panFits(burner, pan))
    .map((pan) => boilMinutesOnBurner(t.kitchen, burner, pan, ml, lidded && pan.lid))
    .filter(Number.isFinite);
  return (Math.max(0, ...minutes) * (burner.powerW - mean)) / 60;
}

/** One mode an option, each of a length within `span`. */
export function needModes(
  t: Translation,
  instance: Pick<StepInstance, 'component'> & Partial<Pick<StepInstance, 'ways'>>,
  need: Need,
  options: readonly PlaceOption[],
  soil: HandSoil,
  span: Length,
): readonly Mode[] {
  return options.map((option): Mode => {
    const { kind, id } = option.place;
    const use: Use = {
      resource: option.resource,
      amount: option.amount,
      ...thingSoil(t, kind, instance.component.id, soil),
    };
    switch (need.use) {
      case 'oven':
        return {
          ...span,
          uses: [use],
          ...(need.afterheat === true
            ? {}
            : { state: { state: `oven:${option.place.oven!}`, class: classOf(t, option.place.oven!, need) } }),
        };
      case 'burner': {
        const burner = t.kitchen.hob.burners.find((each) => each.id === id)!;
        // Which pan is chosen apart: the one that loses most stands for all.
        const mean =
          need.heat === 'full'
            ? burner.powerW
            : mostKeepDrawW(t.kitchen, burner, alwaysLidded(instance.component), 'simmer');
        return {
          ...span,
          uses: [use, ...draws(t.kitchen, id, burnerWatts(t.kitchen, burner, need.heat))],
          cost: {
            fixed: Math.round(boilOnTopWh(t, burner, need.heat, mean, instance)),
            perMinute: wattHoursPerMinute(mean),
          },
        };
      }
      case 'kettle': {
        const kettle = t.kitchen.kettle!;
        const wattHours = Math.round((kettle.powerW * boilMinutesInKettle(t.kitchen, kettle, need.ml)) / 60);
        return {
          ...span,
          uses: [use, ...draws(t.kitchen, id, kettle.powerW)],
          cost: { fixed: wattHours, perMinute: 0 },
        };
      }
      case 'appliance': {
        const watts = t.kitchen.appliances.find((appliance) => appliance.id === id)!.powerW;
        return {
          ...span,
          uses: [use, ...draws(t.kitchen, id, watts)],
          cost: { fixed: 0, perMinute: wattHoursPerMinute(watts) },
        };
      }
      case 'pool':
        return {
          ...span,
          uses: [
            ...(need.how === 'draw' ? [] : [{ resource: option.resource, amount: option.amount }]),
            {
              resource: `water:${id}`,
              amount: 0,
              avoids: soil.avoids,
              ...(need.how === 'draw' ? {} : { leaves: soil.leaves }),
            },
          ],
        };
      default:
        return { ...span, uses: [use] };
    }
  });
}
