/**
 * Rule 6: a step in the afterheat is in a switched-off oven whose falling temperature stays in its window to the end, and never
 * cooks raw meat, poultry, fish or egg through.
 */
import { GUARD_C, ovenCourses, rackUses } from './oven-course.ts';
import type { Reading } from './reading.ts';
import type { Violation } from './violation.ts';

export function checkAfterheat(reading: Reading): readonly Violation[] {
  const { clock } = reading;
  const courses = ovenCourses(reading);
  return rackUses(reading)
    .filter(({ need }) => need.afterheat === true)
    .flatMap(({ use, need, place, label, steps }): readonly Violation[] => {
      const course = courses.get(place.oven ?? '');
      if (course === undefined) return [];
      const told = (message: string, minute: number): readonly Violation[] => [{ rule: 6, message, steps, minute }];
      const { oven } = course;
      if (use.step?.instance.step.cooksThrough !== undefined)
        return told(`${label} cooks raw food through, which the afterheat never does.`, place.from);
      if (course.settingAt(place.from) === null)
        return told(`${label} is in ${oven.name} for its afterheat before it was ever on.`, place.from);
      for (let minute = place.from; minute <= place.until; minute++) {
        const celsius = Math.round(course.celsiusAt(minute));
        const at = clock.at(minute);
        if (minute < place.until && (course.settingAt(minute)?.celsius ?? null) !== null)
          return told(`${oven.name} is still on at ${at}, and ${label} is in it for the afterheat.`, minute);
        if (course.celsiusAt(minute) < need.leastC - GUARD_C)
          return told(
            `${oven.name} has fallen to ${celsius} °C at ${at}, and ${label} needs ${need.leastC} °C.`,
            minute,
          );
        if (course.celsiusAt(minute) > need.mostC + GUARD_C)
          return told(
            `${oven.name} is still at ${celsius} °C at ${at}, too hot for ${label} (${need.mostC} °C).`,
            minute,
          );
      }
      return [];
    });
}
