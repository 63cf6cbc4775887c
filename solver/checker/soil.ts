/**
 * Rule 8: soil is a set that grows with every use of a shared thing and empties only at a wash, or with fresh water; nothing meets
 * soil that it must not meet.
 */
import { avoids, isMark, keptFree, leaves } from '../food/soil.ts';
import type { PlaceKind, PlannedSegment } from '../kitchen/plan.ts';
import { BOXES } from '../kitchen/session-components.ts';
import { RAW_KINDS, type Soil } from '../kitchen/values.ts';
import { rackUses } from './oven-course.ts';
import { stepsInside } from './inside.ts';
import { readPools } from './pool-course.ts';
import { called, calledUse, stepsOfUse, type PieceReading, type Reading, type Use } from './reading.ts';
import { partsOf } from './segment-parts.ts';
import { soilCourse, type Meeting } from './soil-course.ts';
import type { Harm } from '../safety/harm-cautions.ts';
import type { Violation } from './violation.ts';
import { checkWashes, washesOf, type Wash } from './washes.ts';

const rule = 8 as const;
/** Things that food soils. Vessels must also be washed between one component and another. */
const SOILED: readonly PlaceKind[] = ['pan', 'tray', 'bowl', 'board', 'tool', 'appliance'];
const RAW_SOIL: ReadonlySet<string> = new Set(RAW_KINDS.map((raw) => `raw-${raw}`));
const VESSELS: readonly PlaceKind[] = ['pan', 'tray', 'bowl'];

interface Touch {
  readonly from: number;
  readonly until: number;
  readonly leaves: ReadonlySet<Soil>;
  readonly avoids: ReadonlySet<Soil>;
  /** Whose food is in a vessel. */
  readonly owner: string;
  readonly label: string;
  readonly steps: readonly string[];
}

export function touchOf(use: Use, reading: Reading): Touch {
  const steps = stepsInside(use);
  const { component, place } = use;
  const { session } = reading.plan;
  return {
    from: place.from,
    until: place.until,
    leaves: new Set(steps.flatMap((step) => [...leaves(component, step)])),
    avoids: new Set(steps.flatMap((step) => [...avoids(session, component, step)])),
    owner: component.id,
    label: calledUse(use),
    steps: stepsOfUse(use, reading),
  };
}

/** The worst that what was met can do. */
const harmOf = (met: readonly string[]): Harm =>
  met.some((soil) => RAW_SOIL.has(soil))
    ? 'raw-food'
    : met.some((soil) => isMark(soil as Soil))
      ? 'allergen'
      : 'unwashed';

const both = (left: ReadonlySet<Soil>, right: ReadonlySet<Soil>): readonly Soil[] =>
  [...left].filter((soil) => right.has(soil));

/** Whether a touch begins no later than another. One of no minutes, told to be over at a minute, was before what begins then. */
const isBefore = (a: Touch, b: Touch): boolean =>
  a.from < b.from || (a.from === b.from && (b.until > b.from || a.until === a.from));

/** Every touch with the first later one of the same thing that it spoils, no wash lying between. */
function meetings(
  touches: readonly Touch[],
  washes: readonly Wash[],
  spoils: (earlier: Touch, later: Touch) => readonly string[],
): readonly { readonly earlier: Touch; readonly later: Touch; readonly met: readonly string[] }[] {
  const inOrder = [...touches].sort((a, b) => a.from - b.from);
  return inOrder.flatMap((earlier) => {
    const later = inOrder.find(
      (each) =>
        each !== earlier &&
        isBefore(earlier, each) &&
        spoils(earlier, each).length > 0 &&
        !washes.some(({ start, end }) => start >= earlier.until && end <= each.from),
    );
    return later === undefined ? [] : [{ earlier, later, met: spoils(earlier, later) }];
  });
}

/** The pools' pans are vessels too: all that was in the water stays on the pan until it is washed. */
function poolTouches(reading: Reading, pan: string): readonly Touch[] {
  return readPools(reading)
    .filter(({ course }) => course.pan === pan)
    .map(({ course, pool, uses, work }) => {
      const foods = uses.filter(({ how }) => how !== 'draw').map(({ use }) => touchOf(use, reading));
      return {
        from: course.from,
        until: course.until,
        leaves: new Set(foods.flatMap((food) => [...food.leaves])),
        avoids: new Set(uses.flatMap(({ use }) => [...touchOf(use, reading).avoids])),
        owner: pool.id,
        label: pool.name,
        steps: work.map(({ id }) => id),
      };
    });
}

function checkThings(reading: Reading): readonly Violation[] {
  const { clock, plan } = reading;
  const { pans, trays, bowls, boards, tools, appliances } = plan.kitchen;
  return [...pans, ...trays, ...bowls, ...boards, ...tools, ...appliances].flatMap(({ id, name }) => {
    const uses = reading.uses.filter(({ place }) => place.id === id && SOILED.includes(place.kind));
    const touches = [...uses.map((use) => touchOf(use, reading)), ...poolTouches(reading, id)];
    const vessel = VESSELS.includes(uses[0]?.place.kind ?? 'pan');
    const spoils = (earlier: Touch, later: Touch): readonly string[] => [
      ...both(earlier.leaves, later.avoids),
      ...(vessel && earlier.owner !== later.owner ? [`what is left of ${earlier.owner}`] : []),
    ];
    return meetings(touches, washesOf(reading, id), spoils).map(({ earlier, later, met }) => ({
      rule,
      message: `${name} goes to ${later.label} at ${clock.at(later.from)} with ${met.join(', ')} on it from ${earlier.label}, and is not washed between.`,
      steps: [...earlier.steps, ...later.steps],
      minute: later.from,
      harm: harmOf(met),
    }));
  });
}

/** Whether a hand touches the food itself in a segment, or only the thing that it is in. */
const handlesFood = (piece: PieceReading, segment: PlannedSegment): boolean =>
  partsOf(piece, segment).every((part) => part.touchesFood);

/** Hands are soiled by every hands-on segment that touches food; washing a thing at the sink washes them too. */
function checkPeople(reading: Reading): readonly Violation[] {
  const { clock, plan } = reading;
  return plan.session.people.flatMap((person) => {
    const touches = reading.steps.flatMap(({ instance, pieces }) => {
      const { component, step } = instance;
      const soil = { leaves: leaves(component, step), avoids: avoids(plan.session, component, step) };
      return pieces.flatMap((piece) =>
        piece.planned.segments
          .filter((segment) => segment.hands === 'on' && segment.person === person.id && handlesFood(piece, segment))
          .map(({ start, end }): Touch => {
            const label = called(piece.planned);
            return { from: start, until: end, ...soil, owner: component.id, label, steps: [piece.planned.id] };
          }),
      );
    });
    const spoils = (earlier: Touch, later: Touch): readonly string[] => both(earlier.leaves, later.avoids);
    return meetings(touches, washesOf(reading, person.id), spoils).map(({ earlier, later, met }) => ({
      rule,
      message: `${person.name} comes to ${later.label} at ${clock.at(later.from)} with ${met.join(', ')} on the hands from ${earlier.label}, and does not wash them between.`,
      steps: [...earlier.steps, ...later.steps],
      minute: later.from,
      harm: harmOf(met),
    }));
  });
}

/** All that went into the same water before a food comes out of it is on the food. */
function checkPoolSoil(reading: Reading): readonly Violation[] {
  const { clock } = reading;
  return readPools(reading).flatMap(({ pool, uses, waterOf }) =>
    uses.flatMap((earlier) => {
      if (earlier.how === 'draw') return [];
      const left = touchOf(earlier.use, reading).leaves;
      return uses.flatMap((later): readonly Violation[] => {
        if (later === earlier || earlier.from >= later.until || waterOf(earlier.boil) !== waterOf(later.boil))
          return [];
        const met = both(left, touchOf(later.use, reading).avoids);
        if (met.length === 0) return [];
        return [
          {
            rule,
            message: `${later.label} at ${clock.at(later.from)} meets ${met.join(', ')} of ${earlier.label} in ${pool.name}, and the water is not changed between.`,
            steps: [...earlier.steps, ...later.steps],
            minute: later.from,
            harm: harmOf(met),
          },
        ];
      });
    }),
  );
}

/** What drips falls on all racks below it. */
function checkDrips(reading: Reading): readonly Violation[] {
  const { clock, plan } = reading;
  const racks = rackUses(reading);
  const height = (oven: string | undefined, rack: string): number =>
    plan.kitchen.ovens.find(({ id }) => id === oven)?.racks.findIndex(({ id }) => id === rack) ?? -1;
  return racks
    .filter(({ need }) => need.drips === true)
    .flatMap((above) =>
      racks.flatMap((below): readonly Violation[] => {
        const [from, until] = [
          Math.max(above.place.from, below.place.from),
          Math.min(above.place.until, below.place.until),
        ];
        const { oven } = above.place;
        if (oven !== below.place.oven || height(oven, above.place.id) >= height(oven, below.place.id) || from >= until)
          return [];
        const met = both(touchOf(above.use, reading).leaves, touchOf(below.use, reading).avoids);
        if (met.length === 0) return [];
        return [
          {
            rule,
            message: `${above.label} drips ${met.join(', ')} on ${below.label} from the rack above it at ${clock.at(from)}.`,
            steps: [...above.steps, ...below.steps],
            minute: from,
            harm: harmOf(met),
          },
        ];
      }),
    );
}

/** Allergens that came by way of other foods, which no single meeting shows. */
function checkCourse(reading: Reading, met: readonly Violation[]): readonly Violation[] {
  const isTold = ({ minute, steps }: Meeting): boolean =>
    met.some((told) => told.minute === minute && steps.every((step) => told.steps.includes(step)));
  const { clock, plan } = reading;
  const course = soilCourse(reading);
  return reading.dishes.flatMap(({ component }) => {
    const free: ReadonlySet<Soil> =
      component.id === BOXES
        ? new Set(component.steps.flatMap((step) => [...avoids(plan.session, component, step)].filter(isMark)))
        : keptFree(plan.session, component);
    return (course.get(component.id) ?? [])
      .filter((meeting) => free.has(meeting.mark) && !isTold(meeting))
      .map(({ mark, minute, on, steps }): Violation => ({
        rule,
        message: `${component.name} may meet ${mark} at ${clock.at(minute)} by way of ${on}, and must stay free of it.`,
        steps,
        minute,
        harm: 'allergen',
      }));
  });
}

export function checkSoil(reading: Reading): readonly Violation[] {
  const met = [...checkThings(reading), ...checkPeople(reading), ...checkPoolSoil(reading), ...checkDrips(reading)];
  return [...checkWashes(reading), ...met, ...checkCourse(reading, met)];
}
