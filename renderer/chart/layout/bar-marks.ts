/** A bar in px: its box, where hands are on it, its letter and as much of its label as fits in whole words. */
import { outlinedLabel, solidLabel, type Labels } from './bar-labels.ts';
import type { Bar } from './lane-model.ts';
import type { ChartSizes } from './sizes.ts';
import type { Weight } from './text-width.ts';
import type { TimeScale } from './time-scale.ts';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export interface TextMark {
  readonly lines: readonly { readonly x: number; readonly y: number; readonly text: string }[];
  /** Reads upwards: lines are turned a quarter about their own start. */
  readonly upright: boolean;
  readonly size: number;
  readonly weight: Weight;
  /** It stands on the bar's tone, not on paper. */
  readonly onTone: boolean;
}

export interface BarMark {
  readonly bar: Bar;
  readonly box: Box;
  /** Hands-on stretches at full height. */
  readonly hands: readonly Box[];
  /** Looks on the way: a notch at the lower edge. */
  readonly checks: readonly Box[];
  readonly letter: { readonly x: number; readonly y: number; readonly size: number; readonly onTone: boolean } | null;
  readonly text: TextMark | null;
  readonly ticks: readonly { readonly x: number; readonly words: string }[];
  /** A whisker to the last minute at which it may end. */
  readonly limit: { readonly x: number; readonly y: number } | null;
  /** The label says all there is to say. */
  readonly whole: boolean;
}

const SPACE = 1;

function box(scale: TimeScale, start: number, end: number, y: number, h: number): Box {
  const x = scale.x(start);
  return { x, y, w: Math.max(2, scale.x(end) - x - SPACE), h };
}

/** The part of a box inside the plot. */
function seen(scale: TimeScale, { x, w }: Box): { readonly x: number; readonly w: number } {
  const left = Math.max(x, scale.left);
  return { x: left, w: Math.max(0, Math.min(x + w, scale.right) - left) };
}

/**
 * @param y top of the bar's row; `h` its height, px
 * @param free px up to which nothing else stands in its row
 */
export function barMark(
  bar: Bar,
  scale: TimeScale,
  sizes: ChartSizes,
  y: number,
  h: number,
  free: number = scale.right,
): BarMark {
  const own = box(scale, bar.start, bar.end, y, h);
  const hands = bar.hands.filter((hand) => !hand.check).map((hand) => box(scale, hand.start, hand.end, y, h));
  const notch = h * 0.3;
  const checks = bar.hands
    .filter((hand) => hand.check)
    .map((hand) => box(scale, hand.start, hand.end, y + h - notch, notch));
  const area = { ...seen(scale, own), y, h };
  const around = { area, hands, free, sizes };
  const labels: Labels =
    area.w < 3
      ? { letter: null, text: null }
      : bar.look === 'on'
        ? solidLabel(bar, around)
        : outlinedLabel(bar, around);
  const shown = labels.text?.lines.map((line) => line.text).join(' ');
  return {
    bar,
    box: own,
    hands,
    checks,
    ...labels,
    ticks: bar.ticks.map((tick) => ({ x: scale.x(tick.minute), words: tick.words })),
    limit: bar.limit === null ? null : { x: scale.x(bar.limit), y: y + h - 4 },
    whole: shown === bar.labels[0],
  };
}
