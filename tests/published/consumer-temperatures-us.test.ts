/**
 * source: US government, FoodSafety.gov / USDA FSIS, "Safe Minimum Internal Temperature Chart" (reprints of the chart); for the oven
 * setting and the danger zone USDA FSIS consumer advice. °C = (°F − 32) / 1.8.
 */
import { describe, expect, test } from 'vitest';
import { UNITED_STATES } from '../../solver/safety/data/united-states.ts';
import { coldHolding, coreRule, fridgeDeadline, handWash, hotHolding, leastOvenC } from '../../solver/safety/limits.ts';
import type { CookingThrough } from '../../solver/safety/limits.ts';
import { meetsPairs } from '../../solver/safety/lethality.ts';

const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

describe('the United States rules hold the consumer chart', () => {
  const CHART: readonly { name: string; through: CookingThrough; fahrenheit: number; restMinutes: number }[] = [
    { name: 'steaks, chops and roasts', through: { raw: 'meat', cut: 'whole' }, fahrenheit: 145, restMinutes: 3 },
    { name: 'minced meat', through: { raw: 'meat', cut: 'minced' }, fahrenheit: 160, restMinutes: 0 },
    { name: 'all poultry', through: { raw: 'poultry' }, fahrenheit: 165, restMinutes: 0 },
    { name: 'minced poultry', through: { raw: 'poultry', cut: 'minced' }, fahrenheit: 165, restMinutes: 0 },
    { name: 'egg dishes', through: { raw: 'egg' }, fahrenheit: 160, restMinutes: 0 },
    { name: 'fin fish', through: { raw: 'fish' }, fahrenheit: 145, restMinutes: 0 },
  ];
  test.each(CHART)('$name: $fahrenheit °F with a rest of $restMinutes min', ({ through, fahrenheit, restMinutes }) => {
    const rule = coreRule(UNITED_STATES, through)!;
    const [pair] = rule.pairs;
    // To a tenth of a degree, and never below the chart by more than rounding.
    expect(Math.abs(pair!.celsius - celsius(fahrenheit))).toBeLessThan(0.1);
    expect((rule.restSeconds ?? 0) / 60).toBe(restMinutes);
    expect(meetsPairs(rule.pairs, celsius(fahrenheit) + 0.1, 0)).toBe(true);
    expect(meetsPairs(rule.pairs, celsius(fahrenheit) - 0.1, 3600)).toBe(false);
  });

  test('meat that does not say how it is cut is taken for minced', () => {
    expect(coreRule(UNITED_STATES, { raw: 'meat' })?.food).toBe('minced-meat');
  });

  test.each(['meat', 'poultry'] as const)('%s roasts in an oven set at 325 °F or more', (raw) => {
    expect(leastOvenC(UNITED_STATES, { raw })?.value).toBeCloseTo(celsius(325), 1);
  });
  test.each(['fish', 'egg'] as const)('no oven setting is asked for %s', (raw) => {
    expect(leastOvenC(UNITED_STATES, { raw })).toBeNull();
  });

  test('food is kept above 140 °F or below 40 °F, and frozen at 0 °F', () => {
    expect(hotHolding(UNITED_STATES)?.value).toBe(celsius(140));
    expect(coldHolding(UNITED_STATES, 'fridge')?.value).toBeCloseTo(celsius(40), 1);
    expect(coldHolding(UNITED_STATES, 'freezer')?.value).toBeCloseTo(celsius(0), 1);
  });

  test('food is in the fridge within two hours, and within one where the room is above 90 °F', () => {
    expect(fridgeDeadline(UNITED_STATES, undefined, 20)?.value).toBe(120);
    expect(fridgeDeadline(UNITED_STATES, undefined, celsius(89))?.value).toBe(120);
    expect(fridgeDeadline(UNITED_STATES, undefined, celsius(91))?.value).toBe(60);
  });

  test('hands are washed for 20 s after raw food', () => {
    expect(handWash(UNITED_STATES)?.value).toBe(20);
  });
});
