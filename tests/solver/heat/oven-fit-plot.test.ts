import { expect, test } from 'vitest';
import { fitPlot } from '../../../solver/heat/oven-fit-plot.ts';
import { ovenHeat } from '../../../solver/heat/oven-heat.ts';
import type { Oven } from '../../../solver/kitchen/kitchen.ts';

const oven: Oven = {
  id: 'oven',
  name: 'oven',
  volumeL: 65,
  powerW: 2600,
  functions: ['conventional'],
  dial: { leastC: 50, mostC: 250, stepC: 5 },
  racks: [{ id: 'rack', name: 'rack' }],
  readings: {
    toHeat: [{ minutes: 12, celsius: 200 }],
    afterOff: [
      { fromC: 200, minutes: 20, celsius: 135 },
      { fromC: 150, minutes: 20, celsius: 105 },
    ],
  },
};
const { heating, cooling } = fitPlot(ovenHeat(oven, 20));

test('the curve of a heated oven begins at the temperature of the room and rises to the end of the dial', () => {
  expect(heating.curve[0]).toEqual({ minutes: 0, celsius: 20 });
  expect(heating.curve.at(-1)!.celsius).toBeCloseTo(250, 6);
  expect(heating.curve.every(({ celsius }, at) => at === 0 || celsius > heating.curve[at - 1]!.celsius)).toBe(true);
});

test('the curve of a switched-off oven falls and stays above the room', () => {
  expect(cooling.curve[0]!.celsius).toBeCloseTo(250, 6);
  expect(cooling.curve.every(({ celsius }, at) => at === 0 || celsius < cooling.curve[at - 1]!.celsius)).toBe(true);
  expect(cooling.curve.at(-1)!.celsius).toBeGreaterThan(20);
});

test('each reading stands at the minute at which the curve has what the fit has for it', () => {
  for (const side of [heating, cooling]) {
    for (const { minutes, modelC } of side.readings) {
      const after = side.curve.findIndex((point) => point.minutes >= minutes);
      const [low, high] = [side.curve[after - 1]!.celsius, side.curve[after]!.celsius].sort((a, b) => a - b);
      expect(modelC).toBeGreaterThanOrEqual(low! - 1e-6);
      expect(modelC).toBeLessThanOrEqual(high! + 1e-6);
    }
  }
  expect([heating.readings.length, cooling.readings.length]).toEqual([1, 2]);
});

test('an oven without readings has its typical curves alone', () => {
  const { readings: _, ...typical } = oven;
  const plot = fitPlot(ovenHeat(typical, 20));
  expect([plot.heating.readings, plot.cooling.readings]).toEqual([[], []]);
  expect(plot.heating.curve.length).toBeGreaterThan(10);
});
