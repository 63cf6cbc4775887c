/** What foods, components and boxes are made of. Recipes are invented. */
import { describe, expect, test } from 'vitest';
import { compositionOf, compositionOfFood, compositionOfPortions } from '../../../solver/food/composition.ts';
import { FOODS, foodOf } from '../../../solver/food/foods.ts';
import { PARTS } from '../../../solver/food/properties.ts';
import type { Ingredient } from '../../../solver/kitchen/component.ts';

const rice: Ingredient = { id: 'rice', name: 'rice', massG: 500, allergens: [], food: 'rice-white-long-dry' };
const water: Ingredient = { id: 'water', name: 'water', volumeMl: 900, group: 'water', allergens: [] };
const makes = (massG: number) => ({ portions: 5, massG });

test('the parts of every food make the whole of it, but for rounding', () => {
  for (const food of FOODS.values()) {
    const composition = compositionOfFood(food);
    const total = PARTS.reduce((sum, part) => sum + composition[part], 0);
    expect(Math.abs(total - 1), food.key).toBeLessThan(0.005);
  }
});

describe('a component', () => {
  test('takes up as much water as makes its weight', () => {
    // 500 g of rice with 11.62 % of water makes 1400 g: (58.1 + 900) ÷ 1400
    const { composition, knownShare } = compositionOf({ ingredients: [rice], makes: makes(1400) })!;
    expect(composition.water).toBeCloseTo(958.1 / 1400, 4);
    expect(knownShare).toBe(1);
  });

  test('comes near the cooked food that the table has', () => {
    // source: USDA SR28, NDB 20045: cooked rice has 68.44 % of water; 500 g dry make 1400 g by its solids
    const { composition } = compositionOf({ ingredients: [rice, water], makes: makes(1400) })!;
    const cooked = compositionOfFood(foodOf('rice-white-long-cooked')!);
    for (const part of PARTS) expect(Math.abs(composition[part] - cooked[part])).toBeLessThan(0.01);
  });

  test('is not told where less than four fifths of its mass is known', () => {
    const dulse: Ingredient = { id: 'dulse', name: 'dulse', massG: 200, allergens: [] };
    expect(compositionOf({ ingredients: [rice, dulse], makes: makes(700) })).toBeNull();
    expect(compositionOf({ ingredients: [rice, { ...dulse, massG: 50 }], makes: makes(1500) })?.knownShare).toBeCloseTo(
      0.909,
      3,
    );
    expect(compositionOf({ ingredients: [], makes: makes(100) })).toBeNull();
  });
});

describe('a box', () => {
  test('is made of a portion of each of its components', () => {
    const plain = { ingredients: [rice], makes: makes(1400) };
    const { composition } = compositionOfPortions([plain, plain])!;
    expect(composition.water).toBeCloseTo(958.1 / 1400, 4);
  });

  test('is not told where most of it is not known', () => {
    const unknown = { ingredients: [], makes: makes(1000) };
    expect(compositionOfPortions([{ ingredients: [rice], makes: makes(1400) }, unknown])).toBeNull();
  });
});
