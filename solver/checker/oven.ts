/**
 * Rule 5: at every moment all that is in a heated oven accepts its temperature and its function; heating and cooling take the
 * time of the heat tables; the dial has every setting; preheating is planned, and a cold start only where the step allows it.
 */
import { dialWindow } from '../heat/oven-tables.ts';
import { GUARD_C, ovenCourses, rackUses, type OvenCourse, type RackUse } from './oven-course.ts';
import type { Reading } from './reading.ts';
import type { Violation } from './violation.ts';

const rule = 5 as const;
const degrees = (celsius: number): string => `${Math.round(celsius)} °C`;

function checkDial(course: OvenCourse, reading: Reading): readonly Violation[] {
  const { oven, settings } = course;
  const { leastC, mostC, stepC } = oven.dial;
  return settings.flatMap((turn, index): readonly Violation[] => {
    const { minute, celsius } = turn;
    const told = (message: string): readonly Violation[] => [{ rule, message, steps: [], minute }];
    const when = `at ${reading.clock.at(minute)}`;
    if (minute < 0 || minute === settings[index - 1]?.minute)
      return told(`The dial of ${oven.name} cannot be turned like that ${when}.`);
    if (celsius === null) return [];
    const steps = (celsius - leastC) / stepC;
    if (celsius < leastC || celsius > mostC || Math.abs(steps - Math.round(steps)) > 1e-6)
      return told(`The dial of ${oven.name} has no ${degrees(celsius)}, to which it is turned ${when}.`);
    if (!oven.functions.includes(turn.function)) return told(`${oven.name} has no ${turn.function} heat ${when}.`);
    return [];
  });
}

function checkRack(rack: RackUse, course: OvenCourse, reading: Reading): readonly Violation[] {
  const { need, place, label, steps } = rack;
  const { oven } = course;
  const { clock } = reading;
  const told = (message: string, minute: number): readonly Violation[] => [{ rule, message, steps, minute }];
  const window = dialWindow(oven, need.leastC, need.mostC);
  if (window === null)
    return told(
      `The dial of ${oven.name} has nothing from ${need.leastC} to ${need.mostC} °C for ${label}.`,
      place.from,
    );
  const wanted = `${window.leastC}–${window.mostC} °C`;
  let heating = need.coldStart === true;
  for (let minute = place.from; minute <= place.until; minute++) {
    const celsius = course.celsiusAt(minute);
    const at = clock.at(minute);
    if (minute < place.until) {
      const setting = course.settingAt(minute);
      if (setting === null || setting.celsius === null)
        return told(`${oven.name} is off at ${at}, and ${label} is in it.`, minute);
      if (setting.function !== need.function)
        return told(`${oven.name} is on ${setting.function} at ${at}, and ${label} wants ${need.function}.`, minute);
    }
    if (celsius > window.mostC + GUARD_C)
      return told(`${oven.name} is at ${degrees(celsius)} at ${at}, too hot for ${label} (${wanted}).`, minute);
    if (celsius >= window.leastC - GUARD_C) heating = false;
    else if (!heating || (course.settingAt(Math.min(minute, place.until - 1))?.celsius ?? 0) < window.leastC)
      return told(`${oven.name} is at ${degrees(celsius)} at ${at}, too cool for ${label} (${wanted}).`, minute);
  }
  return [];
}

/** Switching on is a planned step, unless what is heated is in the oven already and may be. */
function checkPreheat(course: OvenCourse, racks: readonly RackUse[], reading: Reading): readonly Violation[] {
  const { oven, settings } = course;
  return settings.flatMap(({ minute, celsius }, index): readonly Violation[] => {
    if (celsius === null || (settings[index - 1]?.celsius ?? null) !== null) return [];
    const planned = reading.preheats.some((step) => step.component === oven.id && step.start === minute);
    const inside = racks.some(
      ({ need, place }) => need.coldStart === true && place.from <= minute && minute < place.until,
    );
    if (planned || inside) return [];
    const message = `${oven.name} is switched on at ${reading.clock.at(minute)}, and no preheating is planned.`;
    return [{ rule, message, steps: [], minute }];
  });
}

export function checkOvens(reading: Reading): readonly Violation[] {
  const racks = rackUses(reading);
  return [...ovenCourses(reading).values()].flatMap((course) => {
    const own = racks.filter(({ place }) => place.oven === course.oven.id);
    const heated = own.filter(({ need }) => need.afterheat !== true);
    return [
      ...checkDial(course, reading),
      ...heated.flatMap((rack) => checkRack(rack, course, reading)),
      ...checkPreheat(course, own, reading),
    ];
  });
}
