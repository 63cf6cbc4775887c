/** Whether an ingredient's written allergens tell all that the food it names has. */
import { allergensOfFood, allergensOfIngredient, cerealsOfFood } from '../../../solver/food/allergens.ts';
import type { Ingredient } from '../../../solver/kitchen/component.ts';
import { pathText, valueText } from '../issue-faults.ts';
import type { Finding } from './finding.ts';

type Keys = readonly (string | number)[];

/** Findings of an ingredient's allergens and cereals; empty: they agree with its food. */
export function allergenFindings(ingredient: Ingredient, path: Keys): readonly Finding[] {
  const { allergens, cereals } = ingredient;
  const named = [ingredient.food, ingredient.becomes].filter((key) => key !== undefined).join(' and ');
  const missing = [...allergensOfFood(ingredient)].filter((group) => !allergens.includes(group));
  const absent = cereals === undefined ? [] : cerealsOfFood(ingredient).filter((cereal) => !cereals.includes(cereal));
  return [
    ...missing.map((group) => ({
      path: pathText([...path, 'allergens']),
      found: `no ${valueText(group)} in an ingredient that is ${named}`,
      wanted: `the allergens that ${named} has: ${[...allergensOfFood(ingredient)].join(', ')}`,
      mend: `add ${valueText(group)}, or name another food`,
    })),
    ...absent.map((cereal) => ({
      path: pathText([...path, 'cereals']),
      found: `no ${valueText(cereal)} in an ingredient that is ${named}`,
      wanted: `the cereals that ${named} has`,
      mend: `add ${valueText(cereal)}, or name another food`,
    })),
    ...(cereals === undefined || allergensOfIngredient(ingredient).has('gluten')
      ? []
      : [
          {
            path: pathText([...path, 'cereals']),
            found: `${cereals.join(', ')} without gluten`,
            wanted: 'cereals of an ingredient with "gluten" among its allergens',
            mend: 'add "gluten" to its allergens, or leave "cereals" out',
          },
        ]),
  ];
}
