/**
 * Scaling is computed, not multiplied blindly: hands-on minutes grow by a fixed part and a part per kilogram, piece or
 * portion; water grows with the amount; hands-off minutes do not.
 */
import type { Component } from './component.ts';
import type { Work } from './step.ts';
import { durationMinutes } from './values.ts';

/** Guard against binary fractions: 2 min 20 s × 3 must be 7 minutes, not 8. */
const ROUNDING = 1e-9;
export const minutesUp = (minutes: number): number => Math.ceil(minutes - ROUNDING);
export const minutesDown = (minutes: number): number => Math.floor(minutes + ROUNDING);

/** What a piece of work grows with: kilograms (a litre as one) and pieces of what it is done to. */
export function workAmounts(
  work: Pick<Work, 'of'>,
  component: Pick<Component, 'ingredients' | 'makes'>,
  portions: number,
): { readonly kg: number; readonly pieces: number } {
  const factor = portions / component.makes.portions;
  const of = component.ingredients.filter((ingredient) => work.of === undefined || ingredient.id === work.of);
  return {
    kg: of.reduce((sum, ingredient) => sum + (ingredient.massG ?? ingredient.volumeMl ?? 0) / 1000, 0) * factor,
    pieces: of.reduce((sum, ingredient) => sum + (ingredient.count ?? 0), 0) * factor,
  };
}

/**
 * Hands-on minutes of a piece of work, rounded up; at least 1.
 *
 * @param work its fixed and growing parts
 * @param component whose ingredients kilograms and pieces refer to
 * @param portions how many portions are made, > 0
 * @see Hunter, Tang, Spies, SAE Technical Paper 2003-01-2542: a fixed part plus a part that grows with the quantity
 */
export function workMinutes(work: Work, component: Pick<Component, 'ingredients' | 'makes'>, portions: number): number {
  const { kg, pieces } = workAmounts(work, component, portions);
  const part = (duration: string | undefined): number => (duration === undefined ? 0 : durationMinutes(duration));
  const total =
    part(work.fixed) + part(work.perKg) * kg + part(work.perPiece) * pieces + part(work.perPortion) * portions;
  return Math.max(1, minutesUp(total));
}

/** A volume that grows with the amount, mL, rounded up. */
export function scaledMl(ml: number, component: Pick<Component, 'makes'>, portions: number): number {
  return Math.ceil((ml * portions) / component.makes.portions - ROUNDING);
}

/**
 * The ways of splitting an amount into at most three batches, each as equal as can be or full and then the rest.
 *
 * @param portions to be made, ≥ 1
 * @param mostPortions in one batch, ≥ 1
 * @returns lists of portions, fewest batches first; empty where three batches are not enough
 */
export function splitsOf(portions: number, mostPortions: number): readonly (readonly number[])[] {
  const splits: number[][] = [];
  for (let batches = Math.ceil(portions / mostPortions); batches <= Math.min(3, portions); batches++) {
    const least = Math.floor(portions / batches);
    const equal = Array.from({ length: batches }, (_, index) => least + (index < portions % batches ? 1 : 0));
    splits.push(equal);
    const full = Array.from({ length: batches }, (_, index) => Math.min(mostPortions, portions - index * mostPortions));
    if (full.every((size) => size > 0) && full.some((size, index) => size !== equal[index])) splits.push(full);
  }
  return splits;
}
