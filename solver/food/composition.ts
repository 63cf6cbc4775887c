/** What a food or a component is made of, as fractions of its mass. */
import type { Component, Ingredient } from '../kitchen/component.ts';
import { ashPer100g, foodOf, type Food } from './foods.ts';
import { weighIngredient } from './weigh.ts';
import { PARTS, type Composition } from './properties.ts';

/** Mass fractions of a food of the table. Where it has no value for fibre, all its carbohydrate is taken as such. */
export function compositionOfFood({ per100g }: Food): Composition {
  const fibre = per100g.fibre ?? 0;
  return {
    water: per100g.water / 100,
    protein: per100g.protein / 100,
    fat: per100g.fat / 100,
    carbohydrate: Math.max(0, per100g.carbohydrate - fibre) / 100,
    fibre: fibre / 100,
    ash: ashPer100g(per100g) / 100,
  };
}

const WATER: Composition = { water: 1, protein: 0, fat: 0, carbohydrate: 0, fibre: 0, ash: 0 };
const NOTHING: Composition = { ...WATER, water: 0 };

const plus = (sum: Composition, add: Composition, grams: number): Composition =>
  Object.fromEntries(PARTS.map((part) => [part, sum[part] + add[part] * grams])) as unknown as Composition;

/** The least share of a component's mass whose food must be known for its composition to be told. */
export const LEAST_KNOWN_SHARE = 0.8;

/**
 * What a component is made of when it is done: the sum of its ingredients, with as much water gained or lost as makes its weight.
 *
 * That weight changes in cooking by water alone is a simplification: fat that drips off and solids lost to the water are small
 * beside it. Ingredients whose food is not known are taken as like the others, up to a fifth of the mass.
 *
 * @returns mass fractions, and the share of the ingredients' mass that was known, 0–1; null where too little is known
 */
export function compositionOf(component: Pick<Component, 'ingredients' | 'makes'>): {
  readonly composition: Composition;
  readonly knownShare: number;
} | null {
  let sum = NOTHING;
  let known = 0;
  let unknown = 0;
  for (const ingredient of component.ingredients) {
    const part = partOf(ingredient);
    if (part === null) unknown += ingredient.massG ?? ingredient.volumeMl ?? 0;
    else {
      sum = plus(sum, part.composition, part.grams);
      known += part.grams;
    }
  }
  const knownShare = known === 0 ? 0 : known / (known + unknown);
  if (knownShare < LEAST_KNOWN_SHARE) return null;
  const done = component.makes.massG * knownShare;
  const water = done > 0 ? Math.max(0.05 * known, sum.water + done - known) : sum.water;
  const total = known - sum.water + water;
  const whole = { ...sum, water };
  return {
    composition: Object.fromEntries(PARTS.map((part) => [part, whole[part] / total])) as unknown as Composition,
    knownShare,
  };
}

/**
 * What a portion of each of several components is made of together.
 * @returns null where too little of its mass is known
 */
export function compositionOfPortions(components: readonly Pick<Component, 'ingredients' | 'makes'>[]): {
  readonly composition: Composition;
  readonly knownShare: number;
} | null {
  let sum = NOTHING;
  let known = 0;
  let all = 0;
  for (const component of components) {
    const grams = component.makes.massG / component.makes.portions;
    const part = compositionOf(component);
    all += grams;
    if (part === null) continue;
    sum = plus(sum, part.composition, grams);
    known += grams;
  }
  if (known === 0 || known / all < LEAST_KNOWN_SHARE) return null;
  return {
    composition: Object.fromEntries(PARTS.map((part) => [part, sum[part] / known])) as unknown as Composition,
    knownShare: known / all,
  };
}

function partOf(ingredient: Ingredient): { readonly composition: Composition; readonly grams: number } | null {
  if (ingredient.group === 'water') return { composition: WATER, grams: ingredient.massG ?? ingredient.volumeMl ?? 0 };
  const weighed = weighIngredient(ingredient);
  if (!weighed.counted) return null;
  return { composition: compositionOfFood(foodOf(weighed.food.key)!), grams: weighed.grams };
}
