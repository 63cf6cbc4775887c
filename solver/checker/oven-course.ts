/** An oven's temperature minute by minute, from the turns of its dial and the oven's curves. */
import { onceFor } from '../kitchen/once.ts';
import { ovenHeat } from '../heat/oven-heat.ts';
import { celsiusAfter } from '../heat/oven-tables.ts';
import type { Oven, OvenFunction } from '../kitchen/kitchen.ts';
import type { PlannedPlace } from '../kitchen/plan.ts';
import { calledUse, stepsOfUse, type Reading, type Use } from './reading.ts';

interface Setting {
  readonly minute: number;
  readonly celsius: number | null;
  readonly function: OvenFunction;
}

export interface OvenCourse {
  readonly oven: Oven;
  readonly settings: readonly Setting[];
  /** Temperature at the start of each minute, °C; the oven is at room temperature before the first turn of the dial. */
  readonly celsiusAt: (minute: number) => number;
  /** The dial through the minute that starts then; null: never turned yet. */
  readonly settingAt: (minute: number) => Setting | null;
}

/** Follows an oven from the start of the session to `until`. */
export function ovenCourse(oven: Oven, roomC: number, settings: readonly Setting[], until: number): OvenCourse {
  const turns = [...settings].sort((a, b) => a.minute - b.minute);
  const settingAt = (minute: number): Setting | null => turns.filter((turn) => turn.minute <= minute).at(-1) ?? null;
  const heat = ovenHeat(oven, roomC);
  const celsius = [roomC];
  for (let minute = 0; minute < until; minute++)
    celsius.push(celsiusAfter(heat, celsius[minute]!, settingAt(minute)?.celsius ?? null, 1));
  return {
    oven,
    settings: turns,
    settingAt,
    celsiusAt: (minute) => celsius[Math.max(0, Math.min(minute, celsius.length - 1))]!,
  };
}

/** Courses of all ovens of a plan, by id; an oven without a programme stays as cold as the room. Each is fitted to its readings. */
export const ovenCourses = onceFor(coursesOf);

function coursesOf({ plan }: Reading): ReadonlyMap<string, OvenCourse> {
  const until = Math.max(plan.allAwayMinutes, ...plan.steps.map(({ end }) => end), 0);
  return new Map(
    plan.kitchen.ovens.map((oven) => {
      const settings = plan.ovens.filter((each) => each.oven === oven.id).flatMap((each) => each.settings);
      return [oven.id, ovenCourse(oven, plan.kitchen.roomC, settings, Math.min(until, 20_000))];
    }),
  );
}

/** A dish or tray in an oven. */
export interface RackUse {
  readonly use: Use;
  readonly need: Extract<Use['need'], { use: 'oven' }>;
  readonly place: PlannedPlace;
  readonly label: string;
  readonly steps: readonly string[];
}

export function rackUses(reading: Reading): readonly RackUse[] {
  return reading.uses.flatMap((use): readonly RackUse[] =>
    use.need.use === 'oven'
      ? [{ use, need: use.need, place: use.place, label: calledUse(use), steps: stepsOfUse(use, reading) }]
      : [],
  );
}

/** Guard on temperatures, °C: the plan's whole minutes against the oven's exact curve. */
export const GUARD_C = 1;
