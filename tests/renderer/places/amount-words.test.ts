import { expect, test } from 'vitest';
import { amountLine, kWhWords, moneyWords } from '../../../renderer/places/amount-words.ts';

const amount = { electricWh: 1250, gasWh: 0, waterMl: 0, wattHours: 1250, cost: 0.3875, carbonG: null };

test('an amount is told in one line, without what is nothing', () => {
  expect(amountLine(amount, 'EUR')).toBe('1.25 kWh, 0.39 EUR');
  expect(amountLine({ ...amount, waterMl: 4200, carbonG: 300.4 }, 'EUR')).toBe(
    '1.25 kWh, 4.2 L water, 0.39 EUR, 300 g CO₂',
  );
});

test('less than nothing has a minus, and nothing has none', () => {
  expect(kWhWords(-120)).toBe('−0.12 kWh');
  expect(moneyWords(-0.001, 'EUR')).toBe('0.00 EUR');
});
