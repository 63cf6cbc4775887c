/** Minutes of a plan as the clock on the wall shows them. */
import type { Plan } from '../kitchen/plan.ts';

/** How far the wall clock has been put forward since the start of the session, minutes, at a minute of the plan. */
export type WallOffset = (minute: number) => number;

export interface Clock {
  /** Clock time of a minute: `13:05`. */
  readonly at: (minute: number) => string;
  /** Two clock times: `13:05–13:40`. */
  readonly span: (from: number, until: number) => string;
  /** Minutes that pass from the start to a wall-clock reading, itself given in clock minutes from the start's. */
  readonly elapsed: (clockMinute: number) => number;
  /** Clock minutes from the start of the session to a clock time some days before. */
  readonly daysBefore: (days: number, time: string) => number;
}

const minutesOfDay = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
const two = (part: number): string => String(part).padStart(2, '0');

export function clockOf(plan: Plan, wallOffset: WallOffset): Clock {
  const start = minutesOfDay(plan.start.local.slice(11));
  const at = (minute: number): string => {
    const clock = (((start + minute + wallOffset(minute)) % 1440) + 1440) % 1440;
    return `${two(Math.floor(clock / 60))}:${two(Math.floor(clock % 60))}`;
  };
  return {
    at,
    span: (from, until) => `${at(from)}–${at(until)}`,
    elapsed: (clockMinute) => clockMinute - wallOffset(clockMinute),
    daysBefore: (days, time) => minutesOfDay(time) - start - days * 1440,
  };
}
