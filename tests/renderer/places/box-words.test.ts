import { expect, test } from 'vitest';
import { allergenWords, intakeRows, longDay } from '../../../renderer/places/box-words.ts';

test('allergens are named by the European list, and by the list of the United States only where that says more', () => {
  expect(allergenWords({ eu: ['Cereals containing gluten (wheat)', 'Milk'], us: ['milk', 'wheat'] })).toBe(
    'Cereals containing gluten (wheat), Milk',
  );
  expect(allergenWords({ eu: ['Nuts'], us: ['tree-nuts'] })).toBe('Nuts (US list: tree nuts)');
  expect(allergenWords({ eu: [], us: [] })).toBe('none of the fourteen allergens');
});

test('a day is written out', () => {
  expect(longDay('2026-03-08')).toBe('8 March 2026');
});

test('nutrients come in the order of the declaration, fibre without a share of a day', () => {
  const amounts = {
    energyKJ: 2100,
    energyKcal: 502,
    fat: 14,
    saturates: 4,
    carbohydrate: 52,
    sugars: 9,
    fibre: 8,
    protein: 25,
    salt: 1.5,
  };
  const intake = {
    energyKJ: 0.25,
    energyKcal: 0.251,
    fat: 0.2,
    saturates: 0.2,
    carbohydrate: 0.2,
    sugars: 0.1,
    protein: 0.5,
    salt: 0.25,
  };
  const rows = intakeRows(amounts, intake);
  expect(rows[0]).toEqual({ name: 'energy', amount: '2100 kJ', share: '25 %' });
  expect(rows.map(({ name }) => name).at(-1)).toBe('salt');
  expect(rows.find(({ name }) => name === 'fibre')!.share).toBe('');
});
