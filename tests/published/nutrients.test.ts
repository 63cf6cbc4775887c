/** Nutrients and energy against published rows and the regulation. */
import { describe, expect, test } from 'vitest';
import { foodOf } from '../../solver/food/foods.ts';
import { declaredPer100g, energyOf, sharesOfIntake } from '../../solver/food/nutrition.ts';
import { REFERENCE_INTAKE } from '../../solver/food/reference-intakes.ts';

const declared = (key: string) => {
  const row = declaredPer100g(foodOf(key)!.per100g);
  return { carbohydrate: row.carbohydrate!, protein: row.protein!, fat: row.fat!, fibre: row.fibre!, salt: row.salt! };
};

describe('energy by the factors of Regulation (EU) 1169/2011, Annex XIV', () => {
  test('of boiled lentils is 438.5 kJ, 104.2 kcal in 100 g', () => {
    // source: worked by hand from USDA SR28 NDB 16070 and the factors: 17 × (12.23 + 9.02) + 37 × 0.38 + 8 × 7.9 = 438.51 kJ
    const { energyKJ, energyKcal } = energyOf(declared('lentils-cooked'));
    expect(energyKJ).toBeCloseTo(438.51, 2);
    expect(energyKcal).toBeCloseTo(104.22, 2);
  });

  test('of roast chicken thigh with its skin is 939.7 kJ, 225.4 kcal in 100 g', () => {
    // source: worked by hand from USDA SR28 NDB 05094: 17 × 23.26 + 37 × 14.71 = 939.69 kJ; 4 × 23.26 + 9 × 14.71 = 225.43 kcal
    const { energyKJ, energyKcal } = energyOf(declared('chicken-thigh-skin-roasted'));
    expect(energyKJ).toBeCloseTo(939.69, 2);
    expect(energyKcal).toBeCloseTo(225.43, 2);
  });

  test('is kept apart from the energy that USDA prints, which follows other factors', () => {
    // source: USDA SR28 NDB 16070 prints 116 kcal
    expect(foodOf('lentils-cooked')!.usdaKcal).toBe(116);
    expect(energyOf(declared('lentils-cooked')).energyKcal).toBeLessThan(110);
  });
});

describe('the table of foods', () => {
  test.each([
    // source: USDA SR28 as printed by NDB number: kcal, protein, fat, carbohydrate by difference, fibre
    {
      key: 'chicken-thigh-skin-raw',
      ndb: '05091',
      kcal: 221,
      protein: 16.52,
      fat: 16.61,
      carbohydrate: 0.25,
      fibre: 0,
    },
    { key: 'chickpeas-cooked', ndb: '16057', kcal: 164, protein: 8.86, fat: 2.59, carbohydrate: 27.42, fibre: 7.6 },
    {
      key: 'rice-white-long-cooked',
      ndb: '20045',
      kcal: 130,
      protein: 2.69,
      fat: 0.28,
      carbohydrate: 28.17,
      fibre: 0.4,
    },
    { key: 'couscous-dry', ndb: '20028', kcal: 376, protein: 12.76, fat: 0.64, carbohydrate: 77.43, fibre: 5 },
    { key: 'onion-raw', ndb: '11282', kcal: 40, protein: 1.1, fat: 0.1, carbohydrate: 9.34, fibre: 1.7 },
    { key: 'cheese-feta', ndb: '01019', kcal: 264, protein: 14.21, fat: 21.28, carbohydrate: 4.09, fibre: 0 },
    { key: 'oil-olive', ndb: '04053', kcal: 884, protein: 0, fat: 100, carbohydrate: 0, fibre: 0 },
    { key: 'oats-rolled-dry', ndb: '08120', kcal: 379, protein: 13.15, fat: 6.52, carbohydrate: 67.7, fibre: 10.1 },
  ])('has $key as USDA prints NDB $ndb', ({ key, ndb, kcal, protein, fat, carbohydrate, fibre }) => {
    const food = foodOf(key)!;
    expect(food.ndb).toBe(ndb);
    expect(food.usdaKcal).toBe(kcal);
    expect(food.per100g).toMatchObject({ protein, fat, carbohydrate, fibre });
  });

  test("agrees with USDA's printed energy within an eighth of 4-4-9 for foods without fibre", () => {
    // source: general factors 4, 4, 9 kcal/g (Atwater) against the specific ones that USDA prints
    for (const key of [
      'chicken-breast-meat-roasted',
      'beef-mince-80-raw',
      'salmon-farmed-raw',
      'egg-raw',
      'milk-whole',
      'cheese-cheddar',
    ]) {
      const food = foodOf(key)!;
      expect(Math.abs(energyOf(declared(key)).energyKcal / food.usdaKcal - 1), key).toBeLessThan(0.125);
    }
  });
});

describe('declarations', () => {
  test('count salt as sodium × 2.5 and carbohydrate without fibre', () => {
    // source: Regulation (EU) 1169/2011, Annex I; feta has 917 mg of sodium in 100 g (USDA SR28 NDB 01019): 2.29 g of salt
    expect(declared('cheese-feta').salt).toBeCloseTo(2.292, 2);
    expect(declared('lentils-cooked').carbohydrate).toBeCloseTo(20.13 - 7.9, 6);
  });

  test('have the reference intakes of Annex XIII, part B', () => {
    // source: Regulation (EU) 1169/2011, Annex XIII, part B
    expect(REFERENCE_INTAKE).toEqual({
      ...{
        energyKJ: 8400,
        energyKcal: 2000,
        fat: 70,
        saturates: 20,
        carbohydrate: 260,
        sugars: 90,
        protein: 50,
        salt: 6,
      },
    });
    const amounts = {
      energyKJ: 2100,
      energyKcal: 500,
      fat: 7,
      saturates: 2,
      carbohydrate: 26,
      sugars: 9,
      fibre: 5,
      protein: 10,
      salt: 1.5,
    };
    expect(sharesOfIntake(amounts)).toMatchObject({ energyKJ: 0.25, fat: 0.1, protein: 0.2, salt: 0.25 });
  });
});
