/**
 * The fourteen groups of Regulation (EU) No 1169/2011, Annex II, as the Annex lists them.
 * source: Regulation (EU) No 1169/2011 of 25 October 2011, OJ L 304, 22.11.2011, p. 18, Annex II; read in the copy of the University
 * of Reading, Department of Food and Nutritional Sciences, "Substances causing allergies or intolerances".
 */
import { describe, expect, test } from 'vitest';
import { EU_GROUPS, SULPHITES_ABOVE_MG } from '../../solver/food/allergens.ts';
import { ALLERGENS, GLUTEN_CEREALS } from '../../solver/kitchen/values.ts';

/** The Annex, point by point: the first word of each, and how many exceptions it has. */
const ANNEX: readonly (readonly [string, number])[] = [
  ['cereals containing gluten', 4],
  ['crustaceans', 0],
  ['eggs', 0],
  ['fish', 2],
  ['peanuts', 0],
  ['soya beans', 4],
  ['milk', 2],
  ['nuts', 1],
  ['celery', 0],
  ['mustard', 0],
  ['sesame', 0],
  ['sulphur dioxide and sulphites', 0],
  ['lupin', 0],
  ['molluscs', 0],
];

describe('the allergens of the European Union', () => {
  test('are the fourteen of the Annex, in its order, each with its exceptions', () => {
    expect(EU_GROUPS.map(({ name, except }) => [name, except.length])).toEqual(ANNEX);
    expect(EU_GROUPS.map(({ id }) => id)).toEqual(ALLERGENS);
  });

  test('name wheat, rye, barley and oats among cereals, spelt and khorasan as wheat', () => {
    const namely = EU_GROUPS[0]!.namely!;
    expect(GLUTEN_CEREALS).toEqual(['wheat', 'rye', 'barley', 'oats']);
    for (const cereal of GLUTEN_CEREALS)
      expect(
        namely.some((each) => each.startsWith(cereal)),
        cereal,
      ).toBe(true);
    expect(namely[0]).toMatch(/spelt and khorasan/);
  });

  test('name eight nuts', () => {
    expect(EU_GROUPS.find(({ id }) => id === 'nuts')!.namely).toHaveLength(8);
  });

  test('count sulphites above 10 mg/kg or 10 mg/litre in terms of total SO2', () => {
    expect(SULPHITES_ABOVE_MG).toBe(10);
  });

  test('except fully refined soybean oil, lactitol and glucose syrup of wheat', () => {
    const except = (id: string): string => EU_GROUPS.find((group) => group.id === id)!.except.join('; ');
    expect(except('soybeans')).toMatch(/fully refined soybean oil/);
    expect(except('milk')).toMatch(/lactitol/);
    expect(except('gluten')).toMatch(/wheat-based glucose syrups including dextrose/);
  });
});
