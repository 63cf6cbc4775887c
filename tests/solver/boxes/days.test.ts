/** Days reckoned without a clock, beside the proleptic Gregorian calendar of ECMAScript's Date (ECMA-262, "Time Values and Time Range"). */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayAfter, earlier } from '../../../solver/boxes/days.ts';

describe('a day some days after another', () => {
  test.each([
    ['2026-03-08', 3, '2026-03-11'],
    ['2026-12-31', 1, '2027-01-01'],
    ['2028-02-28', 1, '2028-02-29'],
    ['2100-02-28', 1, '2100-03-01'],
    ['2000-03-01', -1, '2000-02-29'],
  ] as const)('%s and %i is %s', (day, days, expected) => {
    expect(dayAfter(day, days)).toBe(expected);
  });

  test('is the day that ECMAScript’s calendar has, for any day of a thousand years', () => {
    const from = Date.UTC(1600, 0, 1) / 86_400_000;
    fc.assert(
      fc.property(
        fc.integer({ min: from, max: from + 365_000 }),
        fc.integer({ min: -4000, max: 4000 }),
        (day, days) => {
          const text = (number: number): string => new Date(number * 86_400_000).toISOString().slice(0, 10);
          expect(dayAfter(text(day), days)).toBe(text(day + days));
        },
      ),
    );
  });

  test('is later than it', () => {
    expect(earlier('2026-09-30', '2026-10-01')).toBe('2026-09-30');
  });
});
