/** What a component weighs when it is done, by the yields of its ingredients. */
import type { Component } from '../kitchen/component.ts';
import { isWater, type NotCounted } from './nutrition.ts';
import { weighIngredient } from './weigh.ts';

export interface DoneWeight {
  /** Of all ingredients that have a weight, g. */
  readonly grams: number;
  /** Ingredients taken at the weight they have raw, since nothing says what they weigh done. */
  readonly raw: readonly string[];
  /** Ingredients without a weight. */
  readonly unweighed: readonly NotCounted[];
}

/**
 * What a component weighs when it is done: of each ingredient its weight by the published yield of what it becomes, or by the cook's
 * own scales. Water brought to the dish is in the weight of what takes it up.
 */
export function doneWeight(component: Pick<Component, 'ingredients'>): DoneWeight {
  let grams = 0;
  const raw: string[] = [];
  const unweighed: NotCounted[] = [];
  for (const ingredient of component.ingredients) {
    if (isWater(ingredient)) continue;
    const { name, massG, becomes, yield: own } = ingredient;
    const weighed = weighIngredient(ingredient);
    const given = weighed.counted ? weighed.givenGrams : massG;
    if (weighed.counted && (becomes !== undefined || own === undefined)) {
      grams += weighed.grams;
      if (becomes === undefined) raw.push(name);
    } else if (given !== undefined) {
      grams += given * (own ?? 1);
      if (own === undefined) raw.push(name);
    } else unweighed.push({ what: name, why: weighed.counted ? 'it has no mass' : weighed.why });
  }
  return { grams, raw, unweighed };
}
