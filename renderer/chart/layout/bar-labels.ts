/** Letter and label of a bar: across it, upright like the spine of a book, or on the paper beside it where that says more. */
import type { BarMark, Box, TextMark } from './bar-marks.ts';
import { fit } from './label.ts';
import type { Bar } from './lane-model.ts';
import type { ChartSizes } from './sizes.ts';
import { textWidth, type Weight } from './text-width.ts';

export type Labels = Pick<BarMark, 'letter' | 'text'>;

export interface Around {
  /** The part of the bar that is seen. */
  readonly area: Box;
  readonly hands: readonly Box[];
  /** px up to which nothing else stands in its row. */
  readonly free: number;
  readonly sizes: ChartSizes;
}

type Fitted = TextMark & { readonly choice: number };

/** Width of the owner's letter or pictogram, px. */
const signWidth = ({ owner }: Bar, size: number): number =>
  owner.kind === 'component' ? textWidth(owner.letter, size, 'bold') : size * 0.9;

/** The usual size of a sign, or as much smaller as still can be read where the bar is narrow. */
function signSize(bar: Bar, room: number, { letter }: ChartSizes): number {
  const whole = signWidth(bar, letter);
  return whole <= room ? letter : Math.max(letter * 0.72, (letter * room) / whole);
}

function across(bar: Bar, room: Box, size: number, weight: Weight, onTone: boolean): Fitted | null {
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

/** Sizes of upright text, shares of the usual: a narrow spine takes a smaller one before it goes without. */
const SPINES = [1, 0.92, 0.84];

function upright(bar: Bar, room: Box, text: number): Fitted | null {
  for (const share of SPINES) {
    const size = text * share;
    const lineHeight = size * 1.04;
    const most = Math.floor((room.w + 1.5) / lineHeight);
    const found = fit(bar.labels, room.h, most, size, 'bold');
    if (found === null) continue;
    const left = room.x + (room.w - found.lines.length * lineHeight) / 2;
    return {
      lines: found.lines.map((line, index) => ({
        x: left + (index + 0.79) * lineHeight,
        y: room.y + room.h,
        text: line,
      })),
      upright: true,
      size,
      weight: 'bold',
      onTone: true,
      choice: found.choice,
    };
  }
  return null;
}

/** The label on the paper after the bar, where it says more there than within: null where it does not. */
function beside(bar: Bar, { area, free, sizes }: Around, within: Fitted | null): Fitted | null {
  const full = Math.max(
    0,
    bar.labels.findIndex((label) => !label.includes(' · ')),
  );
  if (within !== null && within.choice <= full) return null;
  const x = area.x + area.w + sizes.text * 0.45;
  const found = across(bar, { x, y: area.y, w: free - x - 6, h: sizes.text }, sizes.text, 'regular', false);
  if (found === null || (within !== null && found.choice >= within.choice)) return null;
  const shift = (area.h - sizes.text) / 2;
  return { ...found, lines: found.lines.map((line) => ({ ...line, y: line.y + shift })) };
}

/** A bar of solid tone. */
export function solidLabel(bar: Bar, around: Around): Labels {
  const { area, sizes } = around;
  const size = signSize(bar, area.w - 0.5, sizes);
  const width = signWidth(bar, size);
  const fits = area.w >= width + 0.5;
  const pad = Math.min(size * 0.4, area.w * 0.14);
  if (area.h <= size * 4) {
    const x = Math.min(area.x + pad, area.x + (area.w - width) / 2);
    const letter = fits ? { x, y: area.y + area.h / 2 + size * 0.35, size, onTone: true } : null;
    const used = letter === null ? 0 : x - area.x + width + size * 0.38;
    const within = across(bar, { ...area, x: area.x + used, w: area.w - used - 2 }, sizes.text, 'bold', true);
    return { letter, text: beside(bar, around, within) ?? within };
  }
  const letter = fits
    ? { x: area.x + Math.min(pad + 1, (area.w - width) / 2), y: area.y + size * 1.05, size, onTone: true }
    : null;
  const head = letter === null ? 3 : size * 1.25;
  const room = { x: area.x + pad, y: area.y + head, w: area.w - 2 * pad, h: area.h - head - 4 };
  const level = across(bar, room, sizes.text, 'bold', true);
  const spine = upright(bar, { ...room, x: area.x, w: area.w }, sizes.text);
  if (level === null || (spine !== null && spine.choice < level.choice)) return { letter, text: spine };
  // Level text begins below the letter, where upright text ends.
  const rise = level.lines[0]!.y - level.size * 0.95 - room.y;
  return { letter, text: { ...level, lines: level.lines.map((line) => ({ ...line, y: line.y - rise })) } };
}

/** The widest stretch of a bar in which no hand is on it, px. */
function widestGap(area: Box, hands: readonly Box[]): { readonly left: number; readonly right: number } {
  const end = area.x + area.w;
  const edges = [...hands].sort((a, b) => a.x - b.x);
  let widest = { left: area.x, right: area.x };
  let left = area.x;
  for (const hand of [...edges, { x: end, w: 0 }]) {
    const right = Math.min(end, hand.x);
    if (right - left > widest.right - widest.left) widest = { left, right };
    left = Math.max(left, hand.x + hand.w);
  }
  return widest;
}

/** An outlined bar: letter and label stand after the hands that fill it. */
export function outlinedLabel(bar: Bar, around: Around): Labels {
  const { area, hands, sizes } = around;
  const first = hands.find((hand) => hand.x <= area.x + 0.5);
  const { left, right } = widestGap(area, hands);
  const size = signSize(bar, right - left - 3, sizes);
  const width = signWidth(bar, size);
  const y = area.y + area.h / 2 + size * 0.35;
  if (right - left < width + 2) {
    const onTone = first !== undefined && first.w >= width + 1;
    return {
      letter: onTone ? { x: first.x + (first.w - width) / 2, y, size, onTone } : null,
      text: beside(bar, around, null),
    };
  }
  const inset = Math.min(size * 0.3, (right - left - width) / 2);
  const used = inset + width + size * 0.38;
  const room = { x: left + used, y: area.y + 1, w: right - left - used - 3, h: area.h - 2 };
  const within = across(bar, room, sizes.text, 'regular', false);
  return { letter: { x: left + inset, y, size, onTone: false }, text: beside(bar, around, within) ?? within };
}
