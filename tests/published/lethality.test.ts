/**
 * Arithmetic of time and temperature, not cooking advice: the tables are for plants that control humidity and come-up time.
 *
 * source: USDA FSIS, "Cooking Guideline for Meat and Poultry Products (Revised Appendix A)", FSIS-GD-2021-0014, December 2021, Table 3
 * (p. 37): chicken, 7-log reduction of Salmonella, 12 % fat. °C = (°F − 32) / 1.8.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { equalHold, holdAsked, impliedZ, meetsPairs, pairsForAll } from '../../solver/safety/lethality.ts';

const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

/** °F and minutes. */
const CHICKEN_12_PERCENT_FAT: readonly (readonly [number, number])[] = [
  [136, 81.4],
  [138, 52.9],
  [140, 35],
  [142, 23.5],
  [145, 13],
  [148, 6.8],
  [150, 4.2],
  [153, 1.6],
  [155, 54.4 / 60],
  [158, 26.9 / 60],
  [160, 16.9 / 60],
  [162, 10.5 / 60],
  [163, 0],
];
const rows = CHICKEN_12_PERCENT_FAT.map(([fahrenheit, minutes]) => ({
  celsius: celsius(fahrenheit),
  holdSeconds: minutes * 60,
}));

describe('holds at other temperatures, in the published chicken table', () => {
  test.each(CHICKEN_12_PERCENT_FAT)('%d °F asks for %d min', (fahrenheit, minutes) => {
    expect(holdAsked(rows, celsius(fahrenheit))).toBeCloseTo(minutes * 60, 9);
  });

  test('below the coolest row no hold is long enough', () => {
    expect(meetsPairs(rows, celsius(135), 1e9)).toBe(false);
  });

  test('the z from 140 °F to 155 °F is 9.45 °F, which is 5.25 °C', () => {
    const row = (fahrenheit: number) => rows.find(({ celsius: at }) => at === celsius(fahrenheit))!;
    expect(impliedZ(row(140), row(155))).toBeCloseTo(5.25, 2);
    expect(equalHold(row(140), celsius(155), 5.25)).toBeCloseTo(54.4, 0);
  });

  test('between two rows the hold is never shorter than a straight line of log time would have it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: rows.length - 3 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (index, share) => {
          const [cooler, hotter] = [rows[index]!, rows[index + 1]!];
          const at = cooler.celsius + share * (hotter.celsius - cooler.celsius);
          const line = equalHold(cooler, at, impliedZ(cooler, hotter));
          expect(holdAsked(rows, at)).toBeGreaterThanOrEqual(
            Math.min(line, cooler.holdSeconds) * (1 - 1e-9) * (at < hotter.celsius ? 1 : 0),
          );
        },
      ),
    );
  });

  test('hotter never asks for longer', () => {
    const at = fc.double({ min: 50, max: 80, noNaN: true });
    fc.assert(
      fc.property(at, at, (a, b) => {
        expect(holdAsked(rows, Math.max(a, b))).toBeLessThanOrEqual(holdAsked(rows, Math.min(a, b)));
      }),
    );
  });
});

describe('several tables at once', () => {
  /** source: the same, Table 2 (p. 35), meat, 6.5-log and 7-log: 130 °F 112 and 121 min; 145 °F 4 and 4 min; 150 °F 67 and 72 s. */
  const table = (...minutes: readonly number[]) =>
    [130, 145, 150].map((fahrenheit, index) => ({ celsius: celsius(fahrenheit), holdSeconds: minutes[index]! * 60 }));
  test('ask for the longer hold of each row', () => {
    expect(pairsForAll([table(112, 4, 67 / 60), table(121, 4, 72 / 60)])).toEqual(table(121, 4, 72 / 60));
  });
});
