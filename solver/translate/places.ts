/** Places: which things of the kitchen can meet a need, and the resource that each is. */
import type { Kitchen } from '../kitchen/kitchen.ts';
import type { Need } from '../kitchen/step.ts';
import { dialWindow } from '../heat/oven-tables.ts';
import type { PlaceOption, Translation } from './legend.ts';

export const RACK_ROOM = 100;

/** Declares every thing of the kitchen as a resource. */
export function declarePlaces(t: Translation): void {
  const { kitchen, builder } = t;
  for (const oven of kitchen.ovens)
    for (const rack of oven.racks) builder.resource(`rack:${oven.id}/${rack.id}`, RACK_ROOM);
  for (const burner of kitchen.hob.burners) builder.resource(`burner:${burner.id}`, 1);
  for (const pan of kitchen.pans) builder.resource(`pan:${pan.id}`, 1);
  for (const tray of kitchen.trays) builder.resource(`tray:${tray.id}`, 1);
  for (const board of kitchen.boards) builder.resource(`board:${board.id}`, 1);
  for (const bowl of kitchen.bowls) builder.resource(`bowl:${bowl.id}`, 1);
  for (const tool of kitchen.tools) builder.resource(`tool:${tool.id}`, 1);
  for (const appliance of kitchen.appliances) builder.resource(`appliance:${appliance.id}`, appliance.places);
  if (kitchen.kettle !== undefined) builder.resource(`kettle:${kitchen.kettle.id}`, 1);
  builder.resource('sink:sink', kitchen.sink.places);
  builder.resource('resting:resting', kitchen.resting.places);
  builder.resource('cooling:cooling', kitchen.cooling.places);
  builder.resource('drying:drying', kitchen.drying.places);
}

/** Resources of a thing named by its id alone, as absences and pins name it. */
export function resourcesOfThing(kitchen: Kitchen, id: string): readonly string[] {
  const ids: string[] = [];
  for (const oven of kitchen.ovens) {
    for (const rack of oven.racks) if (oven.id === id || rack.id === id) ids.push(`rack:${oven.id}/${rack.id}`);
  }
  const lists = {
    burner: kitchen.hob.burners,
    pan: kitchen.pans,
    tray: kitchen.trays,
    board: kitchen.boards,
    bowl: kitchen.bowls,
    tool: kitchen.tools,
    appliance: kitchen.appliances,
    kettle: kitchen.kettle === undefined ? [] : [kitchen.kettle],
    sink: [{ id: 'sink' }],
    resting: [{ id: 'resting' }],
    cooling: [{ id: 'cooling' }],
    drying: [{ id: 'drying' }],
  };
  for (const [kind, list] of Object.entries(lists))
    for (const thing of list) if (thing.id === id) ids.push(`${kind}:${id}`);
  return ids;
}

const thing = (kind: PlaceOption['place']['kind'], id: string, amount = 1): PlaceOption => ({
  resource: `${kind}:${id}`,
  amount,
  place: { kind, id, amount },
});

/**
 * The things that can meet a need, in the order of the kitchen document.
 *
 * Pools are not among them: they are chosen by boil, in `pools.ts`.
 */
export function placeOptions(kitchen: Kitchen, need: Exclude<Need, { use: 'pool' }>): readonly PlaceOption[] {
  switch (need.use) {
    case 'oven':
      return kitchen.ovens.flatMap((oven) => {
        const window =
          need.afterheat === true
            ? { leastC: need.leastC, mostC: need.mostC }
            : dialWindow(oven, need.leastC, need.mostC);
        if (window === null || (need.afterheat !== true && !oven.functions.includes(need.function))) return [];
        return oven.racks.map((rack) => ({
          resource: `rack:${oven.id}/${rack.id}`,
          amount: need.share,
          place: {
            kind: 'rack' as const,
            id: rack.id,
            oven: oven.id,
            amount: need.share,
            function: need.function,
            leastC: need.leastC,
            mostC: need.mostC,
            ...(need.afterheat === true ? { afterheat: true } : {}),
          },
        }));
      });
    case 'burner':
      return kitchen.hob.burners.map((burner) => thing('burner', burner.id));
    case 'pan':
      return kitchen.pans
        .filter((pan) => pan.volumeMl >= need.leastMl && (need.lid !== true || pan.lid))
        .map((pan) => thing('pan', pan.id));
    case 'tray':
      return kitchen.trays.map((tray) => thing('tray', tray.id));
    case 'board':
      return kitchen.boards.map((board) => thing('board', board.id));
    case 'bowl':
      return kitchen.bowls.filter((bowl) => bowl.volumeMl >= need.leastMl).map((bowl) => thing('bowl', bowl.id));
    case 'tool':
      return kitchen.tools.filter((tool) => tool.kind === need.kind).map((tool) => thing('tool', tool.id));
    case 'appliance':
      return kitchen.appliances
        .filter((appliance) => appliance.does === need.does)
        .map((appliance) => thing('appliance', appliance.id));
    case 'kettle':
      return kitchen.kettle === undefined || kitchen.kettle.mostMl < need.ml
        ? []
        : [thing('kettle', kitchen.kettle.id)];
    case 'sink':
      return [thing('sink', 'sink')];
    case 'place':
      return [thing(need.place, need.place, need.places)];
  }
}

/** Things on which food leaves its own traces, so that another component needs them washed. */
export const VESSELS: ReadonlySet<string> = new Set(['pan', 'tray', 'bowl']);
/** Things that carry allergens and raw soil. */
export const SOILED: ReadonlySet<string> = new Set(['pan', 'tray', 'bowl', 'board', 'tool', 'appliance']);
