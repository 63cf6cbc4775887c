/**
 * Rule 9: raw food is cooked through by the core temperatures in force, with a probe reading at its end and an oven hot enough; hot
 * holding is hot and short enough; what is kept reaches the fridge in time; toxins are soaked and boiled out. The rules are those
 * that the plan carries.
 */
import { ovenCourses } from './oven-course.ts';
import type { Reading } from './reading.ts';
import { checkCooking } from './safety-cooking.ts';
import { checkFridge, checkHotHold, checkKeeping } from './safety-keeping.ts';
import { checkStages } from './safety-stages.ts';
import { checkToxins } from './safety-toxins.ts';
import type { Violation } from './violation.ts';

export function checkSafety(reading: Reading): readonly Violation[] {
  const courses = ovenCourses(reading);
  return [
    ...checkCooking(reading, courses),
    ...checkHotHold(reading, courses),
    ...checkFridge(reading),
    ...checkStages(reading),
    ...checkKeeping(reading),
    ...checkToxins(reading),
  ];
}
