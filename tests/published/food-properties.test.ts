/** Heat properties of food against printed tables. */
import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { foodOf } from '../../solver/food/foods.ts';
import {
  PARTS,
  chenSpecificHeat,
  heatProperties,
  siebelSpecificHeat,
  type Composition,
} from '../../solver/food/properties.ts';
import { compositionOfFood } from '../../solver/food/composition.ts';

const only = (part: keyof Composition): Composition => ({
  ...{ water: 0, protein: 0, fat: 0, carbohydrate: 0, fibre: 0, ash: 0 },
  [part]: 1,
});

describe('water', () => {
  // source: tables of water that follow IAPWS, kJ/(kg·K)
  test.each([
    { celsius: 20, heat: 4182 },
    { celsius: 40, heat: 4179 },
    { celsius: 60, heat: 4184 },
    { celsius: 80, heat: 4196 },
    { celsius: 100, heat: 4216 },
  ])('has a specific heat of $heat J/(kg·K) at $celsius °C within one in a hundred', ({ celsius, heat }) => {
    expect(Math.abs(heatProperties(only('water'), celsius).specificHeat / heat - 1)).toBeLessThan(0.01);
  });

  test('has the density of water at 20 °C within three in a thousand', () => {
    // source: FAO/INFOODS Density Database, version 2.0 (2012): 0.998 g/mL
    expect(Math.abs(heatProperties(only('water'), 20).density / 998 - 1)).toBeLessThan(0.003);
  });
});

describe('specific heat above freezing', () => {
  // source: table of specific heats of the kind of ASHRAE Handbook, Refrigeration (2006), chapter 9, Table 3, kJ/(kg·K)
  const printed = [
    { food: 'apple', water: 0.84, heat: 3650 },
    { food: 'broccoli', water: 0.9, heat: 3860 },
    { food: 'potato', water: 0.78, heat: 3450 },
    { food: 'salmon', water: 0.64, heat: 2980 },
    { food: 'beef round', water: 0.67, heat: 3080 },
    { food: 'lettuce', water: 0.95, heat: 4020 },
    { food: 'whole milk', water: 0.88, heat: 3790 },
  ];
  test.each(printed)('of $food is $heat J/(kg·K) by its water within 10', ({ water, heat }) => {
    expect(Math.abs(siebelSpecificHeat(water) - heat)).toBeLessThanOrEqual(10);
  });

  test.each([
    // source: Chen (1985), ASHRAE Handbook, Refrigeration (2006), chapter 9, equation 15; worked by hand:
    // 4.19 − 2.30·0.2 − 0.628·0.008 = 3.725
    { solids: 0.2, heat: 3725 },
    { solids: 0.3, heat: 3483 },
    { solids: 0.4, heat: 3230 },
  ])('of food with $solids of solids is $heat J/(kg·K)', ({ solids, heat }) => {
    expect(chenSpecificHeat(solids)).toBeCloseTo(heat, -0.5);
  });

  test.each([
    { key: 'broccoli-raw', heat: 3860 },
    { key: 'potato-raw', heat: 3450 },
    { key: 'salmon-farmed-raw', heat: 2980 },
    { key: 'milk-whole', heat: 3790 },
  ])(
    'of $key by its whole composition is the printed $heat within fifteen in a hundred, never far below',
    ({ key, heat }) => {
      // The printed rows follow the water alone, with 837 J/(kg·K) for all solids; by composition protein and fat have about 2,000.
      const ratio = heatProperties(compositionOfFood(foodOf(key)!), 20).specificHeat / heat;
      expect(ratio).toBeGreaterThan(0.98);
      expect(ratio).toBeLessThan(1.15);
    },
  );
});

describe('boiled potato', () => {
  // source: composition of USDA SR28 NDB 11367; figures worked from the handbook's table with its constant 4.1289 for water
  const potato = compositionOfFood(foodOf('potato-boiled')!);
  test.each([
    { celsius: 20, heat: 3566, conductivity: 0.544, density: 1083, diffusivity: 1.41e-7 },
    { celsius: 60, heat: 3590, conductivity: 0.592, density: 1071, diffusivity: 1.54e-7 },
  ])('at $celsius °C has the properties worked by hand', ({ celsius, heat, conductivity, density, diffusivity }) => {
    const got = heatProperties(potato, celsius);
    // 4.1762 instead of 4.1289 for the 0.7746 of water: 36.6 J/(kg·K) more.
    expect(got.specificHeat - 0.7746 * 47.3).toBeCloseTo(heat, -1);
    expect(got.conductivity).toBeCloseTo(conductivity, 2);
    expect(got.density).toBeCloseTo(density, -1);
    expect(Math.abs(got.diffusivity / diffusivity - 1)).toBeLessThan(0.02);
  });
});

test('a mixture lies between its parts in every property but diffusivity', () => {
  const fraction = fc.double({ min: 0.01, max: 1, noNaN: true });
  fc.assert(
    fc.property(
      fc.record(Object.fromEntries(PARTS.map((part) => [part, fraction]))),
      fc.integer({ min: 0, max: 100 }),
      (mix, t) => {
        const got = heatProperties(mix as unknown as Composition, t);
        for (const property of ['specificHeat', 'conductivity', 'density'] as const) {
          const parts = PARTS.map((part) => heatProperties(only(part), t)[property]);
          expect(got[property]).toBeGreaterThanOrEqual(Math.min(...parts) - 1e-9);
          expect(got[property]).toBeLessThanOrEqual(Math.max(...parts) + 1e-9);
        }
      },
    ),
  );
});

test('a composition of nothing is a defect', () => {
  expect(() => heatProperties({ ...only('water'), water: 0 }, 20)).toThrow('nothing');
});
