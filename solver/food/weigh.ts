/**
 * How much of which food of the table an ingredient is: its amount as a mass, trimmed where it is as bought, and cooked where it
 * says what it becomes. Every reckoning of nutrients and heat goes by this one reading of the ingredient.
 */
import type { Ingredient } from '../kitchen/component.ts';
import type { Working, WorkingInput } from '../working.ts';
import { densityOf } from './densities.ts';
import { foodOf, type Food } from './foods.ts';
import { yieldBetween } from './yields.ts';

/** An ingredient weighed as a food of the table; or why it cannot be. */
export type Weighed =
  | {
      readonly counted: true;
      /** The food whose row counts: what it becomes, or else the food itself. */
      readonly food: Food;
      /** What is eaten of it in that state, g. */
      readonly grams: number;
      /** Its amount as given, g. */
      readonly givenGrams: number;
      readonly working: Working;
    }
  | { readonly counted: false; readonly why: string };

const no = (why: string): Weighed => ({ counted: false, why });

/**
 * Weighs an ingredient as a food of the table.
 *
 * The choice of row: where the ingredient says what it becomes, the cooked food with the weight that its yield gives; else the food
 * as it is weighed raw or dry, as if nothing went into the water or was left in the pan.
 */
export function weighIngredient(ingredient: Ingredient): Weighed {
  const { food: key, becomes, asBought } = ingredient;
  if (key === undefined) return no('no food of the table is named for it');
  const food = foodOf(key);
  if (food === undefined) return no(`the table has no ${key}`);
  const inputs: WorkingInput[] = [];
  const terms: string[] = [];
  let grams: number;
  if (ingredient.massG !== undefined) {
    grams = ingredient.massG;
    inputs.push({ symbol: 'm₀', name: `${ingredient.name}, as given`, value: grams, unit: 'g' });
    terms.push('m₀');
  } else if (ingredient.volumeMl !== undefined) {
    const density = densityOf(key, ingredient.form);
    if (density === undefined) return no('its volume has no known weight; give its mass');
    grams = ingredient.volumeMl * density.gPerMl;
    inputs.push(
      { symbol: 'V', name: `${ingredient.name}, as given`, value: ingredient.volumeMl, unit: 'mL' },
      {
        symbol: 'ρ',
        name: `weight of a volume, ${density.form}`,
        value: density.gPerMl,
        unit: 'g/mL',
        source: density.source,
      },
    );
    terms.push('V·ρ');
  } else return no('it has no mass; give one');

  const givenGrams = grams;
  const cooking = becomes === undefined ? null : { food: foodOf(becomes), table: yieldBetween(key, becomes) };
  if (cooking !== null && cooking.food === undefined) return no(`the table has no ${becomes}`);
  const factor = ingredient.yield ?? cooking?.table?.factor;
  if (cooking !== null && factor === undefined) return no(`no yield is known from ${key} to ${becomes}; give one`);
  // A yield weighed on the food as bought has the waste within it; so has the cook's own, which is of the amount as given.
  const wasteWithin = cooking !== null && (ingredient.yield !== undefined || cooking.table?.of === 'bought');
  if (asBought === true && !wasteWithin) {
    if (food.refuse === null) return no('what is cut off is not known; give the mass that is eaten');
    grams *= 1 - food.refuse;
    inputs.push({ symbol: 'r', name: 'share cut off', value: food.refuse, unit: '1', source: food.source });
    terms.push('(1 − r)');
  }
  if (cooking !== null) {
    grams *= factor!;
    inputs.push({
      symbol: 'y',
      name: `weight done of 1 g`,
      value: factor!,
      unit: '1',
      ...(ingredient.yield === undefined ? { source: cooking.table!.source } : {}),
    });
    terms.push('y');
  }
  const row = cooking?.food ?? food;
  return {
    counted: true,
    food: row,
    grams,
    givenGrams,
    working: {
      name: `${row.name}, ${row.state}`,
      value: grams,
      unit: 'g',
      formula: `m = ${terms.join('·')}`,
      inputs,
      source: row.source,
    },
  };
}
