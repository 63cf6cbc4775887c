/**
 * The course of allergens through a plan: what every food may have met by the end, also by way of another food: flour on the hands
 * that then cut carrots, on the board of which a salad is cut next. A thing carries what has touched it since it was last washed, water
 * since it was last fresh.
 */
import { BOXES } from '../kitchen/session-components.ts';
import { isMark, leaves, touchesFood } from '../food/soil.ts';
import type { AllergenMark } from '../kitchen/values.ts';
import { rackUses } from './oven-course.ts';
import { readPools } from './pool-course.ts';
import { stepsInside } from './inside.ts';
import { stepsOfUse, type Reading, type Use } from './reading.ts';
import { partsOf } from './segment-parts.ts';
import { washesOf } from './washes.ts';

/** How an allergen came to a food: on what, when, and in which planned steps. */
export interface Meeting {
  readonly mark: AllergenMark;
  readonly minute: number;
  /** Id of the thing or the person. */
  readonly on: string;
  readonly steps: readonly string[];
}

interface Contact {
  /** Id of the component. */
  readonly food: string;
  /** The thing between two washes, the water between two fillings. */
  readonly thing: string;
  readonly on: string;
  readonly from: number;
  readonly until: number;
  /** What the step leaves of its own; null: it only takes. */
  readonly leaves: ReadonlySet<AllergenMark> | null;
  readonly takes: boolean;
  readonly steps: readonly string[];
}

type Arrivals = Map<string, Map<AllergenMark, { readonly minute: number; readonly by: Contact | null }>>;

/** What each food may have met that came from elsewhere, by component id; `boxes` for what the hands that fill them bring. */
export function soilCourse(reading: Reading): ReadonlyMap<string, readonly Meeting[]> {
  const contacts = [
    ...thingContacts(reading),
    ...handContacts(reading),
    ...waterContacts(reading),
    ...dripContacts(reading),
  ];
  const things: Arrivals = new Map();
  const foods: Arrivals = new Map();
  let changed = true;
  const reach = (where: Arrivals, node: string, mark: AllergenMark, minute: number, by: Contact): void => {
    const marks = where.get(node) ?? new Map<AllergenMark, { minute: number; by: Contact | null }>();
    where.set(node, marks);
    const known = marks.get(mark);
    if (known !== undefined && known.minute <= minute) return;
    marks.set(mark, { minute, by });
    changed = true;
  };
  while (changed) {
    changed = false;
    for (const contact of contacts) {
      const { food, thing, from, until } = contact;
      if (contact.takes)
        for (const [mark, { minute }] of things.get(thing) ?? []) {
          // Boxes hold what they hold: only what was on the hands before counts.
          if (food === BOXES ? minute < from : minute < until)
            reach(foods, food, mark, Math.max(from, minute), contact);
        }
      if (contact.leaves === null) continue;
      for (const mark of contact.leaves) reach(things, thing, mark, from, contact);
      for (const [mark, { minute }] of foods.get(food) ?? [])
        if (minute < until) reach(things, thing, mark, Math.max(from, minute), contact);
    }
  }
  return new Map(
    [...foods].map(([food, marks]) => [
      food,
      [...marks]
        .map(([mark, { minute, by }]): Meeting => ({ mark, minute, on: by!.on, steps: by!.steps }))
        .sort((a, b) => a.minute - b.minute),
    ]),
  );
}

const marksLeft = (use: Pick<Use, 'component'>, steps: ReturnType<typeof stepsInside>): ReadonlySet<AllergenMark> =>
  new Set(steps.flatMap((step) => [...leaves(use.component, step)]).filter(isMark));

const handled = (use: Use): boolean => stepsInside(use).some((step) => touchesFood(use.component, step));

/** Which stretch between washes a contact falls into. */
const stretch = (washes: readonly { readonly end: number }[], from: number): number =>
  washes.filter(({ end }) => end <= from).length;

const SOILED = ['pan', 'tray', 'bowl', 'board', 'tool', 'appliance'];

function thingContacts(reading: Reading): readonly Contact[] {
  return reading.uses
    .filter((use) => SOILED.includes(use.place.kind) && handled(use))
    .map((use): Contact => {
      const { from, until, id } = use.place;
      return {
        food: use.component.id,
        thing: `${id} ${stretch(washesOf(reading, id), from)}`,
        on: id,
        from,
        until,
        leaves: marksLeft(use, stepsInside(use)),
        takes: true,
        steps: stepsOfUse(use, reading),
      };
    });
}

function handContacts(reading: Reading): readonly Contact[] {
  return reading.steps.flatMap(({ instance: { component, step }, pieces }) =>
    touchesFood(component, step)
      ? pieces.flatMap((piece) =>
          piece.planned.segments
            .filter(({ hands, person }) => hands === 'on' && person !== undefined)
            .filter((segment) => partsOf(piece, segment).every((part) => part.touchesFood))
            .map(({ start, end, person }): Contact => ({
              food: component.id,
              thing: `${person!} ${stretch(washesOf(reading, person!), start)}`,
              on: person!,
              from: start,
              until: end,
              leaves: marksLeft({ component }, [step]),
              takes: true,
              steps: [piece.planned.id],
            })),
        )
      : [],
  );
}

/** The water is one thing from filling to filling, and its pan another until it is washed. */
function waterContacts(reading: Reading): readonly Contact[] {
  return readPools(reading).flatMap(({ course, pool, uses, waterOf }) =>
    uses
      .filter(({ use }) => handled(use))
      .flatMap(({ use, how, boil, from, until, steps }): readonly Contact[] => {
        const left = how === 'draw' ? null : marksLeft(use, stepsInside(use));
        const base = { food: use.component.id, takes: true, leaves: left, steps };
        const pan = `${course.pan} ${stretch(washesOf(reading, course.pan), course.from)}`;
        return [
          { ...base, thing: `${pool.id} ${waterOf(boil)}`, on: pool.id, from, until },
          // What was in the water is on the pan when it is emptied.
          { ...base, thing: pan, on: course.pan, from: course.until, until: course.until, takes: false },
          // What was on the pan before it was filled.
          { ...base, thing: pan, on: course.pan, from: course.from, until: course.from + 1, leaves: null },
        ];
      }),
  );
}

function dripContacts(reading: Reading): readonly Contact[] {
  const racks = rackUses(reading);
  const height = (oven: string | undefined, rack: string): number =>
    reading.plan.kitchen.ovens.find(({ id }) => id === oven)?.racks.findIndex(({ id }) => id === rack) ?? -1;
  return racks.flatMap((above, index) =>
    above.need.drips !== true
      ? []
      : racks.flatMap((below): readonly Contact[] => {
          const from = Math.max(above.place.from, below.place.from);
          const until = Math.min(above.place.until, below.place.until);
          const { oven } = above.place;
          if (oven !== below.place.oven || from >= until) return [];
          if (height(oven, above.place.id) >= height(oven, below.place.id)) return [];
          const base = { thing: `drip ${index}`, on: oven!, from, until, steps: [...above.steps, ...below.steps] };
          return [
            {
              ...base,
              food: above.use.component.id,
              leaves: marksLeft(above.use, stepsInside(above.use)),
              takes: false,
            },
            { ...base, food: below.use.component.id, leaves: null, takes: true },
          ];
        }),
  );
}
