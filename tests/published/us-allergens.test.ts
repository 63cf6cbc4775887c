/**
 * The nine major food allergens of the United States.
 * source: Food Allergen Labeling and Consumer Protection Act of 2004, Public Law 108-282, title II (eight); FASTER Act of 2021, Public
 * Law 117-11 (sesame, from 1 January 2023); read in K. F. R. Moore and R. van Laack, "FASTER Law Adds Sesame as Major Food
 * Allergen", FDA Law Blog, 27 April 2021, which lists the nine. The public law numbers are from memory, not verified.
 */
import { describe, expect, test } from 'vitest';
import { groupOf, markOfUs, US_ALLERGENS, usOf } from '../../solver/food/allergens.ts';
import { ALLERGENS, GLUTEN_CEREALS } from '../../solver/kitchen/values.ts';

describe('the major allergens of the United States', () => {
  test('are peanuts, tree nuts, fish, crustacean shellfish, soy, milk, eggs, wheat and sesame', () => {
    expect([...US_ALLERGENS].sort()).toEqual(
      ['peanuts', 'tree-nuts', 'fish', 'crustacean-shellfish', 'soybeans', 'milk', 'eggs', 'wheat', 'sesame'].sort(),
    );
  });

  test('are each part of one group of the Union’s list', () => {
    const groups = US_ALLERGENS.map((each) => groupOf(markOfUs(each)));
    expect(new Set(groups).size).toBe(9);
    for (const group of groups) expect(ALLERGENS).toContain(group);
  });

  test('have nothing for celery, mustard, sulphites, lupin and molluscs', () => {
    const unlisted = ALLERGENS.filter((group) => !US_ALLERGENS.some((each) => groupOf(markOfUs(each)) === group));
    expect(unlisted).toEqual(['celery', 'mustard', 'sulphites', 'lupin', 'molluscs']);
    for (const group of unlisted) expect(usOf(group)).toBeNull();
  });

  test('have of the cereals with gluten wheat alone', () => {
    expect(GLUTEN_CEREALS.filter((cereal) => usOf(cereal) !== null)).toEqual(['wheat']);
    expect(usOf('gluten')).toBeNull();
  });
});
