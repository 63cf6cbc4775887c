/**
 * source: Directive 2000/84/EC, articles 2 and 3: summer time begins at 01:00 UTC on the last Sunday of March and ends at 01:00 UTC
 * on the last Sunday of October; Lisbon is on UTC in winter (IANA time zone database, Europe/Lisbon).
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isZone, localExists, wallClockOf, wallOffsetOf } from '../../../app/solving/wall-offset.ts';

const lisbon = (local: string) => ({ local, zone: 'Europe/Lisbon' });

describe('minutes to a clock time of another day', () => {
  test.each([
    {
      name: 'the evening before',
      start: lisbon('2026-03-08T10:00'),
      days: -1,
      clock: '20:30',
      expected: -(13 * 60 + 30),
    },
    { name: 'three days on', start: lisbon('2026-03-08T10:00'), days: 3, clock: '07:00', expected: 3 * 1440 - 180 },
    {
      name: 'the evening before a day of 23 hours',
      start: lisbon('2026-03-29T10:00'),
      days: -1,
      clock: '20:30',
      expected: -(12 * 60 + 30),
    },
    {
      name: 'the evening before a day of 25 hours',
      start: lisbon('2026-10-25T10:00'),
      days: -1,
      clock: '20:30',
      expected: -(14 * 60 + 30),
    },
    {
      name: 'the first of two times shown twice',
      start: lisbon('2026-10-24T22:00'),
      days: 1,
      clock: '01:30',
      expected: 3 * 60 + 30,
    },
    {
      name: 'a half-hour zone',
      start: { local: '2026-03-08T10:00', zone: 'Asia/Kolkata' },
      days: 1,
      clock: '10:00',
      expected: 1440,
    },
  ])('$name', ({ start, days, clock, expected }) => {
    expect(wallOffsetOf(start)(days, clock)).toBe(expected);
  });

  test('where no clocks change every day has 24 hours', () => {
    fc.assert(
      fc.property(fc.integer({ min: -14, max: 60 }), fc.integer({ min: 0, max: 1439 }), (days, minute) => {
        const clock = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
        expect(wallOffsetOf({ local: '2026-03-08T10:00', zone: 'UTC' })(days, clock)).toBe(days * 1440 + minute - 600);
      }),
      { numRuns: 200 },
    );
  });
});

describe('the clock on the wall', () => {
  test('goes over midnight into the next day', () => {
    expect(wallClockOf(lisbon('2026-03-08T23:30'))(45)).toEqual({ day: '2026-03-09', time: '00:15' });
  });

  test('skips the hour that summer time takes', () => {
    const clock = wallClockOf(lisbon('2026-03-29T00:30'));
    expect([clock(29).time, clock(30).time]).toEqual(['00:59', '02:00']);
  });

  test('shows an hour twice when summer time ends', () => {
    const clock = wallClockOf(lisbon('2026-10-25T00:30'));
    expect([clock(60).time, clock(120).time]).toEqual(['01:30', '01:30']);
  });
});

test('zones and times that do not exist are told apart from those that do', () => {
  expect([isZone('Europe/Lisbon'), isZone('Europe/Atlantis'), isZone('')]).toEqual([true, false, false]);
  expect([
    localExists(lisbon('2026-03-29T00:59')),
    localExists(lisbon('2026-03-29T01:30')),
    localExists(lisbon('2026-10-25T01:30')),
    localExists(lisbon('2026-02-29T10:00')),
  ]).toEqual([true, false, true, false]);
});
