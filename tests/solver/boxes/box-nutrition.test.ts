/** Nutrients of the boxes of a session. All recipes are invented. */
import { describe, expect, test } from 'vitest';
import { boxNutrition } from '../../../solver/boxes/box-nutrition.ts';
import { nutritionOfPortion } from '../../../solver/food/nutrition.ts';
import type { Component } from '../../../solver/kitchen/component.ts';
import type { Session } from '../../../solver/kitchen/session.ts';
import { component, on, session as sessionOf, step } from '../../support/documents.ts';

const made = (id: string, food: string): Component => ({
  ...component(id, [step('mix', [on(1)])]),
  makes: { portions: 4, massG: 800 },
  ingredients: [{ id: food, name: food, massG: 800, allergens: [], food }],
});
const lentils = made('lentils', 'lentils-cooked');
const greens = made('greens', 'kale-boiled');
const packing = { name: 'fill the boxes', boxes: 4, work: { fixed: 'PT2M' } };
const session = (changes: Partial<Session>): Session => sessionOf([lentils, greens], { packing, ...changes });
const dishes = [
  { component: 'lentils', portions: 4 },
  { component: 'greens', portions: 4 },
];

describe('a box', () => {
  test('holds a portion of each dish that its eater eats', () => {
    const eaters = [{ id: 'noor', name: 'Noor', avoids: [], boxes: 4, eats: ['lentils'] }];
    const [box, ...others] = boxNutrition(session({ dishes, eaters }), [lentils, greens]);
    expect(others).toEqual([]);
    expect(box!.nutrition.amounts).toEqual(nutritionOfPortion(lentils).amounts);
  });

  test('of nobody in particular holds a portion of everything packed', () => {
    const eaters = [{ id: 'noor', name: 'Noor', avoids: [], boxes: 1, eats: ['lentils'] }];
    const [, box] = boxNutrition(session({ dishes, eaters }), [lentils, greens]);
    expect(box).toMatchObject({ eater: null, boxes: 3 });
    const both = nutritionOfPortion(lentils).amounts.protein + nutritionOfPortion(greens).amounts.protein;
    expect(box!.nutrition.amounts.protein).toBeCloseTo(both, 9);
  });

  test('holds less than a portion where fewer are made than boxes filled', () => {
    const few = [dishes[0]!, { component: 'greens', portions: 2 }];
    const [box] = boxNutrition(session({ dishes: few }), [lentils, greens]);
    expect(box!.helpings.map(({ portions }) => portions)).toEqual([1, 0.5]);
  });
});

test('a session that packs nothing has no boxes', () => {
  const { packing: _none, ...bare } = session({ dishes });
  expect(boxNutrition(bare, [lentils, greens])).toEqual([]);
});
