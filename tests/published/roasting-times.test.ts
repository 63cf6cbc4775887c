/**
 * Source: USDA Food Safety and Inspection Service, approximate chicken cooking times (updated 4 April 2006, read in reprints): in an oven at 350 °F
 * a boneless breast half of 4 oz takes 20 to 30 min, and always to 165 °F by thermometer. The oven's coefficient and the pieces' thickness are
 * common practice, so this holds the conduction model to the chart's order of magnitude, and no more. The product tells no cooking time by it.
 */
import { describe, expect, test } from 'vitest';
import { compositionOfFood } from '../../solver/food/composition.ts';
import { foodOf } from '../../solver/food/foods.ts';
import { heatProperties } from '../../solver/food/properties.ts';
import { foAtTheta, slabModes } from '../../solver/heat/food-conduction.ts';

const OVEN_C = (350 - 32) / 1.8;
const DONE_C = (165 - 32) / 1.8;
const FRIDGE_C = 4;
const COEFFICIENT = 25;

/** Minutes until the middle of a slab of raw breast, hot air on both faces, is done. */
function minutes(thicknessM: number): number {
  const { conductivity, diffusivity } = heatProperties(compositionOfFood(foodOf('chicken-breast-meat-raw')!), 40);
  const bi = (COEFFICIENT * thicknessM) / conductivity;
  const theta = (DONE_C - OVEN_C) / (FRIDGE_C - OVEN_C);
  return (foAtTheta(slabModes(bi, bi), 0.5, theta) * thicknessM ** 2) / diffusivity / 60;
}

describe('a boneless breast half in an oven at 350 °F', () => {
  test.each([20, 22, 25])('of %d mm is done in about the 20 to 30 min of the chart', (millimetres) => {
    const taken = minutes(millimetres / 1000);
    expect(taken).toBeGreaterThan(20 * 0.75);
    expect(taken).toBeLessThan(30 * 1.25);
  });

  test('takes longer the thicker it is, by more than in proportion', () => {
    expect(minutes(0.04) / minutes(0.02)).toBeGreaterThan(2);
  });
});
