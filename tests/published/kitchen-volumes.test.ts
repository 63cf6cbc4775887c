/**
 * Sources: NIST, kitchen equivalents, and UCUM (read in text): a US cup is 236.588 mL, which is 16 tablespoons of 14.7868 mL or 48 teaspoons of
 * 4.9289 mL. USDA National Nutrient Database for Standard Reference, Release 28, household weights of a cup (read in a copy of the data set).
 */
import { expect, test } from 'vitest';
import { densityOf } from '../../solver/food/densities.ts';

const CUP_ML = 236.588;

test('a cup is 16 tablespoons and 48 teaspoons', () => {
  expect(16 * 14.7868).toBeCloseTo(CUP_ML, 2);
  expect(48 * 4.9289).toBeCloseTo(CUP_ML, 1);
});

test.each([
  ['rice-white-long-dry', 185],
  ['rice-white-long-cooked', 158],
  ['couscous-dry', 173],
  ['lentils-dry', 192],
  ['chickpeas-dry', 200],
  ['flour-white', 125],
  ['oil-olive', 216],
])('a cup of %s weighs the %d g of the household weights', (food, grams) => {
  expect(densityOf(food)!.gPerMl * CUP_ML).toBeCloseTo(grams, 0);
});
