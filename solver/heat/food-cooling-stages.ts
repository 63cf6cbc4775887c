/** Cooling in several places one after another, and in several vessels instead of one. */
import type { Composition } from '../food/properties.ts';
import { coolFood, type Cooling } from './food-cooling.ts';

/** One stage of a cooling: where, and down to what. */
export type Stage = Pick<Cooling, 'in' | 'toC' | 'covered' | 'wet' | 'aroundC'>;

/**
 * Cooling in several places one after another: on a rack to 30 °C, then in the fridge.
 *
 * Each stage begins as if the whole food were as warm as its warmest place, so that none comes out too short.
 *
 * @returns minutes of each stage, guarded and rounded up; null where a stage never gets there
 */
export function coolInStages(
  food: Pick<Cooling, 'fromC' | 'depthMm' | 'shape' | 'wallMm'>,
  stages: readonly Stage[],
  composition: Composition,
): readonly number[] | null {
  let fromC = food.fromC;
  const minutes: number[] = [];
  for (const stage of stages) {
    const course = coolFood({ ...food, ...stage, fromC }, composition);
    if (course.kind === 'never') return null;
    minutes.push(course.minutes);
    fromC = Math.min(fromC, stage.toC);
  }
  return minutes;
}

/**
 * What it gains to share a layer out over several vessels of the same kind, each so much shallower.
 *
 * @param vessels at least 2
 * @returns minutes in one, in each of several, and the minutes gained; null where it never cools so far
 */
export function gainOfSplitting(
  cooling: Cooling,
  vessels: number,
  composition: Composition,
): { readonly inOne: number; readonly inEach: number; readonly gained: number } | null {
  const one = coolFood(cooling, composition);
  const each = coolFood({ ...cooling, depthMm: cooling.depthMm / vessels }, composition);
  if (one.kind === 'never' || each.kind === 'never') return null;
  return { inOne: one.minutes, inEach: each.minutes, gained: one.minutes - each.minutes };
}
