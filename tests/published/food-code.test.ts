/**
 * source: US FDA Food Code 3-501.14 as adopted in Maryland COMAR 10.15.03.11; 3-501.16 as adopted in Washington WAC 246-215-03525;
 * 3-403.11 as adopted in Maryland. Cooling rate: Hedeen, Schaffner, Brown, "Tools and Techniques to Promote Proper Food Cooling in
 * Restaurants", J. Environ. Health, March 2022 (abstract).
 */
import { describe, expect, test } from 'vitest';
import { UNITED_STATES } from '../../solver/safety/data/united-states.ts';
import { coolingRules, hotHolding } from '../../solver/safety/limits.ts';

const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;
const cooling = coolingRules(UNITED_STATES, undefined, 20);
const stage = (id: string) => cooling.find((rule) => rule.id === id)!;

describe('the United States rules hold what a home can meet of the Food Code', () => {
  test('food cools from 135 °F to 70 °F within 2 h', () => {
    const { start, end, mostMinutes } = stage('first-stage');
    expect(start).toMatchObject({ event: 'core-below' });
    expect('celsius' in start && start.celsius).toBeCloseTo(celsius(135), 1);
    expect('celsius' in end && end.celsius).toBeCloseTo(celsius(70), 1);
    expect(mostMinutes).toBe(120);
  });
  test('and to 41 °F within 6 h in all', () => {
    const { start, end, mostMinutes } = stage('both-stages');
    expect(start).toEqual(stage('first-stage').start);
    expect(end).toEqual({ event: 'core-at-most', celsius: celsius(41) });
    expect(mostMinutes).toBe(360);
  });
  test('food made from room-temperature ingredients is at 41 °F within 4 h', () => {
    expect(stage('from-room-temperature')).toMatchObject({ start: { event: 'made' }, mostMinutes: 240 });
  });
  test('hot holding is no cooler than the Food Code’s 135 °F', () => {
    expect(hotHolding(UNITED_STATES)!.value).toBeGreaterThanOrEqual(celsius(135));
  });
  test('the two stages are nearly one exponential in a fridge at 37 °F, as the two-point cooling rate says', () => {
    const rate = (from: number, to: number, hours: number): number =>
      (Math.log10(from - 37) - Math.log10(to - 37)) / hours;
    const [first, both] = [stage('first-stage'), stage('both-stages')].map(({ start, end, mostMinutes }) =>
      rate(
        ('celsius' in start ? start.celsius : NaN) * 1.8 + 32,
        ('celsius' in end ? end.celsius : NaN) * 1.8 + 32,
        mostMinutes / 60,
      ),
    );
    // 0.2364 and 0.2315 per hour, derived from the published limits.
    expect(first).toBeCloseTo(0.2364, 2);
    expect(both).toBeCloseTo(0.2315, 2);
  });
});
