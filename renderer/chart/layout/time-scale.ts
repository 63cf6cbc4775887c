/** Minutes to px across the plot, and where the clock's ticks stand. */
import { scaleLinear } from 'd3-scale';
import type { ZonedStart } from '../../../solver/kitchen/values.ts';
import { clockAt } from './wall-clock.ts';

/** What is seen: minutes of the plan from left to right. */
export interface View {
  readonly from: number;
  readonly to: number;
}

export interface TimeScale {
  readonly view: View;
  readonly left: number;
  readonly right: number;
  /** px of a minute. */
  readonly x: (minute: number) => number;
  readonly minute: (x: number) => number;
  readonly perMinute: number;
}

export function timeScale(view: View, left: number, right: number): TimeScale {
  const scale = scaleLinear([view.from, view.to], [left, right]);
  return {
    view,
    left,
    right,
    x: (minute) => scale(minute),
    minute: (x) => scale.invert(x),
    perMinute: (right - left) / (view.to - view.from),
  };
}

export interface Tick {
  readonly minute: number;
  readonly x: number;
  readonly label: string | null;
}

const STEPS = [1, 2, 5, 10, 15, 30, 60, 120, 240, 720];

/** Smallest of the usual steps that leaves `room` px between two. */
const stepFor = (perMinute: number, room: number): number => STEPS.find((step) => step * perMinute >= room) ?? 1440;

/** Ticks on round clock times; those that have room for it carry the time. */
export function clockTicks(start: ZonedStart, scale: TimeScale, labelRoom: number): readonly Tick[] {
  const labelled = stepFor(scale.perMinute, labelRoom);
  const fine = stepFor(scale.perMinute, Math.max(9, labelRoom / 6));
  const step = labelled % fine === 0 ? fine : labelled;
  const [hours, minutes] = start.local.slice(-5).split(':').map(Number);
  const offset = hours! * 60 + minutes!;
  const ticks: Tick[] = [];
  for (
    let clock = Math.ceil((scale.view.from + offset) / step) * step;
    clock - offset <= scale.view.to;
    clock += step
  ) {
    const minute = clock - offset;
    ticks.push({ minute, x: scale.x(minute), label: clock % labelled === 0 ? clockAt(start, minute) : null });
  }
  return ticks;
}
