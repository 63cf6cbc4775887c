/** A bar of the chart as SVG text; the same marks as in the window. */
import { GLYPHS } from '../chart/glyphs.ts';
import type { Owner } from '../chart/layout/identity.ts';
import type { BarMark } from '../chart/layout/bar-marks.ts';
import type { Palette } from '../theme/palette.ts';
import { line, tag, title } from './svg-tags.ts';

export function toneOf(owner: Owner, palette: Palette): string {
  if (owner.kind === 'component') return palette.tones[owner.tone - 1] ?? palette.ink;
  if (owner.glyph === 'water') return palette.waterText;
  return owner.glyph === 'preheat' ? palette.heatText : palette.work;
}

/** An owner's letter or pictogram with its baseline at `y`. */
export function sign(owner: Owner, x: number, y: number, size: number, colour: string): string {
  if (owner.kind === 'component') {
    return line(owner.letter, size, 'bold', { x, y, 'font-weight': 750, fill: colour });
  }
  return tag('path', {
    d: GLYPHS[owner.glyph],
    transform: `translate(${x.toFixed(1)} ${(y - size * 0.78).toFixed(1)}) scale(${((size * 0.9) / 12).toFixed(3)})`,
    fill: 'none',
    stroke: colour,
    'stroke-width': 1.6,
    'stroke-linecap': 'round',
    'stroke-linejoin': 'round',
  });
}

export function barSvg(mark: BarMark, radius: number, palette: Palette): string {
  const { bar, box } = mark;
  const work = bar.owner.kind === 'work';
  const tone = toneOf(bar.owner, palette);
  const solid = work ? palette.workFill : tone;
  const onTone = work ? palette.ink : palette.onTone;
  const rx = Math.min(radius, box.w / 3);
  const fill = (each: { x: number; y: number; w: number; h: number }): string =>
    tag('rect', { x: each.x, y: each.y, width: each.w, height: each.h, rx: Math.min(radius, each.w / 3), fill: solid });
  const body =
    bar.look === 'on'
      ? fill(box)
      : tag('rect', {
          x: box.x + 0.9,
          y: box.y + 0.9,
          width: Math.max(0.5, box.w - 1.8),
          height: box.h - 1.8,
          rx,
          fill: bar.look === 'held' ? 'none' : palette.card,
          'fill-opacity': 0.9,
          stroke: tone,
          'stroke-width': bar.look === 'held' ? 1.4 : 1.8,
          'stroke-dasharray': bar.look === 'held' ? '3 3' : undefined,
        }) + [...mark.hands, ...mark.checks].map(fill).join('');
  const limit =
    mark.limit === null
      ? ''
      : tag('path', {
          d: `M${box.x + box.w} ${mark.limit.y}H${mark.limit.x}M${mark.limit.x} ${mark.limit.y - 4}v8`,
          stroke: palette.limit,
          'stroke-width': 1.6,
          'stroke-dasharray': '2 2.5',
          fill: 'none',
          opacity: 0.65,
        });
  const ticks = mark.ticks
    .map((tick) => tag('line', { x1: tick.x, x2: tick.x, y1: box.y, y2: box.y + 7, stroke: tone, 'stroke-width': 1.6 }))
    .join('');
  const letter =
    mark.letter === null
      ? ''
      : sign(bar.owner, mark.letter.x, mark.letter.y, mark.letter.size, mark.letter.onTone ? onTone : tone);
  const { text } = mark;
  const words =
    text === null
      ? ''
      : text.lines
          .map((each) =>
            line(each.text, text.size, text.weight, {
              x: each.x,
              y: each.y,
              transform: text.upright ? `rotate(-90 ${each.x.toFixed(1)} ${each.y.toFixed(1)})` : undefined,
              fill: text.onTone ? onTone : palette.ink,
              'font-weight': text.weight === 'bold' ? 650 : 450,
              ...(text.onTone
                ? {}
                : { 'paint-order': 'stroke', stroke: palette.card, 'stroke-width': 3, 'stroke-opacity': 0.75 }),
            }),
          )
          .join('');
  return tag('g', {}, title(bar.words), limit, body, ticks, letter, words);
}
