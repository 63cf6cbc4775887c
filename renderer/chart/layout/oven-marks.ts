/** An oven's temperature as a hill behind its racks, with the turns of the dial above it. */
import type { Hill } from './lane-model.ts';
import type { ChartSizes } from './sizes.ts';
import { textWidth } from './text-width.ts';
import type { TimeScale } from './time-scale.ts';

export interface DialMark {
  readonly x: number;
  readonly y: number;
  readonly minute: number;
  /** `220°`, `off`; with the function where it changes. Null where another stands too close; the title says it. */
  readonly label: string | null;
  readonly words: string;
}

export interface HillMark {
  /** Outline of the heat while the oven is on, and of the afterheat: SVG path data. */
  readonly hot: string;
  readonly line: string;
  readonly after: string | null;
  readonly afterLine: string | null;
  readonly afterLabel: { readonly x: number; readonly y: number; readonly text: string } | null;
  readonly dial: readonly DialMark[];
  readonly top: number;
  readonly bottom: number;
}

interface Point {
  readonly minute: number;
  readonly celsius: number;
}

const round = (value: number): number => Math.round(value * 10) / 10;

/** @param line at least one point */
function temperatureAt(line: readonly Point[], minute: number): number {
  const next = line.findIndex((point) => point.minute >= minute);
  if (next === -1) return line.at(-1)!.celsius;
  const b = line[next]!;
  const a = line[next - 1];
  if (a === undefined || b.minute === a.minute) return b.celsius;
  return a.celsius + ((b.celsius - a.celsius) * (minute - a.minute)) / (b.minute - a.minute);
}

function dialMarks(
  hill: Hill,
  scale: TimeScale,
  sizes: ChartSizes,
  y: number,
  clock: (minute: number) => string,
): readonly DialMark[] {
  let free = -Infinity;
  let known: string | null = null;
  return hill.programme.settings.map((setting): DialMark => {
    const changed =
      setting.celsius !== null && setting.function !== known && (known !== null || setting.function !== 'conventional');
    const text = setting.celsius === null ? 'off' : `${setting.celsius}°${changed ? ` ${setting.function}` : ''}`;
    if (setting.celsius !== null) known = setting.function;
    const x = scale.x(setting.minute);
    const fits = x >= free;
    if (fits) free = x + textWidth(text, sizes.small, 'bold') + 9;
    const words =
      setting.celsius === null
        ? `${clock(setting.minute)} switch the oven off`
        : `${clock(setting.minute)} set the oven to ${setting.celsius} °C, ${setting.function}`;
    return { x, y, minute: setting.minute, label: fits ? text : null, words };
  });
}

/**
 * @param top px of the hottest temperature; `bottom` of the room's
 * @param clock the wall clock at a minute
 */
export function hillMark(
  hill: Hill,
  scale: TimeScale,
  sizes: ChartSizes,
  top: number,
  bottom: number,
  clock: (minute: number) => string,
): HillMark {
  const { line, settings } = hill.programme;
  const y = (celsius: number): number =>
    bottom - ((Math.max(hill.roomC, celsius) - hill.roomC) / (hill.mostC - hill.roomC)) * (bottom - top);
  const path = (points: readonly Point[]): string =>
    points
      .map((point, index) => `${index === 0 ? 'M' : 'L'}${round(scale.x(point.minute))} ${round(y(point.celsius))}`)
      .join('');
  const area = (points: readonly Point[]): string =>
    points.length < 2
      ? ''
      : `${path(points)}L${round(scale.x(points.at(-1)!.minute))} ${bottom}L${round(scale.x(points[0]!.minute))} ${bottom}Z`;
  const off = settings.at(-1)?.celsius === null ? settings.at(-1)!.minute : Infinity;
  const turn = off === Infinity || line.length === 0 ? [] : [{ minute: off, celsius: temperatureAt(line, off) }];
  const hot = [...line.filter((point) => point.minute < off), ...turn];
  const after = [...turn, ...line.filter((point) => point.minute > off)];
  const label = 'afterheat';
  const room = after.length < 2 ? 0 : scale.x(after.at(-1)!.minute) - scale.x(off);
  const fits = room > textWidth(label, sizes.small) + 60;
  const end = after.at(-1);
  return {
    hot: area(hot),
    line: path(hot),
    after: after.length < 2 ? null : area(after),
    afterLine: after.length < 2 ? null : path(after),
    afterLabel:
      fits && end !== undefined
        ? {
            x: scale.x(off) + textWidth('off', sizes.small, 'bold') + 14,
            y: top - 6,
            text: label,
          }
        : null,
    dial: dialMarks(hill, scale, sizes, top - 6, clock),
    top,
    bottom,
  };
}
