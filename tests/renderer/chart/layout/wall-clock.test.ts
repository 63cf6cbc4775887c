import { describe, expect, test } from 'vitest';
import { clockAt, clockSpan, dateAt, minutesWords } from '../../../../renderer/chart/layout/wall-clock.ts';

const lisbon = (local: string) => ({ local, zone: 'Europe/Lisbon' });

describe('minutes of a plan on the wall clock', () => {
  // source: Directive 2000/84/EC: summer time begins on the last Sunday of March and ends on the last of October, at 01:00 UTC.
  test.each([
    { name: 'a plain morning', start: '2026-03-08T10:00', minute: 95, clock: '11:35' },
    { name: 'up to the change to summer time', start: '2026-03-29T00:30', minute: 29, clock: '00:59' },
    { name: 'from the change to summer time on', start: '2026-03-29T00:30', minute: 30, clock: '02:00' },
    { name: 'up to the change back', start: '2026-10-25T00:30', minute: 89, clock: '01:59' },
    { name: 'from the change back on', start: '2026-10-25T00:30', minute: 90, clock: '01:00' },
    { name: 'before the start', start: '2026-03-08T10:00', minute: -30, clock: '09:30' },
    { name: 'past midnight', start: '2026-03-08T23:50', minute: 15, clock: '00:05' },
  ])('$name', ({ start, minute, clock }) => {
    expect(clockAt(lisbon(start), minute)).toBe(clock);
  });

  test('a zone that nobody knows is read as UTC', () => {
    expect(clockAt({ local: '2026-07-01T10:00', zone: 'Sea/Atlantis' }, 5)).toBe('10:05');
  });

  test('the date follows the clock, not 24 hours', () => {
    const start = lisbon('2026-03-28T22:00');
    expect([0, 180, 24 * 60 + 59, 25 * 60].map((minute) => dateAt(start, minute))).toEqual([
      'Saturday 28 March',
      'Sunday 29 March',
      'Sunday 29 March',
      'Monday 30 March',
    ]);
  });

  test('stretches and lengths are said in words', () => {
    expect(clockSpan(lisbon('2026-03-08T10:00'), 25, 49)).toBe('10:25–10:49');
    expect([1, 59, 60, 95].map(minutesWords)).toEqual(['1 min', '59 min', '1 h', '1 h 35 min']);
  });
});
