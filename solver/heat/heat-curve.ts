/** The course of an oven's temperature, heating or falling, as a table of readings or as the model gives it. */
import { hottestC, minutesToCool, minutesToHeat, timeConstantMin, type OvenModel } from './oven-model.ts';

/** A monotone curve of temperature against minutes; only differences of its minutes mean anything. */
export interface HeatCurve {
  /** Minute at which it passes a temperature; `Infinity` where it never does. */
  readonly minutesAt: (celsius: number) => number;
  readonly celsiusAt: (minutes: number) => number;
}

type Table = readonly { readonly minutes: number; readonly celsius: number }[];

const between = (x: number, x0: number, x1: number, y0: number, y1: number): number =>
  y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);

/** A table: linear between its readings; before the first and after the last the oven stays where it is. */
export function tableCurve(table: Table, course: 'heating' | 'cooling'): HeatCurve {
  const first = table[0]!;
  const last = table.at(-1)!;
  const before = (reading: number, celsius: number): boolean =>
    course === 'heating' ? reading < celsius : reading > celsius;
  return {
    minutesAt: (celsius) => {
      if (!before(first.celsius, celsius)) return first.minutes;
      if (before(last.celsius, celsius)) return Infinity;
      const index = table.findIndex((row) => !before(row.celsius, celsius));
      const [from, to] = [table[index - 1]!, table[index]!];
      return between(celsius, from.celsius, to.celsius, from.minutes, to.minutes);
    },
    celsiusAt: (minutes) => {
      if (minutes <= first.minutes) return first.celsius;
      if (minutes >= last.minutes) return last.celsius;
      const index = table.findIndex((row) => row.minutes >= minutes);
      const [from, to] = [table[index - 1]!, table[index]!];
      return between(minutes, from.minutes, to.minutes, from.celsius, to.celsius);
    },
  };
}

/** Where the falling curve of a model begins, K over the room; it goes on as well before that minute as after it. */
const START_K = 200;

/** The model's curve: minutes from cold at full power, or from `START_K` over the room switched off. */
export function modelCurve(model: OvenModel, roomC: number, course: 'heating' | 'cooling'): HeatCurve {
  const tau = timeConstantMin(model);
  if (course === 'heating') {
    const most = hottestC(model, roomC);
    return {
      minutesAt: (celsius) => {
        const minutes = minutesToHeat(model, roomC, roomC, celsius);
        return minutes === 'never' ? Infinity : minutes;
      },
      celsiusAt: (minutes) => most + (roomC - most) * Math.exp(-Math.max(0, minutes) / tau),
    };
  }
  const start = roomC + START_K;
  return {
    minutesAt: (celsius) => {
      const [from, to, sign] = celsius <= start ? [start, celsius, 1] : [celsius, start, -1];
      const minutes = minutesToCool(model, roomC, from, to);
      return minutes === 'never' ? Infinity : sign * minutes;
    },
    celsiusAt: (minutes) => (minutes === Infinity ? roomC : roomC + START_K * Math.exp(-minutes / tau)),
  };
}
