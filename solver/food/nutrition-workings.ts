/** How the nutrients and the energy of a component come about, ingredient by ingredient, for a person to check by hand. */
import type { Component } from '../kitchen/component.ts';
import type { Source } from '../source.ts';
import type { Working, WorkingInput } from '../working.ts';
import { declaredPer100g, isWater, nutritionOf } from './nutrition.ts';
import { ENERGY_FACTORS, ENERGY_OF, type Declared } from './reference-intakes.ts';
import { weighIngredient } from './weigh.ts';

const SUM: Source = { standing: 'derived', cite: 'sum over the ingredients that are counted' };

/** The working of a nutrient of a component, g: each counted ingredient's mass and content, with the ingredient's own working. */
export function nutrientWorking(component: Pick<Component, 'ingredients'>, nutrient: Declared): Working {
  const rows = component.ingredients.flatMap((ingredient) => {
    const weighed = weighIngredient(ingredient);
    return weighed.counted && !isWater(ingredient) ? [weighed] : [];
  });
  const inputs = rows.flatMap(({ food, grams }, index): readonly WorkingInput[] => [
    { symbol: `m${index + 1}`, name: `${food.name}, ${food.state}`, value: grams, unit: 'g' },
    {
      symbol: `x${index + 1}`,
      name: `${nutrient} of 100 g`,
      value: declaredPer100g(food.per100g)[nutrient] ?? 0,
      unit: 'g/100 g',
      source: food.source,
    },
  ]);
  return {
    name: nutrient,
    value: nutritionOf(component).amounts[nutrient],
    unit: 'g',
    formula: nutrient === 'salt' ? 'Σ m·x/100, x = sodium × 2.5' : 'Σ m·x/100',
    inputs,
    source: SUM,
    parts: rows.map(({ working }) => working),
  };
}

/** The working of the energy of a component, kJ. */
export function energyWorking(component: Pick<Component, 'ingredients'>): Working {
  const parts = ['carbohydrate', 'protein', 'fat', 'fibre'] as const;
  const { amounts } = nutritionOf(component);
  return {
    name: 'Energy',
    value: amounts.energyKJ,
    unit: 'kJ',
    formula: 'E = Σ m·e',
    inputs: parts.flatMap((part): readonly WorkingInput[] => [
      { symbol: `m(${part})`, name: part, value: amounts[part], unit: 'g' },
      {
        symbol: `e(${part})`,
        name: `energy of 1 g of ${part}`,
        value: ENERGY_OF[part].kJ,
        unit: 'kJ/g',
        source: ENERGY_FACTORS,
      },
    ]),
    source: ENERGY_FACTORS,
    caution:
      'By the factors of the European Union; the printed energy of the table follows others, and the two are not to be mixed.',
    parts: parts.map((part) => nutrientWorking(component, part)),
  };
}
