/**
 * Rule 9: what cooks raw food through has a probe reading at its end and an oven hot enough; hot holding is hot and short enough;
 * what is kept reaches the fridge in time. The plan has the reading and its place; it never says that a temperature was reached.
 */
import { minutesDown } from '../kitchen/scaling.ts';
import { BOXES, packedDishes } from '../kitchen/session-components.ts';
import { durationMinutes } from '../kitchen/values.ts';
import { leastOvenC } from '../safety/oven-setting.ts';
import { GUARD_C, ovenCourses } from './oven-course.ts';
import { called, type PieceReading, type Reading, type StepReading } from './reading.ts';
import type { Violation } from './violation.ts';

const rule = 9 as const;
type Courses = ReturnType<typeof ovenCourses>;
const told = (message: string, steps: readonly string[], minute: number): Violation => ({
  rule,
  message,
  steps,
  minute,
});

/** Every reading that a step asks for is planned in its segment. */
function checkReadings({ planned, way, main }: PieceReading, reading: Reading): readonly Violation[] {
  return (way?.parts ?? []).flatMap((part, index): readonly Violation[] => {
    const segment = main[index];
    if (part.hands === 'off' || !part.probe || segment === undefined || segment.probe === true) return [];
    const message = `${called(planned)} has a probe reading at ${reading.clock.at(segment.start)}, which is not planned.`;
    return [told(message, [planned.id], segment.start)];
  });
}

function checkCooking(piece: PieceReading, reading: Reading, courses: Courses): readonly Violation[] {
  const { planned, instance, main } = piece;
  const through = instance.step.cooksThrough;
  if (through === undefined) return [];
  const heatEnds = main.filter(({ hands }) => hands === 'off').at(-1)?.end ?? planned.start;
  const read = planned.segments.some(
    ({ hands, probe, check, start }) => hands === 'on' && probe === true && check !== true && start >= heatEnds,
  );
  const violations = read
    ? []
    : [
        told(
          `${called(planned)} cooks raw ${through.raw} through, and no probe reading of ${through.coreC} °C is planned at its end.`,
          [planned.id],
          planned.end,
        ),
      ];
  const least = leastOvenC(through.raw);
  if (least === null) return violations;
  const cool = piece.uses.flatMap(({ need, place }): readonly Violation[] => {
    const course = courses.get(place.oven ?? '');
    if (need.use !== 'oven' || course === undefined) return [];
    const minutes = Array.from({ length: place.until - place.from }, (_, index) => place.from + index);
    // An oven that is off is the heat's own rule.
    const low = minutes.find((minute) => (course.settingAt(minute)?.celsius ?? Infinity) < least);
    if (low === undefined) return [];
    const message = `${course.oven.name} is set below ${Math.ceil(least)} °C at ${reading.clock.at(low)}, while ${called(planned)} cooks raw ${through.raw} through.`;
    return [told(message, [planned.id], low)];
  });
  return [...violations, ...cool];
}

function checkHotHold(reading: Reading, courses: Courses): readonly Violation[] {
  const held = reading.steps.filter(({ instance, pieces }) => instance.step.hotHold !== undefined && pieces.length > 0);
  return held.flatMap((step): readonly Violation[] => {
    const { leastC, longest } = step.instance.step.hotHold!;
    const most = minutesDown(durationMinutes(longest));
    const together = held.filter(
      ({ instance }) =>
        instance.component.id === step.instance.component.id &&
        !(instance.batched && step.instance.batched && instance.batch !== step.instance.batch),
    );
    const sum = together.reduce((minutes, { start, end }) => minutes + end - start, 0);
    const { planned, uses } = step.pieces[0]!;
    const long =
      sum > most
        ? [told(`${called(planned)} is kept hot for ${sum} min, and ${most} is the longest.`, [planned.id], step.start)]
        : [];
    const cool = uses.flatMap(({ need, place }): readonly Violation[] => {
      const course = courses.get(place.oven ?? '');
      if (need.use !== 'oven' || course === undefined) return [];
      for (let minute = place.from; minute <= place.until; minute++) {
        const celsius = course.celsiusAt(minute);
        if (celsius >= leastC - GUARD_C) continue;
        const message = `${course.oven.name} is at ${Math.round(celsius)} °C at ${reading.clock.at(minute)}, too cool to keep ${called(planned)} at ${leastC} °C.`;
        return [told(message, [planned.id], minute)];
      }
      return [];
    });
    return [...long, ...cool];
  });
}

/** The steps that put a component into the fridge: its own, or those of the boxes that it goes into; none: it is eaten. */
function puttingAway(reading: Reading, component: string): readonly StepReading[] {
  const there = reading.steps.filter(({ pieces, instance }) => pieces.length > 0 && instance.step.putsAway === true);
  const own = there.filter(({ instance }) => instance.component.id === component);
  if (own.length > 0) return own;
  const boxed = packedDishes(reading.plan.session).includes(component);
  return boxed ? there.filter(({ instance }) => instance.component.id === BOXES) : [];
}

function checkFridge(reading: Reading): readonly Violation[] {
  const { clock } = reading;
  return reading.dishes.flatMap(({ component }) => {
    const { fridge } = component;
    if (fridge === undefined) return [];
    const most = minutesDown(durationMinutes(fridge.within));
    const cooked = reading.steps.filter(
      ({ instance, pieces }) =>
        pieces.length > 0 && instance.component.id === component.id && instance.step.id === fridge.from,
    );
    return cooked.flatMap((from) =>
      puttingAway(reading, component.id)
        .filter(({ instance: { component: by, batched, batch } }) => {
          const sameRecipe = by.id === component.id;
          return !(sameRecipe && batched && from.instance.batched && batch !== from.instance.batch);
        })
        .filter(({ end }) => end - from.end > most)
        .map((away) =>
          told(
            `${component.name} leaves the heat at ${clock.at(from.end)}, must be in the fridge by ${clock.at(from.end + most)}, and is there at ${clock.at(away.end)}.`,
            [from.pieces.at(-1)!.planned.id, away.pieces.at(-1)!.planned.id],
            away.end,
          ),
        ),
    );
  });
}

export function checkSafety(reading: Reading): readonly Violation[] {
  const courses = ovenCourses(reading);
  return [
    ...reading.steps.flatMap(({ pieces }) =>
      pieces.flatMap((piece) => [...checkReadings(piece, reading), ...checkCooking(piece, reading, courses)]),
    ),
    ...checkHotHold(reading, courses),
    ...checkFridge(reading),
  ];
}
