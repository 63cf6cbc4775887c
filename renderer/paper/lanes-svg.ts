/** Groups and lanes of the chart as SVG text: names, hills, water, bars, ways to the fridge. */
import type { ChartMarks, GroupMark, KeepingMark } from '../chart/layout/chart-layout.ts';
import { fit } from '../chart/layout/label.ts';
import type { HillMark } from '../chart/layout/oven-marks.ts';
import { textWidth } from '../chart/layout/text-width.ts';
import type { WaterMark } from '../chart/layout/water-marks.ts';
import type { Palette } from '../theme/palette.ts';
import { barSvg, sign, toneOf } from './bar-svg.ts';
import { escape, line, tag, title } from './svg-tags.ts';

function hillSvg(hill: HillMark, small: number, palette: Palette): string {
  const stroke = { fill: 'none', stroke: palette.heat, 'stroke-width': 1.8, 'stroke-linejoin': 'round' };
  const after =
    hill.after === null || hill.afterLine === null
      ? ''
      : tag('path', { d: hill.after, fill: 'url(#afterheat)' }) +
        tag('path', { d: hill.afterLine, ...stroke, 'stroke-dasharray': '5 3' });
  const dial = hill.dial
    .map((turn) =>
      tag(
        'g',
        {},
        title(turn.words),
        tag('line', {
          x1: turn.x,
          x2: turn.x,
          y1: turn.y - small,
          y2: hill.bottom,
          stroke: palette.heatText,
          'stroke-dasharray': '2 3',
          opacity: 0.7,
        }),
        turn.label === null
          ? ''
          : line(turn.label, small, 'bold', { x: turn.x + 4, y: turn.y, fill: palette.heatText, 'font-weight': 700 }),
      ),
    )
    .join('');
  const name =
    hill.afterLabel === null
      ? ''
      : line(hill.afterLabel.text, small, 'regular', {
          x: hill.afterLabel.x,
          y: hill.afterLabel.y,
          fill: palette.heatText,
          class: 'serif',
          'font-style': 'italic',
        });
  return (
    tag('path', { d: hill.hot, fill: 'url(#heat)' }) + tag('path', { d: hill.line, ...stroke }) + after + dial + name
  );
}

function waterSvg(water: WaterMark, small: number, palette: Palette): string {
  const pen = { fill: 'none', stroke: palette.waterText, 'stroke-width': 1.2 };
  return [
    tag('path', { d: water.body, fill: 'url(#water)' }),
    tag('path', { d: water.surface, fill: 'none', stroke: palette.water, 'stroke-width': 1.8 }),
    ...(water.least === null
      ? []
      : [
          tag('line', {
            x1: water.least.x1,
            x2: water.least.x2,
            y1: water.least.y,
            y2: water.least.y,
            stroke: palette.waterText,
            'stroke-dasharray': '1 4',
            'stroke-linecap': 'round',
          }),
        ]),
    ...water.hot.map((span) =>
      tag('rect', {
        x: span.x,
        y: water.top,
        width: span.w,
        height: water.bottom - water.top,
        fill: palette.paper,
        opacity: 0.45,
      }),
    ),
    ...water.boils.map(
      (boil) =>
        tag('path', {
          d: `M${boil.x} ${water.bottom}V${boil.y - 4}M${boil.x + 5} ${boil.y + 4}a2.2 2.2 0 1 0 .01 0M${boil.x + 12} ${boil.y + 7}a1.8 1.8 0 1 0 .01 0`,
          ...pen,
        }) +
        line(boil.words, small, 'bold', { x: boil.x + 4, y: boil.y - 5, fill: palette.waterText, 'font-weight': 650 }),
    ),
    ...water.draws.map(({ draw, x, to, label }) => {
      const tone = toneOf(draw.owner, palette);
      const whither = draw.owner.kind === 'component' ? ` → ${draw.owner.letter}` : '';
      return tag(
        'g',
        {},
        title(draw.words),
        tag('path', {
          d: `M${x} ${to}V${water.bottom + small * 0.9}m-3.5 -5l3.5 5.5 3.5 -5.5`,
          fill: 'none',
          stroke: tone,
          'stroke-width': 1.8,
        }),
        line(`${label}${whither}`, small, 'bold', {
          x: x + 7,
          y: water.bottom + small * 1.05,
          fill: tone,
          'font-weight': 700,
        }),
      );
    }),
  ].join('');
}

function keepingSvg(mark: KeepingMark, marks: ChartMarks, palette: Palette): string {
  const { small } = marks.sizes;
  const tone = toneOf(mark.keeping.owner, palette);
  const end = Math.min(mark.away ?? mark.x2, mark.x2);
  const before = mark.x1 - small - 8 - textWidth(mark.label, small) > marks.scale.left;
  const y = mark.y + small * 0.35;
  const limit = { stroke: palette.limit, fill: 'none' };
  return tag(
    'g',
    {},
    title(mark.keeping.words),
    tag('path', { d: `M${mark.x1} ${mark.y}H${Math.max(mark.x1, end)}`, stroke: tone, 'stroke-width': 2.4 }),
    tag('path', { d: `M${end} ${mark.y}H${mark.x2}`, ...limit, 'stroke-width': 1.6, 'stroke-dasharray': '2 2.5' }),
    tag('path', { d: `M${mark.x2} ${mark.y - small * 0.45}v${small * 0.9}`, ...limit, 'stroke-width': 2.4 }),
    mark.away === null ? '' : tag('circle', { cx: mark.away, cy: mark.y, r: small * 0.3, fill: tone }),
    sign(mark.keeping.owner, Math.max(marks.scale.left + 2, mark.x1 - small), y, small, tone),
    line(mark.label, small, 'regular', {
      x: before ? mark.x1 - small - 6 : mark.x2 + 6,
      y,
      fill: palette.limit,
      'text-anchor': before ? 'end' : 'start',
    }),
  );
}

/** What stands in the plot for one group. */
export function groupSvg(group: GroupMark, marks: ChartMarks, palette: Palette): string {
  const { small, radius } = marks.sizes;
  const hill = group.hill === null ? '' : hillSvg(group.hill, small, palette);
  const lanes = group.lanes.map((lane) =>
    [
      ...lane.gone.map((gone) =>
        tag(
          'rect',
          { x: gone.x, y: lane.y, width: Math.max(0, gone.w), height: lane.h, fill: palette.rule, opacity: 0.35 },
          title(gone.gone.words),
        ),
      ),
      lane.water === null ? '' : waterSvg(lane.water, small, palette),
      ...lane.bars.map((mark) => barSvg(mark, radius, palette)),
      ...lane.keeping.map((mark) => keepingSvg(mark, marks, palette)),
    ].join(''),
  );
  return hill + lanes.join('');
}

const capital = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);

/** The group's name and those of its lanes, in their column. */
export function namesSvg(group: GroupMark, marks: ChartMarks, palette: Palette): string {
  const { sizes } = marks;
  const rule = tag('line', { x1: 0, x2: marks.width, y1: group.y, y2: group.y, stroke: palette.rule });
  const name = tag(
    'text',
    {
      x: 2,
      y: group.y + sizes.text * 1.9,
      'font-size': sizes.text * 1.28,
      'font-weight': 650,
      fill: palette.ink,
      class: 'serif',
    },
    escape(capital(group.group.name)),
  );
  const lanes = group.lanes.flatMap((lane) => {
    const lines = fit([lane.lane.name], sizes.gutter * 0.56, 2, sizes.small, 'regular')?.lines ?? [lane.lane.name];
    const kind = lane.lane.kind;
    const middle = kind === 'hands' ? sizes.hands / 2 : kind === 'things' ? sizes.bar / 2 : lane.h / 2;
    return lines.map((text, index) =>
      line(text, sizes.small, 'regular', {
        x: sizes.gutter - 10,
        y: lane.y + middle + sizes.small * (0.34 + (index - (lines.length - 1) / 2) * 1.1),
        fill: palette.soft,
        'text-anchor': 'end',
      }),
    );
  });
  return rule + name + lanes.join('');
}
