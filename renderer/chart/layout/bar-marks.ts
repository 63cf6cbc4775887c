/** A bar in px: its box, where hands are on it, its letter and as much of its label as fits in whole words. */
import { fit } from './label.ts';
import type { Bar } from './lane-model.ts';
import type { ChartSizes } from './sizes.ts';
import { textWidth, type Weight } from './text-width.ts';
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

interface Room {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

function level(
  bar: Bar,
  room: Room,
  size: number,
  weight: Weight,
  onTone: boolean,
): (TextMark & { choice: number }) | null {
  const lineHeight = size * 1.12;
  const most = Math.max(1, Math.floor((room.h + 2) / lineHeight));
  const found = fit(bar.labels, room.w, most, size, weight);
  if (found === null) return null;
  const top = room.y + (room.h - found.lines.length * lineHeight) / 2;
  return {
    lines: found.lines.map((text, index) => ({ x: room.x, y: top + (index + 0.79) * lineHeight, text })),
    upright: false,
    size,
    weight,
    onTone,
    choice: found.choice,
  };
}

function standing(
  bar: Bar,
  room: Room,
  size: number,
  weight: Weight,
  onTone: boolean,
): (TextMark & { choice: number }) | null {
  const lineHeight = size * 1.06;
  const most = Math.floor((room.w + 1) / lineHeight);
  const found = fit(bar.labels, room.h, most, size, weight);
  if (found === null) return null;
  const left = room.x + (room.w - found.lines.length * lineHeight) / 2;
  return {
    lines: found.lines.map((text, index) => ({ x: left + (index + 0.79) * lineHeight, y: room.y + room.h, text })),
    upright: true,
    size,
    weight,
    onTone,
    choice: found.choice,
  };
}

/** A bar of solid tone: tall ones read like the spine of a book where they are too narrow to read across. */
function solidLabel(bar: Bar, area: Room, sizes: ChartSizes): Pick<BarMark, 'letter' | 'text'> {
  const { letter: letterSize, text } = sizes;
  const letterWidth =
    bar.owner.kind === 'component' ? textWidth(bar.owner.letter, letterSize, 'bold') : letterSize * 0.9;
  const tall = area.h > letterSize * 4;
  const letterFits = area.w >= letterWidth + 0.5;
  const pad = Math.min(5, area.w * 0.14);
  if (!tall) {
    const letter = letterFits
      ? {
          x: Math.min(area.x + pad, area.x + (area.w - letterWidth) / 2),
          y: area.y + area.h / 2 + letterSize * 0.35,
          size: letterSize,
          onTone: true,
        }
      : null;
    const used = letter === null ? 0 : letter.x - area.x + letterWidth + 5;
    const room = { x: area.x + used, y: area.y, w: area.w - used - 2, h: area.h };
    return { letter, text: level(bar, room, text, 'bold', true) };
  }
  const letter = letterFits
    ? {
        x: area.x + Math.min(pad + 1, (area.w - letterWidth) / 2),
        y: area.y + letterSize * 1.05,
        size: letterSize,
        onTone: true,
      }
    : null;
  const head = letter === null ? 3 : letterSize * 1.25;
  const room = { x: area.x + pad, y: area.y + head, w: area.w - 2 * pad, h: area.h - head - 4 };
  const across = level(bar, room, text, 'bold', true);
  const up = standing(bar, { ...room, x: area.x, w: area.w }, text, 'bold', true);
  if (across !== null && (up === null || across.choice <= up.choice)) {
    const first = across.lines[0]!.y - across.size * 0.95;
    const rise = first - room.y;
    return { letter, text: { ...across, lines: across.lines.map((line) => ({ ...line, y: line.y - rise })) } };
  }
  return { letter, text: up };
}

/** An outlined bar: letter and label stand after the hands that fill it, on paper. */
function outlinedLabel(
  bar: Bar,
  mark: Pick<BarMark, 'box' | 'hands'>,
  scale: TimeScale,
  sizes: ChartSizes,
): Pick<BarMark, 'letter' | 'text'> {
  const { letter: letterSize, text } = sizes;
  const whole = seen(scale, mark.box);
  const first = mark.hands.find((hand) => hand.x <= mark.box.x + 0.5);
  const last = mark.hands.find((hand) => hand.x + hand.w >= mark.box.x + mark.box.w - 1.5 && hand !== first);
  const left = Math.max(whole.x, first === undefined ? 0 : first.x + first.w);
  const right = Math.min(whole.x + whole.w, last === undefined ? Infinity : last.x);
  const width = bar.owner.kind === 'component' ? textWidth(bar.owner.letter, letterSize, 'bold') : letterSize * 0.9;
  const baseline = mark.box.y + mark.box.h / 2 + letterSize * 0.35;
  if (right - left < width + 4) {
    const onTone = first !== undefined && first.w >= width + 1;
    if (!onTone) return { letter: null, text: null };
    return { letter: { x: first.x + (first.w - width) / 2, y: baseline, size: letterSize, onTone }, text: null };
  }
  const letter = { x: left + 4, y: baseline, size: letterSize, onTone: false };
  const used = 4 + width + 5;
  const room = { x: left + used, y: mark.box.y + 1, w: right - left - used - 3, h: mark.box.h - 2 };
  return { letter, text: level(bar, room, text, 'regular', false) };
}

/** @param y top of the bar's row; `h` its height, px */
export function barMark(bar: Bar, scale: TimeScale, sizes: ChartSizes, y: number, h: number): BarMark {
  const own = box(scale, bar.start, bar.end, y, h);
  const hands = bar.hands.filter((hand) => !hand.check).map((hand) => box(scale, hand.start, hand.end, y, h));
  const notch = h * 0.3;
  const checks = bar.hands
    .filter((hand) => hand.check)
    .map((hand) => box(scale, hand.start, hand.end, y + h - notch, notch));
  const area = { ...seen(scale, own), y, h };
  const labels =
    area.w < 3
      ? { letter: null, text: null }
      : bar.look === 'on'
        ? solidLabel(bar, area, sizes)
        : outlinedLabel(bar, { box: own, hands }, scale, sizes);
  const shown = labels.text?.lines.map((line) => line.text).join(' ');
  return {
    bar,
    box: own,
    hands,
    checks,
    ...labels,
    ticks: bar.ticks.map((tick) => ({ x: scale.x(tick.minute), words: tick.words })),
    limit: bar.limit === null ? null : { x: scale.x(bar.limit), y: y + h / 2 },
    whole: shown === bar.labels[0],
  };
}
