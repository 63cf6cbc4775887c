/**
 * Source: Cimini, Cibelli, Moresi (2019), Reducing the cooking water-to-dried pasta ratio and environmental impact of pasta cooking, J.
 * Sci. Food Agric. 99, 1258 (abstract read; journal details from memory): 1.93 Wh/g at 12 L/kg, 0.39 Wh/g at 2 L/kg, in a straight line.
 * US Department of Energy water-boil tests as widely quoted (secondary): efficiencies of induction 84 %, electric 74 %, gas 40 %.
 */
import { expect, test } from 'vitest';
import { storedKJ } from '../../solver/water/boil-model.ts';
import { EFFICIENCY } from '../../solver/water/heat-sources.ts';
import { BARE } from '../../solver/water/pot.ts';
import { massKg } from '../../solver/water/properties.ts';

/** Wh for each further litre. */
const PUBLISHED = ((1.93 - 0.39) / (12 - 2)) * 1000;
const stored = storedKJ(BARE, massKg(1000, 20), 20, 100) / 3.6;

test('each further litre of pasta water costs between what it does on induction and on gas', () => {
  expect(PUBLISHED).toBeCloseTo(154, 0);
  expect(stored / EFFICIENCY.induction).toBeLessThan(PUBLISHED);
  expect(stored / EFFICIENCY.gas).toBeGreaterThan(PUBLISHED);
});

test('the published line asks for heat that is at least what the water stores', () => {
  expect(stored / PUBLISHED).toBeGreaterThan(EFFICIENCY.gas);
  expect(stored / PUBLISHED).toBeLessThan(EFFICIENCY.induction);
});
