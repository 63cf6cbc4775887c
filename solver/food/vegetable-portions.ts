/** Portions of fruit and vegetables, as the United Kingdom's "5 A Day" counts them. */
import type { Component, Ingredient } from '../kitchen/component.ts';
import type { Source } from '../source.ts';
import type { Working } from '../working.ts';
import { weighIngredient } from './weigh.ts';

export const FIVE_A_DAY: Source = {
  standing: 'published',
  cite: 'UK National Health Service, 5 A Day: a portion is 80 g; potatoes do not count, pulses count once a day however much',
  region: 'United Kingdom',
};
/** Weight of a portion, g, and portions wanted a day. */
export const PORTION_G = 80;
export const A_DAY = 5;

/** Foods of the table that are starch on the plate; sweet potato is none of them. */
const isStarchy = (food: string | undefined): boolean => food?.startsWith('potato-') === true;

/** What an ingredient counts as; null: not at all. */
function countsAs({ group, food }: Ingredient): 'vegetable' | 'pulse' | null {
  switch (group) {
    case 'vegetable':
    case 'fruit':
      return isStarchy(food) ? null : 'vegetable';
    case 'pulse':
      return 'pulse';
    default:
      return null;
  }
}

/** As it is eaten where the table knows, else as the recipe weighs it; 0 where nothing does. */
function gramsOf(ingredient: Ingredient): number {
  const weighed = weighIngredient(ingredient);
  return weighed.counted ? weighed.grams : (ingredient.massG ?? 0);
}

/**
 * Working of the portions of fruit and vegetables in a helping or a box.
 *
 * @param helpings dishes, each with how many of its portions are eaten
 * @returns portions of 80 g, pulses for one at most
 */
export function vegetablePortions(
  helpings: readonly { readonly component: Pick<Component, 'ingredients' | 'makes'>; readonly portions: number }[],
): Working {
  const grams = { vegetable: 0, pulse: 0 };
  for (const { component, portions } of helpings)
    for (const ingredient of component.ingredients) {
      const as = countsAs(ingredient);
      if (as !== null) grams[as] += (gramsOf(ingredient) * portions) / component.makes.portions;
    }
  return {
    name: 'Portions of fruit and vegetables',
    value: grams.vegetable / PORTION_G + Math.min(1, grams.pulse / PORTION_G),
    unit: `of ${A_DAY} a day`,
    formula: 'n = m/p + min(1, mp/p)',
    inputs: [
      { symbol: 'm', name: 'fruit and vegetables, potatoes apart', value: grams.vegetable, unit: 'g' },
      { symbol: 'mp', name: 'pulses', value: grams.pulse, unit: 'g' },
      { symbol: 'p', name: 'a portion', value: PORTION_G, unit: 'g', source: FIVE_A_DAY },
    ],
    source: FIVE_A_DAY,
    caution: 'The World Health Organization counts neither potatoes nor sweet potatoes; here sweet potatoes count.',
  };
}
