/** The tables of foods, densities and yields that come with the program: whole, and of one piece. */
import { describe, expect, test } from 'vitest';
import { figure, readTable } from '../../../solver/food/data/read-table.ts';
import { DENSITY_TABLE, densityOf } from '../../../solver/food/densities.ts';
import { FOODS, ashPer100g, foodOf } from '../../../solver/food/foods.ts';
import { YIELD_TABLE, cookedOf, yieldBetween } from '../../../solver/food/yields.ts';

const foods = [...FOODS.values()];

describe('the table of foods', () => {
  test('has 147 foods, each with a key and a number of its own', () => {
    expect(FOODS.size).toBe(147);
    expect(new Set(foods.map(({ ndb }) => ndb)).size).toBe(147);
    for (const { key, ndb } of foods) {
      expect(key).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(ndb).toMatch(/^\d{5}$/);
    }
  });

  test('has nutrients that make no more than the food', () => {
    for (const { key, per100g } of foods) {
      const { water, protein, fat, carbohydrate } = per100g;
      // Carbohydrate is by difference, so water, protein, fat, carbohydrate and ash make 100 g but for rounding.
      expect(water + protein + fat + carbohydrate + ashPer100g(per100g), key).toBeCloseTo(100, 0);
      expect(per100g.saturates ?? 0, key).toBeLessThanOrEqual(fat);
      expect((per100g.fibre ?? 0) + (per100g.sugars ?? 0), key).toBeLessThanOrEqual(carbohydrate + 1.2);
    }
  });

  test('cites release and number of every food', () => {
    for (const { source, ndb } of foods) expect(source.cite).toContain(`Release 28, NDB ${ndb}`);
  });

  test('has no food for a key that is not there', () => {
    expect(foodOf('moonbeam')).toBeUndefined();
  });
});

describe('the table of densities', () => {
  test('names foods of the table of foods only', () => {
    expect(DENSITY_TABLE.filter(({ food }) => !FOODS.has(food))).toEqual([]);
  });

  test('gives the one form there is, the named among several, and none where several are there and none is named', () => {
    expect(densityOf('oil-olive')?.gPerMl).toBeCloseTo(0.913, 3);
    expect(densityOf('onion-raw', 'sliced')?.gPerMl).toBeCloseTo(0.486, 3);
    expect(densityOf('onion-raw')).toBeUndefined();
    expect(densityOf('garlic-raw', 'crushed')?.form).toBe('as measured');
  });
});

describe('the table of yields', () => {
  test('leads from foods of the table to foods of the table', () => {
    for (const { from, to, factor } of YIELD_TABLE) {
      expect(FOODS.has(from) && FOODS.has(to), `${from} to ${to}`).toBe(true);
      expect(factor).toBeGreaterThan(0.5);
      expect(factor).toBeLessThan(4.5);
    }
  });

  test('tells what a food can become', () => {
    expect(cookedOf('potato-raw')).toEqual(['potato-baked', 'potato-boiled']);
    expect(yieldBetween('potato-raw', 'potato-boiled')?.of).toBe('bought');
    expect(yieldBetween('onion-raw', 'onion-boiled')).toBeUndefined();
  });
});

describe('reading a table', () => {
  test('a row that does not fit its head is a defect', () => {
    expect(() => readTable('a | b\n1')).toThrow('a row of 1 cells, not 2');
  });
  test('a dash is no figure, and a word is a defect', () => {
    expect(figure('-')).toBeNull();
    expect(() => figure('many')).toThrow('not a figure');
  });
});
