/**
 * Sources: UK National Health Service, 5 A Day (read in text): a portion is 80 g, potatoes do not count, sweet potatoes do, pulses count once
 * a day however much. World Health Organization, healthy diet fact sheet N°394 (read in text): at least 400 g a day, which is five portions.
 */
import { describe, expect, test } from 'vitest';
import { foodOf } from '../../solver/food/foods.ts';
import { A_DAY, PORTION_G, vegetablePortions } from '../../solver/food/vegetable-portions.ts';
import type { Ingredient } from '../../solver/kitchen/component.ts';

const of = (...ingredients: readonly Omit<Ingredient, 'id' | 'name' | 'allergens'>[]): number =>
  vegetablePortions([
    {
      component: {
        makes: { portions: 1, massG: 500 },
        ingredients: ingredients.map((each, index) => ({ id: `i${index}`, name: 'x', allergens: [], ...each })),
      },
      portions: 1,
    },
  ]).value;

describe('portions of fruit and vegetables', () => {
  test('five of 80 g are the 400 g of the World Health Organization', () => {
    expect(A_DAY * PORTION_G).toBe(400);
  });

  test('are of 80 g, of fruit as of vegetables', () => {
    expect(of({ group: 'vegetable', massG: 120 }, { group: 'fruit', massG: 40 })).toBeCloseTo(2, 9);
  });

  test('leave potatoes out, and count sweet potatoes', () => {
    for (const key of ['potato-raw', 'sweet-potato-raw']) expect(foodOf(key)).toBeDefined();
    expect(of({ group: 'vegetable', food: 'potato-raw', massG: 300 })).toBe(0);
    expect(of({ group: 'vegetable', food: 'sweet-potato-raw', massG: 80 })).toBeCloseTo(1, 9);
  });

  test('count pulses once however much', () => {
    expect(of({ group: 'pulse', massG: 40 })).toBeCloseTo(0.5, 9);
    expect(of({ group: 'pulse', massG: 400 })).toBe(1);
  });

  test('leave everything else out', () => {
    expect(of({ group: 'grain', massG: 200 }, { group: 'nut-or-seed', massG: 80 }, { massG: 80 })).toBe(0);
  });
});
