/**
 * Minutes between the start of a session and clock times of other days, in the session's time zone: a day on which the clocks
 * change has 23 or 25 hours. Zones are those of the run-time's IANA database.
 */
import type { ZonedStart } from '../../solver/kitchen/values.ts';

const formats = new Map<string, Intl.DateTimeFormat>();

/** Whether the run-time knows a time zone. */
export function isZone(zone: string): boolean {
  try {
    return formatOf(zone) !== null;
  } catch {
    return false;
  }
}

function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known !== undefined) return known;
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    calendar: 'iso8601',
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  });
  formats.set(zone, format);
  return format;
}

/** Minutes since 1970 that a wall clock would show if it were on UTC; null for a date that no calendar has. */
function wallMinutes(local: string): number | null {
  const ms = Date.parse(`${local}:00Z`);
  if (Number.isNaN(ms) || new Date(ms).toISOString().slice(0, 16) !== local) return null;
  return ms / 60_000;
}

/** What the wall clock of a zone shows at an instant, in wall minutes. */
function shownAt(instant: number, zone: string): number {
  const parts = Object.fromEntries(
    formatOf(zone)
      .formatToParts(instant * 60_000)
      .map(({ type, value }) => [type, value]),
  );
  const text = `${parts['year']!.padStart(4, '0')}-${parts['month']}-${parts['day']}T${parts['hour']}:${parts['minute']}`;
  return wallMinutes(text)!;
}

/**
 * Instant at which the wall clock of a zone shows a time, minutes since 1970 UTC. Of a time shown twice the first; for a time
 * that is skipped the instant as far after the change as the time is.
 */
function instantOf(wall: number, zone: string): number {
  const before = wall - (shownAt(wall - 1440, zone) - (wall - 1440));
  const after = wall - (shownAt(wall + 1440, zone) - (wall + 1440));
  const earlier = Math.min(before, after);
  if (shownAt(earlier, zone) === wall) return earlier;
  const later = Math.max(before, after);
  return shownAt(later, zone) === wall ? later : before;
}

/** Whether the clocks of the zone show this time on this day. */
export function localExists(start: ZonedStart): boolean {
  const wall = wallMinutes(start.local);
  return wall !== null && shownAt(instantOf(wall, start.zone), start.zone) === wall;
}

/**
 * How clock times of other days are counted from a session's start.
 *
 * @param start of the session; its zone known and its time in it existing
 * @returns minutes from the start to `clock` (`HH:MM`) `days` after the day of the start; negative: before it
 */
export function wallOffsetOf(start: ZonedStart): (days: number, clock: string) => number {
  const wall = wallMinutes(start.local)!;
  const from = instantOf(wall, start.zone);
  const midnight = Math.floor(wall / 1440) * 1440;
  return (days, clock) =>
    instantOf(midnight + days * 1440 + Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5)), start.zone) - from;
}

/**
 * What the clock on the wall shows during a session.
 *
 * @param start as for `wallOffsetOf`
 * @returns day and clock time of a minute from the start, `2026-03-08` and `10:05`
 */
export function wallClockOf(start: ZonedStart): (minute: number) => { readonly day: string; readonly time: string } {
  const from = instantOf(wallMinutes(start.local)!, start.zone);
  return (minute) => {
    const shown = new Date(shownAt(from + minute, start.zone) * 60_000).toISOString();
    return { day: shown.slice(0, 10), time: shown.slice(11, 16) };
  };
}
