/** Ingredients that name foods of the program's own table. */
import { describe, expect, test } from 'vitest';
import { foodFindings } from '../../../app/documents/consistency/food-findings.ts';
import type { Ingredient } from '../../../solver/kitchen/component.ts';

const lentils: Ingredient = { id: 'lentils', name: 'lentils', massG: 500, allergens: [] };
const at = ['ingredients', 0];

describe('food keys that fit the table', () => {
  test.each<{ name: string; given: Partial<Ingredient> }>([
    { name: 'no key at all', given: {} },
    { name: 'a food', given: { food: 'lentils-dry' } },
    {
      name: 'a food and what it becomes by a published yield',
      given: { food: 'lentils-dry', becomes: 'lentils-cooked' },
    },
    { name: 'what it becomes by own scales', given: { food: 'onion-raw', becomes: 'onion-boiled', yield: 0.9 } },
    { name: 'a vegetable as bought', given: { food: 'onion-raw', asBought: true } },
    {
      name: 'potatoes as bought, whose yield was weighed on them whole',
      given: { food: 'potato-raw', asBought: true, becomes: 'potato-boiled' },
    },
  ])('$name is no fault', ({ given }) => {
    expect(foodFindings({ ...lentils, ...given }, at)).toEqual([]);
  });
});

describe('food keys that do not', () => {
  test('a key nearly right is told with the one that was meant', () => {
    expect(foodFindings({ ...lentils, food: 'lentil-dry' }, at)).toEqual([
      {
        path: 'ingredients[0].food',
        found: '"lentil-dry"',
        wanted: 'a food of the table that comes with the program',
        mend: 'write "lentils-dry"',
      },
    ]);
  });

  test('a food that the table does not have can be left out', () => {
    const [finding] = foodFindings({ ...lentils, food: 'sea-buckthorn-purée-concentrate' }, at);
    expect(finding?.mend).toContain('leave the field out');
  });

  test('what a food becomes without a known yield asks for the scales', () => {
    const [finding] = foodFindings({ ...lentils, food: 'onion-raw', becomes: 'onion-boiled' }, at);
    expect(finding?.path).toBe('ingredients[0].becomes');
    expect(finding?.mend).toContain('"yield"');
  });

  test('what another food becomes is told with what this one becomes', () => {
    const [finding] = foodFindings({ ...lentils, food: 'lentils-dry', becomes: 'chickpeas-cooked' }, at);
    expect(finding?.wanted).toContain('lentils-cooked');
  });

  test('meat as bought is refused, since its waste is not in the table', () => {
    const [finding] = foodFindings({ ...lentils, food: 'chicken-thigh-skin-raw', asBought: true }, at);
    expect(finding?.path).toBe('ingredients[0].asBought');
  });
});
