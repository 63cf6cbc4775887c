/** Minutes of a plan as the clock on the wall shows them. */
import type { Plan } from '../kitchen/plan.ts';

/** Minutes from the start of a session to a clock time some days after it (negative: before), whatever the clocks do between. */
export type WallOffset = (days: number, time: string) => number;

export interface Clock {
  /** Clock time of a minute: `13:05`. */
  readonly at: (minute: number) => string;
  /** Two clock times: `13:05–13:40`. */
  readonly span: (from: number, until: number) => string;
  /** Minutes from the start of the session to a clock time of another day. */
  readonly onDay: WallOffset;
}

const minutesOfDay = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
const two = (part: number): string => String(part).padStart(2, '0');

/** @param wallOffset absent: every day has 24 hours */
export function clockOf(plan: Plan, wallOffset?: WallOffset): Clock {
  const start = minutesOfDay(plan.start.local.slice(11));
  const at = (minute: number): string => {
    const clock = (((start + minute) % 1440) + 1440) % 1440;
    return `${two(Math.floor(clock / 60))}:${two(Math.floor(clock % 60))}`;
  };
  return {
    at,
    span: (from, until) => `${at(from)}–${at(until)}`,
    onDay: wallOffset ?? ((days, time) => days * 1440 + minutesOfDay(time) - start),
  };
}
