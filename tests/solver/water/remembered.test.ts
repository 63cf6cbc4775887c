import { expect, test } from 'vitest';
import { remembered } from '../../../solver/water/remembered.ts';
import { smallKitchen } from '../../support/documents.ts';

test('a number is reckoned once for a kitchen and what it hangs on, and anew for another of either', () => {
  const kitchen = smallKitchen();
  let reckoned = 0;
  const ask = (of: typeof kitchen, on: readonly unknown[]): number => remembered(of, on, () => ++reckoned);
  expect([ask(kitchen, ['boil', 1000]), ask(kitchen, ['boil', 1000])]).toEqual([1, 1]);
  expect(ask(kitchen, ['boil', 2000])).toBe(2);
  expect(ask(smallKitchen(), ['boil', 1000])).toBe(3);
});
