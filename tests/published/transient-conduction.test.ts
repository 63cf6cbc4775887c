/** Cooling and heating of solids against tables and worked examples of textbooks. */
import { describe, expect, test } from 'vitest';
import {
  foAtTheta,
  heatGoneFromSphere,
  lumpedTheta,
  slabModes,
  sphereModes,
  thetaAt,
} from '../../solver/heat/food-conduction.ts';

// source: Çengel, Heat and Mass Transfer, Table 4-2, coefficients of the one-term solution: Bi, then λ₁ and A₁ of a plane wall of
// thickness 2L, then λ₁ and A₁ of a sphere
const TABLE_4_2 = [
  [0.01, 0.0998, 1.0017, 0.173, 1.003],
  [0.1, 0.3111, 1.0161, 0.5423, 1.0298],
  [0.4, 0.5932, 1.058, 1.0528, 1.1164],
  [1, 0.8603, 1.1191, 1.5708, 1.2732],
  [2, 1.0769, 1.1785, 2.0288, 1.4793],
  [4, 1.2646, 1.2287, 2.4556, 1.7202],
  [10, 1.4289, 1.262, 2.8363, 1.9249],
] as const;

describe("the one-term solution's coefficients", () => {
  test.each(TABLE_4_2)('at Bi %d are those of the table for a plane wall', (bi, wall, weight) => {
    // Half of a wall that cools at both faces is a slab through whose middle no heat passes.
    const modes = slabModes(0, bi);
    expect(modes.roots[0]).toBeCloseTo(wall, 3);
    expect(modes.weights(0)[0]).toBeCloseTo(weight, 3);
  });

  test.each(TABLE_4_2)('at Bi %d are those of the table for a sphere', (bi, _wall, _weight, root, weight) => {
    const modes = sphereModes(bi);
    expect(modes.roots[0]).toBeCloseTo(root, 3);
    expect(modes.weights(0)[0]).toBeCloseTo(weight, 3);
  });

  test('of a wall and of a sphere tend to π/2 and π where the surface has the temperature of its surroundings', () => {
    // source: Çengel, Heat and Mass Transfer, Table 4-2, row ∞: 1.5708, 1.2732; 3.1416, 2.0000
    expect(slabModes(0, 1e7).roots[0]).toBeCloseTo(1.5708, 4);
    expect(slabModes(0, 1e7).weights(0)[0]).toBeCloseTo(1.2732, 4);
    expect(sphereModes(1e7).roots[0]).toBeCloseTo(3.1416, 4);
    expect(sphereModes(1e7).weights(0)[0]).toBeCloseTo(2, 4);
  });
});

describe('an apple of 9 cm in a freezer for an hour', () => {
  // source: Çengel, Heat and Mass Transfer, chapter 4, problem with published solution: ρ 840, c 3810, k 0.418, α 1.3e-7, h 8,
  // 20 °C into −15 °C: Bi 0.861, Fo 0.231; centre 11.2 °C, surface 2.7 °C, 17.2 kJ given off
  const bi = (8 * 0.045) / 0.418;
  const fo = (1.3e-7 * 3600) / 0.045 ** 2;
  const modes = sphereModes(bi);

  test('has the published numbers of Biot and Fourier, root and weight', () => {
    expect(bi).toBeCloseTo(0.861, 3);
    expect(fo).toBeCloseTo(0.231, 3);
    expect(modes.roots[0]).toBeCloseTo(1.476, 2);
    expect(modes.weights(0)[0]).toBeCloseTo(1.239, 3);
  });

  test('has the published temperatures by the one-term solution', () => {
    expect(-15 + 35 * thetaAt(modes, 0, fo, 1)).toBeCloseTo(11.2, 1);
    expect(Math.abs(-15 + 35 * thetaAt(modes, 1, fo, 1) - 2.7)).toBeLessThan(0.1);
  });

  test('has given off the published heat', () => {
    const all = (840 * 3810 * 4 * Math.PI * 0.045 ** 3 * 35) / 3 / 1000;
    expect(heatGoneFromSphere(modes, fo, 1) * all).toBeCloseTo(17.2, 1);
  });

  test('differs little with all terms, since Fo is above 0.2', () => {
    expect(Math.abs(thetaAt(modes, 0, fo) - thetaAt(modes, 0, fo, 1))).toBeLessThan(0.01);
  });
});

describe('an egg in boiling water', () => {
  test('has the published root and weight, read from the table between its rows', () => {
    // source: solution text of a variant of the egg problem of Çengel: k 0.607, h 800, Ø 5.5 cm: Bi 36.2, λ₁ 3.066, A₁ 1.994
    const bi = (800 * 0.0275) / 0.607;
    const modes = sphereModes(bi);
    expect(bi).toBeCloseTo(36.2, 1);
    expect(Math.abs(modes.roots[0]! - 3.066)).toBeLessThan(0.015);
    expect(Math.abs(modes.weights(0)[0]! - 1.994)).toBeLessThan(0.002);
  });

  test('of 5.5 cm takes 17.7 min from 8 to 70 °C by one term', () => {
    // source: data of Çengel, Heat and Mass Transfer, chapter 4: k 0.6, α 0.14e-6, h 1400, 97 °C; worked by hand with λ₁ 3.0927,
    // A₁ 1.9977: Fo = ln(1.9977 ÷ 0.3034)/3.0927² = 0.197
    const modes = sphereModes((1400 * 0.0275) / 0.6);
    expect(modes.roots[0]).toBeCloseTo(3.0927, 3);
    const theta = (97 - 70) / (97 - 8);
    const oneTerm = Math.log(modes.weights(0)[0]! / theta) / modes.roots[0]! ** 2;
    expect((oneTerm * 0.0275 ** 2) / 0.14e-6 / 60).toBeCloseTo(17.7, 1);
    // All terms: Fo is a little below 0.2, and the one-term solution is right to some seconds still.
    expect(Math.abs(foAtTheta(modes, 0, theta) - oneTerm)).toBeLessThan(0.002);
  });
});

test('an apple of 6 cm in a stream of water at 2 °C takes 63 min from 15 to 3 °C at its centre', () => {
  // source: data of Singh and Heldman, Introduction to Food Engineering, example 4.26: k 0.355, c 3600, ρ 820, h 50; worked by hand:
  // Bi 4.23, Fo 0.505
  const bi = (50 * 0.03) / 0.355;
  const fo = foAtTheta(sphereModes(bi), 0, 1 / 13);
  expect(bi).toBeCloseTo(4.23, 2);
  expect(fo).toBeCloseTo(0.505, 2);
  const alpha = 0.355 / (820 * 3600);
  expect(Math.round((fo * 0.03 ** 2) / alpha / 60)).toBe(63);
});

test('twice the depth takes four times as long where the surface is held at the temperature of its surroundings', () => {
  // source: Dickerson and Read, Cooling rates of foods, Journal of Milk and Food Technology 36 (1973), abstract: the time grows with the
  // square of the shortest dimension
  const minutes = (depthM: number): number =>
    (foAtTheta(slabModes((1e6 * depthM) / 0.57, (1e6 * depthM) / 0.57), 0.5, 0.1) * depthM ** 2) / 1.45e-7 / 60;
  expect(minutes(0.1) / minutes(0.05)).toBeCloseTo(4, 3);
});

test("the Food Code's two limits lie on one cooling curve: 57 to 21 °C in 2 h is 57 to 5 °C in 6.0 h", () => {
  // source: FDA Food Code 3-501.14 (57 to 21 °C within 2 h, to 5 °C within 6 h); log-linear curves: Igo, Hedeen, Schaffner, Journal of
  // Food Protection (2021); surroundings at 3 °C (assumed): k = ln(54.22 ÷ 18.11) ÷ 2 h = 0.548 a hour
  const [start, first, second, medium] = [135, 70, 41, 37].map((fahrenheit) => (fahrenheit - 32) / 1.8) as [
    number,
    number,
    number,
    number,
  ];
  const rate = Math.log((start - medium) / (first - medium)) / 2;
  expect(rate).toBeCloseTo(0.544, 2);
  // A food so thin that it is of one temperature throughout falls on that curve: h·A/(ρ·c·V) = rate.
  const bi = 0.01;
  const hours = (theta: number): number => (foAtTheta(slabModes(0, bi), 0, theta) * bi) / rate;
  expect(hours((first - medium) / (start - medium))).toBeCloseTo(2, 1);
  expect(Math.abs(hours((second - medium) / (start - medium)) - 5.9)).toBeLessThan(0.2);
});

test('lumping a food is right within 5 % where Bi is below 0.1', () => {
  // source: Çengel, Heat and Mass Transfer, chapter 4: criterion for the lumped analysis
  for (const bi of [0.01, 0.05, 0.1]) {
    for (const fo of [1, 3, 10]) {
      const series = thetaAt(slabModes(0, bi), 0, fo);
      expect(Math.abs(lumpedTheta(bi, fo, 1) - series)).toBeLessThan(0.05);
    }
  }
});
