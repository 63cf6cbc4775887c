import { describe, expect, test } from 'vitest';
import { ClockState } from '../../../renderer/state/clock.svelte.ts';
import { supper } from '../../support/supper.ts';

// The supper starts at 10:00 in Lisbon, which is on UTC in March; it is all away after 77 minutes.
const START = Date.UTC(2026, 2, 8, 10, 0);

function clockAt(minute: number): { clock: ClockState; turn: (to: number) => void } {
  let now = START + minute * 60_000;
  const clock = new ClockState(() => now);
  clock.open(supper);
  return { clock, turn: (to) => (now = START + to * 60_000) };
}

describe('the cursor', () => {
  test('stands at the start while the session is not running', () => {
    const { clock } = clockAt(-600);
    expect([clock.minute, clock.following, clock.running]).toEqual([0, false, false]);
    clock.follow();
    expect(clock.following).toBe(false);
  });

  test('follows the wall clock while it runs, and stays at the end', () => {
    const { clock, turn } = clockAt(12.5);
    expect([clock.minute, clock.following]).toEqual([12.5, true]);
    turn(20);
    clock.tick();
    expect(clock.minute).toBe(20);
    turn(500);
    clock.tick();
    expect([clock.minute, clock.following]).toEqual([77, false]);
  });

  test('stays where it was set when a better plan is drawn, and goes no further than its end', () => {
    const { clock } = clockAt(-600);
    clock.set(70);
    clock.renew({ ...supper, allAwayMinutes: 75 });
    expect([clock.minute, clock.until]).toEqual([70, 75]);
    clock.renew({ ...supper, allAwayMinutes: 60 });
    expect(clock.minute).toBe(60);
    clock.renew({ ...supper, start: { ...supper.start, local: '2026-03-09T10:00' } });
    expect(clock.minute).toBe(0);
  });

  test('set by hand it leaves the wall clock until told to follow again', () => {
    const { clock, turn } = clockAt(10);
    clock.set(30.4);
    turn(15);
    clock.tick();
    expect(clock.minute).toBe(30);
    clock.follow();
    expect(clock.minute).toBe(15);
  });

  test('does not leave the session', () => {
    const { clock } = clockAt(-600);
    clock.moveBy(-5);
    expect(clock.minute).toBe(0);
    clock.moveBy(1000);
    expect(clock.minute).toBe(77);
  });
});
