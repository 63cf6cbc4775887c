/**
 * Minutes that food of a component, or of the boxes, takes to cool where a document says from what to what and where. Translation and
 * checker know them by the steps written out (`kitchen/expand.ts`), as they know all other lengths.
 */
import { coolFood, type Cooling, type CoolingCourse, type NeverCools } from '../heat/food-cooling.ts';
import type { Component } from '../kitchen/component.ts';
import type { Cools } from '../kitchen/cools.ts';
import { compositionOf, compositionOfFood, compositionOfPortions } from './composition.ts';
import { foodOf } from './foods.ts';
import type { Composition } from './properties.ts';

/** What is cooled: one component, or a portion of each of several in one box. */
export type CooledFood = readonly Pick<Component, 'ingredients' | 'makes'>[];

/** What the food that cools is made of; null where that is not known. */
export function cooledComposition(cools: Cools, food: CooledFood): Composition | null {
  if (cools.food !== undefined) {
    const like = foodOf(cools.food);
    return like === undefined ? null : compositionOfFood(like);
  }
  return (food.length === 1 ? compositionOf(food[0]!) : compositionOfPortions(food))?.composition ?? null;
}

/** A cooling as the model asks for it, without what it is like and fields that are there and undefined. */
export function withoutFood(cools: Cools): Cooling {
  const { food: _like, ...rest } = cools;
  return Object.fromEntries(Object.entries(rest).filter(([, value]) => value !== undefined)) as unknown as Cooling;
}

type Course = CoolingCourse | NeverCools | null;

/** The last course of a cooling, which takes long to reckon, and what it was of: remembered as long as its document is. */
const known = new WeakMap<Cools, { readonly food: CooledFood; readonly course: Course }>();

const isSame = (a: CooledFood, b: CooledFood): boolean =>
  a.length === b.length &&
  a.every(({ ingredients, makes }, index) => ingredients === b[index]!.ingredients && makes === b[index]!.makes);

/** The cooling; null where it is not known what cools. Neither cooling nor food changes once it has been asked for. */
export function coolingOf(cools: Cools, food: CooledFood): Course {
  const before = known.get(cools);
  if (before !== undefined && isSame(before.food, food)) return before.course;
  const composition = cooledComposition(cools, food);
  const course = composition === null ? null : coolFood(withoutFood(cools), composition);
  known.set(cools, { food, course });
  return course;
}

/**
 * Whole minutes until it is cool enough, with the guard of the model, rounded up.
 * @returns 0 where `cooling-troubles.ts` finds a fault, which keeps the session from being planned
 */
export function coolingMinutes(cools: Cools | undefined, food: CooledFood): number {
  if (cools === undefined) return 0;
  const course = coolingOf(cools, food);
  return course?.kind === 'cools' ? course.minutes : 0;
}
