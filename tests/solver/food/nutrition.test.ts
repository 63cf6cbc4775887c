/** Nutrients of components and boxes: sums by hand, and what is said of what cannot be counted. All recipes here are invented. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { doneWeight } from '../../../solver/food/done-weight.ts';
import { FOODS } from '../../../solver/food/foods.ts';
import { energyWorking, nutrientWorking } from '../../../solver/food/nutrition-workings.ts';
import {
  countedShare,
  energyOf,
  nutritionOf,
  nutritionOfHelpings,
  nutritionOfPortion,
  nutritionPer100g,
  sharesOfIntake,
} from '../../../solver/food/nutrition.ts';
import { weighIngredient } from '../../../solver/food/weigh.ts';
import type { Ingredient } from '../../../solver/kitchen/component.ts';

const lentils: Ingredient = { id: 'lentils', name: 'lentils', massG: 500, allergens: [], food: 'lentils-dry' };
const oil: Ingredient = { id: 'oil', name: 'olive oil', volumeMl: 40, allergens: [], food: 'oil-olive' };
const dish = (...ingredients: Ingredient[]) => ({
  ingredients,
  makes: { portions: 4, massG: 1500 },
  name: 'lentil pot',
});

describe('weighing an ingredient', () => {
  const grams = (ingredient: Ingredient): number => {
    const weighed = weighIngredient(ingredient);
    return weighed.counted ? weighed.grams : NaN;
  };

  test('a mass is itself, a volume is its mass by its density', () => {
    expect(grams(lentils)).toBe(500);
    // 40 mL × 216 g ÷ 236.588 mL
    expect(grams(oil)).toBeCloseTo(36.52, 2);
  });

  test('what is bought loses what is cut off', () => {
    // USDA SR28, NDB 11282: onion 10 % refuse
    expect(grams({ ...lentils, food: 'onion-raw', asBought: true })).toBeCloseTo(450, 6);
  });

  test('what becomes another food weighs what its yield gives', () => {
    // solids of lentils dry 91.74, boiled 30.36 g per 100 g
    expect(grams({ ...lentils, becomes: 'lentils-cooked' })).toBeCloseTo((500 * 91.74) / 30.36, 3);
    expect(grams({ ...lentils, becomes: 'lentils-cooked', yield: 2.5 })).toBe(1250);
  });

  test('a yield of the food as bought takes no waste off a second time', () => {
    // USDA SR26: a potato of 213 g whole gives 167 g boiled without its skin
    const potato: Ingredient = { ...lentils, massG: 213, food: 'potato-raw', asBought: true, becomes: 'potato-boiled' };
    expect(grams(potato)).toBeCloseTo(167, 6);
  });

  test.each<{ name: string; given: Ingredient; why: string }>([
    { name: 'without a food', given: { id: 'dulse', name: 'dulse', massG: 20, allergens: [] }, why: 'no food' },
    {
      name: 'by pieces alone',
      given: { id: 'lemon', name: 'lemon', count: 1, allergens: [], food: 'lemon-juice' },
      why: 'no mass',
    },
    { name: 'of a volume of unknown weight', given: { ...oil, food: 'onion-raw' }, why: 'give its mass' },
    { name: 'of an unknown key', given: { ...lentils, food: 'moonbeam' }, why: 'no moonbeam' },
    {
      name: 'without a known yield',
      given: { ...lentils, food: 'onion-raw', becomes: 'onion-boiled' },
      why: 'no yield',
    },
    { name: 'of meat as bought', given: { ...lentils, food: 'cod-raw', asBought: true }, why: 'cut off' },
  ])('an ingredient $name is not counted, and says why', ({ given, why }) => {
    const weighed = weighIngredient(given);
    expect(weighed.counted ? '' : weighed.why).toContain(why);
  });
});

describe('a component', () => {
  test('holds what its ingredients hold', () => {
    // by hand, SR28: 500 g of dry lentils (protein 24.63, fat 1.06) and 36.52 g of oil (fat 100)
    const { amounts, notCounted } = nutritionOf(dish(lentils, oil));
    expect(amounts.protein).toBeCloseTo(5 * 24.63, 2);
    expect(amounts.fat).toBeCloseTo(5 * 1.06 + 36.52, 2);
    expect(amounts.salt).toBeCloseTo((5 * 0.006 + 0.3652 * 0.002) * 2.5, 3);
    expect(notCounted).toEqual([]);
  });

  test('is told a portion and by 100 g of what it makes', () => {
    const whole = nutritionOf(dish(lentils)).amounts.protein;
    expect(nutritionOfPortion(dish(lentils)).amounts.protein).toBeCloseTo(whole / 4, 9);
    expect(nutritionPer100g(dish(lentils))!.amounts.protein).toBeCloseTo(whole / 15, 9);
    expect(nutritionPer100g({ ...dish(lentils), makes: { portions: 4, massG: 0 } })).toBeNull();
  });

  test('names what is not counted, but not the water', () => {
    const water: Ingredient = { id: 'water', name: 'water', volumeMl: 1000, group: 'water', allergens: [] };
    const bay: Ingredient = { id: 'bay', name: 'bay leaves', massG: 2, allergens: [] };
    expect(nutritionOf(dish(lentils, water, bay)).notCounted).toEqual([
      { what: 'bay leaves', why: 'no food of the table is named for it' },
    ]);
  });

  test('tells how much of its weight is counted', () => {
    const bay: Ingredient = { id: 'bay', name: 'bay leaves', massG: 125, allergens: [] };
    expect(countedShare(nutritionOf(dish(lentils, bay)))).toBeCloseTo(0.8, 9);
    expect(countedShare(nutritionOfPortion(dish(lentils, bay)))).toBeCloseTo(0.8, 9);
    expect(countedShare(nutritionOf(dish({ id: 'lemon', name: 'lemon', count: 1, allergens: [] })))).toBe(0);
  });

  test('names a nutrient of which the table has no figure', () => {
    // SR28 has no sugars of dry couscous
    const couscous: Ingredient = { ...lentils, id: 'couscous', name: 'couscous', food: 'couscous-dry' };
    expect(nutritionOf(dish(couscous)).without).toEqual([{ nutrient: 'sugars', what: 'couscous' }]);
  });

  test('weighs done what its yields give, and says what is taken raw', () => {
    const done = doneWeight(
      dish({ ...lentils, becomes: 'lentils-cooked' }, { ...oil, massG: 30 }, { ...lentils, yield: 0.7 }),
    );
    expect(done.grams).toBeCloseTo((500 * 91.74) / 30.36 + 30 + 350, 3);
    expect(done.raw).toEqual(['olive oil']);
    expect(done.unweighed).toEqual([]);
  });

  test('weighs without what has no weight, and says so', () => {
    expect(doneWeight(dish({ id: 'lemon', name: 'lemon', count: 1, allergens: [] })).unweighed[0]?.what).toBe('lemon');
  });

  test('shows its working down to each ingredient', () => {
    const working = energyWorking(dish(lentils, oil));
    expect(working.value).toBeCloseTo(nutritionOf(dish(lentils, oil)).amounts.energyKJ, 9);
    const byHand = working.inputs.reduce(
      (sum, { symbol, value }, index, all) => (symbol.startsWith('m') ? sum + value * all[index + 1]!.value : sum),
      0,
    );
    expect(byHand).toBeCloseTo(working.value, 6);
    const fat = nutrientWorking(dish(lentils, oil), 'fat');
    expect(
      (fat.inputs[0]!.value * fat.inputs[1]!.value + fat.inputs[2]!.value * fat.inputs[3]!.value) / 100,
    ).toBeCloseTo(fat.value, 9);
    expect(fat.parts?.[1]?.formula).toBe('m = V·ρ');
  });
});

describe('a box', () => {
  test('holds so many portions of its components, and names what is not counted with its component', () => {
    const bay: Ingredient = { id: 'bay', name: 'bay leaves', massG: 2, allergens: [] };
    const pot = dish(lentils, bay);
    const dressing = { ...dish(oil), name: 'dressing' };
    const box = nutritionOfHelpings([
      { component: pot, portions: 1 },
      { component: dressing, portions: 0.5 },
    ]);
    expect(box.amounts.fat).toBeCloseTo(
      nutritionOfPortion(pot).amounts.fat + nutritionOfPortion(dressing).amounts.fat / 2,
      9,
    );
    expect(box.notCounted.map(({ what }) => what)).toEqual(['bay leaves (lentil pot)']);
  });
});

describe('whatever the food', () => {
  const aFood = fc.constantFrom(...FOODS.keys());
  const ingredient = fc.record({ food: aFood, massG: fc.integer({ min: 1, max: 5000 }) });

  test('twice of everything holds twice of everything', () => {
    fc.assert(
      fc.property(fc.array(ingredient, { minLength: 1, maxLength: 6 }), (foods) => {
        const once = foods.map((each, index): Ingredient => ({
          id: `i${index}`,
          name: each.food,
          allergens: [],
          ...each,
        }));
        const twice = once.map((each) => ({ ...each, massG: each.massG! * 2 }));
        const [one, two] = [nutritionOf({ ingredients: once }), nutritionOf({ ingredients: twice })];
        for (const key of Object.keys(one.amounts) as (keyof typeof one.amounts)[])
          expect(two.amounts[key]).toBeCloseTo(2 * one.amounts[key], 6);
      }),
    );
  });

  test('energy is that of the nutrients it is summed from, and nothing is below nought', () => {
    fc.assert(
      fc.property(fc.array(ingredient, { minLength: 1, maxLength: 6 }), (foods) => {
        const { amounts } = nutritionOf({
          ingredients: foods.map((each, index) => ({ id: `i${index}`, name: each.food, allergens: [], ...each })),
        });
        expect(amounts.energyKJ).toBeCloseTo(energyOf(amounts).energyKJ, 6);
        for (const value of Object.values(amounts)) expect(value).toBeGreaterThanOrEqual(0);
        expect(amounts.saturates).toBeLessThanOrEqual(amounts.fat + 1e-9);
      }),
    );
  });

  test('shares of the intake are those of the amounts', () => {
    const day = {
      energyKJ: 8400,
      energyKcal: 2000,
      fat: 70,
      saturates: 20,
      carbohydrate: 260,
      sugars: 90,
      fibre: 0,
      protein: 50,
      salt: 6,
    };
    for (const share of Object.values(sharesOfIntake(day))) expect(share).toBe(1);
  });
});
