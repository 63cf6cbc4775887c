/**
 * Rule 9, cooking: what cooks raw food through meets the core temperatures in force by its recipe, reads them with a probe, does so
 * in an oven set hot enough, and rests where it must. The plan has the reading and its place; it never says that a
 * temperature was reached.
 */
import { saidCooked, servingSteps } from '../safety/last-heat.ts';
import { meetsPairs } from '../safety/lethality.ts';
import { coreRule, leastOvenC, pairsInWords } from '../safety/limits.ts';
import type { ovenCourses } from './oven-course.ts';
import { called, type PieceReading, type Reading, type StepReading } from './reading.ts';
import { told } from './safety-told.ts';
import type { Violation } from './violation.ts';

export type Courses = ReturnType<typeof ovenCourses>;

/** Every reading that a step asks for is planned in its segment. */
function checkReadings({ planned, way, main }: PieceReading, reading: Reading): readonly Violation[] {
  return (way?.parts ?? []).flatMap((part, index): readonly Violation[] => {
    const segment = main[index];
    if (part.hands === 'off' || !part.probe || segment === undefined || segment.probe === true) return [];
    const message = `${called(planned)} has a probe reading at ${reading.clock.at(segment.start)}, which is not planned.`;
    return [told(message, [planned.id], segment.start)];
  });
}

function checkProbe({ planned, instance, main }: PieceReading): readonly Violation[] {
  const through = instance.step.cooksThrough!;
  const heatEnds = main.filter(({ hands }) => hands === 'off').at(-1)?.end ?? planned.start;
  const read = planned.segments.some(
    ({ hands, probe, check, start }) => hands === 'on' && probe === true && check !== true && start >= heatEnds,
  );
  if (read) return [];
  const message = `${called(planned)} cooks raw ${through.raw} through, and no probe reading of ${through.coreC} °C is planned at its end.`;
  return [told(message, [planned.id], planned.end)];
}

function checkCore({ planned, instance }: PieceReading, { rules }: Reading): readonly Violation[] {
  const through = instance.step.cooksThrough!;
  const rule = coreRule(rules, through);
  if (rule === null || meetsPairs(rule.pairs, through.coreC, through.holdSeconds)) return [];
  const hold = through.holdSeconds === 0 ? 'with no hold' : `held for ${through.holdSeconds} s`;
  const message = `${called(planned)} takes raw ${through.raw} out at ${through.coreC} °C ${hold}; the safety rules ask for ${pairsInWords(rule.pairs)}.`;
  return [told(message, [planned.id], planned.end)];
}

function checkHeat(piece: PieceReading, reading: Reading, courses: Courses): readonly Violation[] {
  const { planned, instance } = piece;
  const through = instance.step.cooksThrough!;
  const least = leastOvenC(reading.rules, through)?.value;
  if (least === undefined) return [];
  return piece.uses.flatMap(({ need, place }): readonly Violation[] => {
    const course = courses.get(place.oven ?? '');
    if (need.use !== 'oven' || course === undefined) return [];
    const minutes = Array.from({ length: place.until - place.from }, (_, index) => place.from + index);
    // An oven that is off is the heat's own rule.
    const low = minutes.find((minute) => (course.settingAt(minute)?.celsius ?? Infinity) < least);
    if (low === undefined) return [];
    const message = `${course.oven.name} is set below ${Math.ceil(least)} °C at ${reading.clock.at(low)}, while ${called(planned)} cooks raw ${through.raw} through.`;
    return [told(message, [planned.id], low)];
  });
}

/** What must rest is not served before. */
function checkRest(cooking: StepReading, reading: Reading): readonly Violation[] {
  const { component, step, batch, batched } = cooking.instance;
  const seconds = coreRule(reading.rules, step.cooksThrough!)?.restSeconds ?? 0;
  if (seconds === 0) return [];
  const serving = new Set(servingSteps(component, step.id).map(({ id }) => id));
  const planned = cooking.pieces.at(-1)!.planned;
  if (serving.size === 0)
    return [told(`${called(planned)} is followed by no step in which it could rest.`, [planned.id], planned.end)];
  return reading.steps
    .filter(
      ({ instance, pieces }) =>
        pieces.length > 0 &&
        instance.component.id === component.id &&
        serving.has(instance.step.id) &&
        !(batched && instance.batched && instance.batch !== batch),
    )
    .filter(({ start }) => (start - cooking.end) * 60 < seconds)
    .map((next) => {
      const after = next.pieces[0]!.planned;
      const message = `${called(after)} begins ${next.start - cooking.end} min after ${called(planned)}, which must rest for ${Math.ceil(seconds / 60)} min first.`;
      return told(message, [planned.id, after.id], next.start);
    });
}

/** Raw food that later steps take for cooked has a step that cooks it through. */
const checkSaidCooked = (reading: Reading): readonly Violation[] =>
  reading.dishes.flatMap(({ component }) =>
    saidCooked(component).map(({ name, raw }) =>
      told(`${component.name} takes raw ${raw} (${name}) for cooked, and no step cooks it through.`, [], 0),
    ),
  );

export function checkCooking(reading: Reading, courses: Courses): readonly Violation[] {
  return [...checkSaidCooked(reading), ...checkSteps(reading, courses)].map((violation) => ({
    ...violation,
    harm: 'undercooked',
  }));
}

function checkSteps(reading: Reading, courses: Courses): readonly Violation[] {
  return reading.steps.flatMap((step) => {
    const through = step.instance.step.cooksThrough !== undefined && step.pieces.length > 0;
    return [
      ...step.pieces.flatMap((piece) => [
        ...checkReadings(piece, reading),
        ...(through ? [...checkProbe(piece), ...checkCore(piece, reading), ...checkHeat(piece, reading, courses)] : []),
      ]),
      ...(through ? checkRest(step, reading) : []),
    ];
  });
}
