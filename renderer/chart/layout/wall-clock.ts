/** Minutes of a plan as wall-clock time in the zone of its start; a change to summer time on the way shifts the labels, not the minutes. */
import type { ZonedStart } from '../../../solver/kitchen/values.ts';

const MINUTE = 60_000;

const formats = new Map<string, Intl.DateTimeFormat>();

/** A zone that this machine does not know is read as UTC. */
function format(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known !== undefined) return known;
  const options = {
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  } as const;
  let made: Intl.DateTimeFormat;
  try {
    made = new Intl.DateTimeFormat('en-GB', { ...options, timeZone: zone });
  } catch {
    made = new Intl.DateTimeFormat('en-GB', { ...options, timeZone: 'UTC' });
  }
  formats.set(zone, made);
  return made;
}

interface Local {
  readonly date: string;
  readonly time: string;
}

function local(zone: string, epochMs: number): Local {
  const parts = Object.fromEntries(
    format(zone)
      .formatToParts(epochMs)
      .map(({ type, value }) => [type, value]),
  );
  return {
    date: `${parts['year']}-${parts['month']}-${parts['day']}`,
    time: `${parts['hour']}:${parts['minute']}`,
  };
}

const asUtc = (at: Local): number => Date.parse(`${at.date}T${at.time}:00Z`);

/** The instant of a zoned start, ms since 1970. A time that the clocks skip is read with the offset before the change. */
export function startEpoch(start: ZonedStart): number {
  const wanted = Date.parse(`${start.local}:00Z`);
  let epoch = wanted;
  for (let turn = 0; turn < 2; turn += 1) epoch += wanted - asUtc(local(start.zone, epoch));
  return epoch;
}

/** `10:25`, the clock at a minute of the plan. */
export function clockAt(start: ZonedStart, minute: number): string {
  return local(start.zone, startEpoch(start) + Math.floor(minute) * MINUTE).time;
}

/** `Sunday 8 March`, the date at a minute of the plan. */
export function dateAt(start: ZonedStart, minute: number): string {
  const { date } = local(start.zone, startEpoch(start) + minute * MINUTE);
  return new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' }).format(
    Date.parse(`${date}T00:00Z`),
  );
}

/** `10:25–10:49`. */
export function clockSpan(start: ZonedStart, from: number, until: number): string {
  return from === until ? clockAt(start, from) : `${clockAt(start, from)}–${clockAt(start, until)}`;
}

/** `24 min`, `1 h 5 min`. */
export function minutesWords(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  const rest = whole % 60;
  return `${Math.floor(whole / 60)} h${rest === 0 ? '' : ` ${rest} min`}`;
}
