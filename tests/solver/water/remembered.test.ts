import { expect, test } from 'vitest';
import { remembered } from '../../../solver/water/remembered.ts';
import { smallKitchen } from '../../support/documents.ts';

test('a number is reckoned once for a thing in a kitchen and what it hangs on, and anew for another of each', () => {
  const kitchen = smallKitchen();
  const [pan, other] = kitchen.pans;
  let reckoned = 0;
  const ask = (of: typeof kitchen, thing: object, on: string): number => remembered(of, thing, on, () => ++reckoned);
  expect([ask(kitchen, pan!, 'boil 1000'), ask(kitchen, pan!, 'boil 1000')]).toEqual([1, 1]);
  expect(ask(kitchen, pan!, 'boil 2000')).toBe(2);
  expect(ask(kitchen, other!, 'boil 1000')).toBe(3);
  expect(ask(smallKitchen(), pan!, 'boil 1000')).toBe(4);
});
