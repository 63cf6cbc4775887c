/** Rule 4, all things together: nothing is in two hands at once, no rack or shelf overfull, nothing used while it is not there. */
import type { Kitchen } from '../kitchen/kitchen.ts';
import type { Plan, PlannedPlace } from '../kitchen/plan.ts';
import { minutesDown, minutesUp } from '../kitchen/scaling.ts';
import { durationMinutes } from '../kitchen/values.ts';
import { called, type Reading } from './reading.ts';
import { firstOver } from './sweep.ts';
import type { Violation } from './violation.ts';

const rule = 4 as const;

/** A thing of the kitchen, or room on one, held for some time. */
export interface Holding {
  /** The thing: `rack oven/top`, `pan pot`, `resting`. */
  readonly thing: string;
  /** Ids by which a session may say that it is not there. */
  readonly ids: readonly string[];
  readonly label: string;
  readonly steps: readonly string[];
  readonly from: number;
  readonly until: number;
  readonly amount: number;
}

/** Things of which the kitchen has places rather than pieces; there may be any name for the place. */
const SHELVES: readonly string[] = ['sink', 'resting', 'cooling', 'drying'];

/** What a place is room on. A pool has two kinds of room, its insert and its tiers; water drawn takes none. */
function thingOf({ kind, id, oven, how }: PlannedPlace): string {
  if (kind === 'rack') return `rack ${oven ?? ''}/${id}`;
  if (kind === 'pool') return how === 'steam' ? `tiers ${id}` : how === 'boil' ? `insert ${id}` : `ladle ${id}`;
  return SHELVES.includes(kind) ? kind : `${kind} ${id}`;
}

function capacities(plan: Plan): ReadonlyMap<string, number> {
  const { kitchen } = plan;
  const one = (kind: string, things: readonly { readonly id: string }[]): readonly (readonly [string, number])[] =>
    things.map(({ id }) => [`${kind} ${id}`, 1] as const);
  return new Map([
    ...kitchen.ovens.flatMap((oven) => oven.racks.map((rack) => [`rack ${oven.id}/${rack.id}`, 100] as const)),
    ...one('burner', kitchen.hob.burners),
    ...one('pan', kitchen.pans),
    ...one('tray', kitchen.trays),
    ...one('board', kitchen.boards),
    ...one('bowl', kitchen.bowls),
    ...one('tool', kitchen.tools),
    ...one('kettle', kitchen.kettle === undefined ? [] : [kitchen.kettle]),
    ...kitchen.appliances.map(({ id, places }) => [`appliance ${id}`, places] as const),
    ...(['sink', 'resting', 'cooling', 'drying'] as const).map((shelf) => [shelf, kitchen[shelf].places] as const),
    ...plan.pools.flatMap(({ pool, pan: id }) => {
      const pan = kitchen.pans.find((each) => each.id === id);
      return [[`insert ${pool}`, pan?.insertMl ?? 0] as const, [`tiers ${pool}`, pan?.tiers ?? 0] as const];
    }),
  ]);
}

const nameOf = (thing: string, kitchen: Kitchen): string => {
  const id = thing.slice(thing.indexOf(' ') + 1);
  const [oven, rack] = id.split('/');
  const racks = kitchen.ovens.find((each) => each.id === oven)?.racks ?? [];
  const all = [
    ...kitchen.hob.burners,
    ...kitchen.pans,
    ...kitchen.trays,
    ...kitchen.boards,
    ...kitchen.bowls,
    ...kitchen.tools,
    ...kitchen.appliances,
    ...racks.filter((each) => each.id === rack).map(({ name }) => ({ id, name })),
  ];
  return all.find((each) => each.id === id)?.name ?? thing;
};

/** All that holds anything: steps, washes and water, holds, and the pans and burners of the pools. */
export function holdings(reading: Reading): readonly Holding[] {
  const { plan } = reading;
  const of = (place: PlannedPlace, label: string, steps: readonly string[]): Holding => ({
    thing: thingOf(place),
    ids: [place.id, place.kind, ...(place.oven === undefined ? [] : [place.oven])],
    label,
    steps,
    from: place.from,
    until: place.until,
    amount: place.amount,
  });
  return [
    ...plan.steps.flatMap((planned) => planned.places.map((place) => of(place, called(planned), [planned.id]))),
    ...plan.holds.map(({ component, hold, place }) => of(place, `${component} (${hold})`, [])),
    ...plan.pools.flatMap(({ pool, pan, from, until, boils }): readonly Holding[] => [
      { thing: `pan ${pan}`, ids: [pan], label: pool, steps: [], from, until, amount: 1 },
      ...boils.map(({ burner, onHeat, offHeat }) => ({
        thing: `burner ${burner}`,
        ids: [burner],
        label: pool,
        steps: [],
        from: onHeat,
        until: offHeat,
        amount: 1,
      })),
    ]),
  ];
}

function checkRoom(reading: Reading, held: readonly Holding[]): readonly Violation[] {
  const { plan, clock } = reading;
  const room = capacities(plan);
  // Water drawn takes no room; a thing that is not there at all is told with the step that names it.
  const things = [...new Set(held.map(({ thing }) => thing))];
  return things.flatMap((thing) => {
    const capacity = room.get(thing);
    if (capacity === undefined) return [];
    const own = held.filter((each) => each.thing === thing);
    return firstOver(own, capacity).map(({ minute, sum, together }): Violation => {
      const who = together.map(({ label }) => label).join(' and ');
      const name = nameOf(thing, plan.kitchen);
      return {
        rule,
        message:
          capacity === 1 && together.length > 1
            ? `${name} is held twice at ${clock.at(minute)}: by ${who}.`
            : `${name} has room for ${capacity}, and at ${clock.at(minute)} holds ${sum}: ${who}.`,
        steps: together.flatMap(({ steps }) => steps),
        minute,
      };
    });
  });
}

function checkAbsences(reading: Reading, held: readonly Holding[]): readonly Violation[] {
  const { plan, clock } = reading;
  const heated = plan.ovens.flatMap(({ oven, settings }): readonly Holding[] =>
    settings.flatMap(({ minute, celsius }, index) =>
      celsius === null
        ? []
        : [
            {
              thing: `oven ${oven}`,
              ids: [oven],
              label: 'the dial',
              steps: [],
              from: minute,
              until: settings[index + 1]?.minute ?? plan.allAwayMinutes,
              amount: 1,
            },
          ],
    ),
  );
  return (plan.session.absences ?? []).flatMap((absence) => {
    const from = minutesDown(durationMinutes(absence.from));
    const until = minutesUp(durationMinutes(absence.until));
    return [...held, ...heated]
      .filter((each) => each.ids.includes(absence.what) && each.from < until && each.until > from)
      .map((each): Violation => ({
        rule,
        message: `${absence.what} is not there ${clock.span(from, until)}, and ${each.label} has it ${clock.span(each.from, each.until)}.`,
        steps: each.steps,
        minute: Math.max(from, each.from),
      }));
  });
}

export function checkRoomAndAbsences(reading: Reading): readonly Violation[] {
  const held = holdings(reading);
  return [...checkRoom(reading, held), ...checkAbsences(reading, held)];
}
