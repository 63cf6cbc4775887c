/** Yields and densities against figures published elsewhere. */
import { describe, expect, test } from 'vitest';
import { densityOf } from '../../solver/food/densities.ts';
import { foodOf } from '../../solver/food/foods.ts';
import { YIELD_TABLE, yieldBetween } from '../../solver/food/yields.ts';

describe('yields of cooking', () => {
  test('dry pasta takes up 1.3 ± 0.1 g of water a gram', () => {
    // source: Cimini, Cibelli, Moresi, Reducing the cooking water-to-dried pasta ratio and environmental impact of pasta cooking, abstract
    const factor = yieldBetween('pasta-dry', 'pasta-cooked')!.factor;
    expect(factor).toBeGreaterThanOrEqual(2.2);
    expect(factor).toBeLessThanOrEqual(2.4);
  });

  test('a roast chicken thigh weighs what keeps its protein', () => {
    // source: USDA SR28 protein of NDB 05091 and 05094; the yield itself is from piece weights of SR26, another measurement
    const raw = foodOf('chicken-thigh-skin-raw')!.per100g.protein;
    const roast = foodOf('chicken-thigh-skin-roasted')!.per100g.protein;
    expect(yieldBetween('chicken-thigh-skin-raw', 'chicken-thigh-skin-roasted')!.factor).toBeCloseTo(raw / roast, 2);
  });

  test('a roast drumstick keeps its protein within two in a hundred', () => {
    // source: USDA SR28 protein of NDB 05066 and 05069
    const raw = foodOf('chicken-drumstick-skin-raw')!.per100g.protein;
    const roast = foodOf('chicken-drumstick-skin-roasted')!.per100g.protein;
    const factor = yieldBetween('chicken-drumstick-skin-raw', 'chicken-drumstick-skin-roasted')!.factor;
    expect(Math.abs(factor / (raw / roast) - 1)).toBeLessThan(0.02);
  });

  test('a solids balance is that of the water in the table', () => {
    // source: USDA SR28 water of both rows
    for (const { from, to, factor, source } of YIELD_TABLE.filter(({ source }) => source.standing === 'derived')) {
      const [dry, cooked] = [foodOf(from)!.per100g.water, foodOf(to)!.per100g.water];
      expect(factor, source.cite).toBeCloseTo((100 - dry) / (100 - cooked), 3);
    }
  });

  test('couscous weighed at its cup agrees with its solids within one in ten', () => {
    // source: USDA SR28 NDB 20028 and 20029, 173 g dry yield 528 g; water 8.56 and 72.57 g per 100 g
    const weighed = yieldBetween('couscous-dry', 'couscous-cooked')!.factor;
    expect(weighed).toBeCloseTo(528 / 173, 6);
    expect(Math.abs(weighed / ((100 - 8.56) / (100 - 72.57)) - 1)).toBeLessThan(0.1);
  });
});

describe('trimming', () => {
  test.each([
    { food: 'courgette-raw', kept: 0.95 },
    { food: 'cabbage-raw', kept: 0.79 },
    { food: 'broccoli-raw', kept: 0.61 },
    { food: 'green-beans-raw', kept: 0.88 },
  ])('$food keeps $kept of what was bought', ({ food, kept }) => {
    // source: open textbook Math for bakery and culinary business, table of yield percents; a second source beside USDA's refuse
    expect(Math.abs(1 - foodOf(food)!.refuse! - kept)).toBeLessThanOrEqual(0.011);
  });
});

describe('densities', () => {
  test.each([
    { food: 'oil-olive', other: 0.918, within: 0.01 },
    { food: 'oil-rapeseed', other: 0.915, within: 0.01 },
    { food: 'milk-whole', other: 1.03, within: 0.01 },
    { food: 'yogurt-plain-whole', other: 1.031, within: 0.01 },
    { food: 'rice-white-long-cooked', other: 0.73, within: 0.1 },
    { food: 'lentils-cooked', other: 0.85, within: 0.1 },
    { food: 'flour-white', other: 0.67, within: 0.25 },
  ])('$food is within $within of the figure of another table, $other g/mL', ({ food, other, within }) => {
    // source: FAO/INFOODS Density Database, version 2.0 (2012); 10 to 25 % apart is usual for solids
    expect(Math.abs(densityOf(food)!.gPerMl / other - 1)).toBeLessThanOrEqual(within);
  });
});
