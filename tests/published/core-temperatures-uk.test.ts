/**
 * source: Food Standards Agency, cooking advice, as four training texts report it; Advisory Committee on the Microbiological Safety of
 * Food, report on the safe cooking of burgers, 2007, as reported. Holding: food hygiene regulations, as reported.
 */
import { describe, expect, test } from 'vitest';
import { UNITED_KINGDOM } from '../../solver/safety/data/united-kingdom.ts';
import { equalHold, holdAsked, impliedZ, meetsPairs } from '../../solver/safety/lethality.ts';
import { coldHolding, coreRule, fridgeDays, fridgeDeadline, hotHolding } from '../../solver/safety/limits.ts';

const { pairs } = coreRule(UNITED_KINGDOM, { raw: 'poultry' })!;

describe('the United Kingdom rules hold the agency’s pairs', () => {
  test.each([
    { celsius: 70, seconds: 120 },
    { celsius: 75, seconds: 30 },
    { celsius: 80, seconds: 6 },
  ])('$celsius °C for $seconds s', ({ celsius, seconds }) => {
    expect(holdAsked(pairs, celsius)).toBe(seconds);
    expect(meetsPairs(pairs, celsius, seconds)).toBe(true);
    expect(meetsPairs(pairs, celsius, seconds - 1)).toBe(false);
  });

  test.each([
    { celsius: 65, minutes: 14, ordinary: 10 },
    { celsius: 60, minutes: 93, ordinary: 45 },
  ])(
    'at $celsius °C the committee’s $minutes min, not the ordinary $ordinary min',
    ({ celsius, minutes, ordinary }) => {
      expect(holdAsked(pairs, celsius) / 60).toBe(minutes);
      expect(meetsPairs(pairs, celsius, ordinary * 60)).toBe(false);
    },
  );

  test('the committee’s pairs are 2 min at 70 °C with a z of 6 °C', () => {
    const standard = { celsius: 70, holdSeconds: 120 };
    expect(equalHold(standard, 60, 6) / 60).toBeCloseTo(92.8, 1);
    expect(equalHold(standard, 65, 6) / 60).toBeCloseTo(13.6, 1);
    // Rounded up to whole minutes in the report.
    expect(Math.ceil(equalHold(standard, 60, 6) / 60)).toBe(93);
    expect(Math.ceil(equalHold(standard, 65, 6) / 60)).toBe(14);
  });

  test('the ordinary pairs imply a z of 7.4 °C up to 70 °C and of 7.7 °C above', () => {
    expect(impliedZ({ celsius: 60, holdSeconds: 45 * 60 }, { celsius: 70, holdSeconds: 120 })).toBeCloseTo(7.4, 1);
    expect(impliedZ({ celsius: 70, holdSeconds: 120 }, { celsius: 80, holdSeconds: 6 })).toBeCloseTo(7.7, 1);
  });

  test('food is kept hot at 63 °C, and cold at 5 °C', () => {
    expect(hotHolding(UNITED_KINGDOM)?.value).toBe(63);
    expect(coldHolding(UNITED_KINGDOM, 'fridge')?.value).toBe(5);
  });

  test('food is in the fridge within 90 min, rice within 60 min', () => {
    expect(fridgeDeadline(UNITED_KINGDOM, undefined, 20)?.value).toBe(90);
    expect(fridgeDeadline(UNITED_KINGDOM, 'cooked-rice', 20)?.value).toBe(60);
  });

  test('leftovers keep for 2 days, rice for 1', () => {
    expect(fridgeDays(UNITED_KINGDOM, 'leftovers')?.value).toBe(2);
    expect(fridgeDays(UNITED_KINGDOM, 'cooked-rice')?.value).toBe(1);
  });
});
