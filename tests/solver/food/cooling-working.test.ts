/** The working of a cooling adds up to its minutes. */
import { expect, test } from 'vitest';
import { compositionOfFood } from '../../../solver/food/composition.ts';
import { coolingWorking } from '../../../solver/food/cooling-working.ts';
import { foodOf } from '../../../solver/food/foods.ts';
import { coolFood, type Cooling } from '../../../solver/heat/food-cooling.ts';
import type { Working } from '../../../solver/working.ts';

const potato = compositionOfFood(foodOf('potato-boiled')!);
const cooling: Cooling = { fromC: 90, toC: 60, depthMm: 40, in: 'rack' };
const input = (working: Working, symbol: string): number =>
  working.inputs.find((each) => each.symbol === symbol)!.value;

test('the steps, the delay and the guard give the minutes of the plan', () => {
  const working = coolingWorking(cooling, potato)!;
  const course = coolFood(cooling, potato);
  const steps = working.parts!.reduce((sum, part) => sum + part.value, 0);
  expect(Math.ceil(input(working, 'g') * (input(working, 't₀') + steps))).toBe(working.value);
  expect(course).toMatchObject({ kind: 'cools', minutes: working.value });
});

test('each step follows from its own figures', () => {
  const working = coolingWorking(cooling, potato)!;
  const scale = input(working, 'L') ** 2 / input(working, 'α') / 60;
  for (const part of working.parts!)
    expect((scale * Math.log(input(part, 'θ₁/θ₂'))) / input(part, 'λ') ** 2).toBeCloseTo(part.value, 9);
});

test('the diffusivity is that of the other figures, and the Fourier number that of the time', () => {
  const working = coolingWorking(cooling, potato)!;
  expect(input(working, 'k') / (input(working, 'ρ') * input(working, 'c'))).toBeCloseTo(input(working, 'α'), 12);
  const minutes = input(working, 't₀') + working.parts!.reduce((sum, part) => sum + part.value, 0);
  expect((input(working, 'α') * minutes * 60) / input(working, 'L') ** 2).toBeCloseTo(input(working, 'Fo'), 9);
});

test('what never cools so far has no working', () => {
  expect(coolingWorking({ ...cooling, toC: 20 }, potato)).toBeNull();
});
