/** What an ingredient has of allergens, and what an eater avoids. */
import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { allergensOf, avoidedBy, eats, keptFree, leaves, mayCarry, servedWrongly } from '../../../solver/food/soil.ts';
import { allergensOfIngredient, groupOf, markAvoided, marksOfIngredient } from '../../../solver/food/allergens.ts';
import { FOOD_ALLERGENS } from '../../../solver/food/data/food-allergens.ts';
import { FOODS } from '../../../solver/food/foods.ts';
import { allergenFindings } from '../../../app/documents/consistency/allergen-findings.ts';
import { ALLERGENS, AVOIDABLE, GLUTEN_CEREALS, type Avoidable } from '../../../solver/kitchen/values.ts';
import type { Ingredient } from '../../../solver/kitchen/component.ts';
import { component, on, session, step } from '../../support/documents.ts';

const ingredient = (more: Partial<Ingredient>): Ingredient => ({ id: 'main', name: 'main', allergens: [], ...more });
const dish = (id: string, more: Partial<Ingredient> = {}) =>
  component(id, [step('cut', [on(3)])], { ingredients: [ingredient(more)] });
const eater = (avoids: readonly Avoidable[], more: object = {}) => ({
  id: 'eve',
  name: 'Eve',
  avoids: [...avoids],
  boxes: 1,
  ...more,
});
/** Names of those who would be served what they avoid. */
const wronged = (avoids: readonly Avoidable[], more: Partial<Ingredient>): readonly string[] => {
  const loaf = dish('loaf', more);
  return servedWrongly(session([loaf], { eaters: [eater(avoids)] }), loaf).map(([, mark]) => mark);
};

describe('an ingredient', () => {
  test('has the allergens that are written down and those of its food', () => {
    const sauced = ingredient({ allergens: ['celery'], food: 'soy-sauce' });
    expect([...allergensOfIngredient(sauced)].sort()).toEqual(['celery', 'gluten', 'soybeans']);
  });

  test('has those of what it becomes too', () => {
    expect([...allergensOfIngredient(ingredient({ becomes: 'pasta-cooked' }))]).toEqual(['gluten']);
  });

  test('is of every cereal where its gluten is of no one in particular', () => {
    expect([...marksOfIngredient(ingredient({ allergens: ['gluten'] }))]).toEqual(['gluten', ...GLUTEN_CEREALS]);
  });

  test('never loses what is written down, whatever its food', () => {
    fc.assert(
      fc.property(
        fc.subarray([...ALLERGENS]),
        fc.option(fc.constantFrom(...FOOD_ALLERGENS.keys()), { nil: undefined }),
        (allergens, food) => {
          const marks = marksOfIngredient(ingredient({ allergens, ...(food === undefined ? {} : { food }) }));
          for (const written of allergens) expect(marks.has(written)).toBe(true);
          for (const mark of marks) expect(marks.has(groupOf(mark))).toBe(true);
        },
      ),
    );
  });
});

describe('the table of foods', () => {
  test('names only foods that the program knows', () => {
    expect([...FOOD_ALLERGENS.keys()].filter((key) => !FOODS.has(key))).toEqual([]);
  });

  test('is told off where the written allergens lack one of its', () => {
    const [finding, ...more] = allergenFindings(ingredient({ food: 'tahini' }), ['ingredients', 0]);
    expect(more).toEqual([]);
    expect(finding).toEqual({
      path: 'ingredients[0].allergens',
      found: 'no "sesame" in an ingredient that is tahini',
      wanted: 'the allergens that tahini has: sesame',
      mend: 'add "sesame", or name another food',
    });
  });

  test('is told off where the written cereals lack one of its, or have no gluten', () => {
    const bread = ingredient({ food: 'bread-white', allergens: ['gluten'], cereals: ['rye'] });
    expect(allergenFindings(bread, []).map(({ path }) => path)).toEqual(['cereals']);
    expect(allergenFindings(ingredient({ cereals: ['rye'] }), []).map(({ mend }) => mend)).toEqual([
      'add "gluten" to its allergens, or leave "cereals" out',
    ]);
  });

  test('is satisfied with what a maker adds', () => {
    expect(allergenFindings(ingredient({ food: 'tahini', allergens: ['sesame', 'nuts'] }), [])).toEqual([]);
  });
});

describe('an eater', () => {
  test('who is coeliac may have no cereal with gluten', () => {
    for (const cereal of GLUTEN_CEREALS)
      expect(wronged(['gluten'], { allergens: ['gluten'], cereals: [cereal] })).toEqual(['gluten']);
  });

  test('who avoids wheat may have barley, but not bread of who knows what', () => {
    expect(wronged(['wheat'], { allergens: ['gluten'], cereals: ['barley'] })).toEqual([]);
    expect(wronged(['wheat'], { allergens: ['gluten'] })).toEqual(['wheat']);
    expect(wronged(['wheat'], { food: 'bulgur-dry', allergens: ['gluten'] })).toEqual(['wheat']);
  });

  test.each([
    ['tree-nuts', 'nuts'],
    ['crustacean-shellfish', 'crustaceans'],
  ] as const)('who says %s avoids %s', (name, group) => {
    expect(markAvoided(name)).toBe(group);
    expect(wronged([name], { allergens: [group] })).toEqual([group]);
  });

  test('avoids by any name something that some ingredient can have', () => {
    const everything = marksOfIngredient(ingredient({ allergens: [...ALLERGENS] }));
    for (const name of AVOIDABLE) expect(everything.has(markAvoided(name)), name).toBe(true);
  });

  test('has a mark for each thing avoided, once', () => {
    expect([...avoidedBy(eater(['nuts', 'tree-nuts', 'wheat']))]).toEqual(['nuts', 'wheat']);
  });

  test('without boxes is minded at the table, for what is on it', () => {
    const [loaf, greens] = [dish('loaf'), dish('greens')];
    const guest = eater(['gluten'], { boxes: 0 });
    const at = session([loaf, greens], { eaters: [guest], table: { at: 'PT1H', dishes: ['greens'] } });
    expect(eats(at, guest, 'greens')).toBe(true);
    expect(eats(at, guest, 'loaf')).toBe(false);
    expect([...keptFree(at, greens)]).toEqual(['gluten']);
  });
});

describe('a dish', () => {
  const [loaf, salad, roots] = [
    dish('loaf', { allergens: ['gluten'], cereals: ['wheat'] }),
    dish('salad'),
    dish('roots'),
  ];
  const all = [loaf, salad, roots];
  const with_ = session(all, { eaters: [eater(['gluten'], { eats: ['salad'] })] });

  test('leaves gluten and the cereal that it is of', () => {
    expect([...leaves(loaf, loaf.steps[0]!)]).toEqual(['gluten', 'wheat']);
    expect([...allergensOf(loaf)]).toEqual(['gluten', 'wheat']);
  });

  test('that nobody keeps free of what another has may carry it on', () => {
    expect([...mayCarry(with_, roots, all)]).toEqual(['gluten']);
  });

  test('that is kept free carries nothing on, nor what no other dish has', () => {
    expect([...mayCarry(with_, salad, all)]).toEqual([]);
    expect([...mayCarry(with_, roots, [salad, roots])]).toEqual([]);
  });

  test('that has gluten may carry it on by every step, whatever of it the step touches', () => {
    expect([...mayCarry(with_, loaf, all)]).toEqual(['gluten']);
  });
});
