/** The lane chart of a plan as one SVG document, for paper and for the command line: a string, made without a screen. */
import type { Plan } from '../../solver/kitchen/plan.ts';
import { chainMarks, type ChainMarks } from '../chart/layout/chain-marks.ts';
import { chartGroups } from '../chart/layout/chart-groups.ts';
import { chartLayout, wholeView, type ChartMarks } from '../chart/layout/chart-layout.ts';
import { componentOwners } from '../chart/layout/identity.ts';
import type { Reading } from '../chart/layout/sizes.ts';
import { textWidth } from '../chart/layout/text-width.ts';
import { dateAt } from '../chart/layout/wall-clock.ts';
import { figuresOf, provenWords } from '../places/figures.ts';
import { DARK, LIGHT, type Palette } from '../theme/palette.ts';
import { sign, toneOf } from './bar-svg.ts';
import { cautionsSvg } from './cautions-svg.ts';
import { groupSvg, namesSvg } from './lanes-svg.ts';
import { escape, line, tag, title } from './svg-tags.ts';

export interface ChartSvgOptions {
  /** px, 700 or more; default 1600. */
  readonly width?: number;
  readonly dark?: boolean;
  /** Boards, pans, tools and sink too. */
  readonly everything?: boolean;
  readonly reading?: Reading;
  /** With the binding chain, where the plan carries it. */
  readonly why?: boolean;
}

const MARGIN = 28;
const SANS = "'Sofia Sans Semi Condensed', 'Segoe UI', 'Helvetica Neue', 'DejaVu Sans Condensed', sans-serif";
const SERIF = "Vollkorn, 'Iowan Old Style', 'Palatino Linotype', Palatino, Georgia, serif";

function defs(palette: Palette, marks: ChartMarks): string {
  const gradient = (id: string, colour: string, top: number, bottom: number): string =>
    tag(
      'linearGradient',
      { id, x1: 0, y1: 0, x2: 0, y2: 1 },
      tag('stop', { offset: 0, 'stop-color': colour, 'stop-opacity': top }),
      tag('stop', { offset: 1, 'stop-color': colour, 'stop-opacity': bottom }),
    );
  const { left, right } = marks.scale;
  return tag(
    'defs',
    {},
    gradient('heat', palette.heat, 0.5, 0.12),
    gradient('water', palette.water, 0.2, 0.5),
    tag(
      'pattern',
      { id: 'afterheat', width: 7, height: 7, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' },
      tag('rect', { width: 7, height: 7, fill: palette.heat, opacity: 0.1 }),
      tag('line', { x1: 0, x2: 0, y1: 0, y2: 7, stroke: palette.heat, 'stroke-width': 1.6, opacity: 0.4 }),
    ),
    tag('clipPath', { id: 'plot' }, tag('rect', { x: left, y: 0, width: right - left + 8, height: marks.height })),
  );
}

/** Name, date, what is proved, and the figures; `height` px. */
function head(plan: Plan, marks: ChartMarks, palette: Palette): { readonly svg: string; readonly height: number } {
  const { text, small } = marks.sizes;
  const size = text * 2.1;
  const figures = figuresOf(plan)
    .filter((figure) => figure.id !== 'waiting')
    .map((figure) => `${figure.label} ${figure.words}`)
    .join('   ');
  const svg =
    tag(
      'text',
      { x: 0, y: size, 'font-size': size, 'font-weight': 600, class: 'serif', fill: palette.ink },
      escape(plan.name),
    ) +
    line(`${dateAt(plan.start, 0)}, ${plan.kitchen.name}. ${provenWords(plan)}`, text, 'regular', {
      x: 0,
      y: size + text * 1.7,
      fill: palette.soft,
    }) +
    line(figures, text, 'bold', {
      x: 0,
      y: size + text * 3.3,
      fill: palette.ink,
      'font-weight': 650,
      'xml:space': 'preserve',
    });
  return { svg, height: size + text * 3.3 + small };
}

/** Every dish with its letter, in as many rows as they need. */
function legend(plan: Plan, marks: ChartMarks, palette: Palette): { readonly svg: string; readonly height: number } {
  const size = marks.sizes.text;
  let x = 0;
  let row = 0;
  const items = [...componentOwners(plan).values()].map((owner) => {
    const w = size * 1.9 + textWidth(owner.name, size) + size * 1.4;
    if (x + w > marks.width) {
      x = 0;
      row += 1;
    }
    const y = row * size * 1.9;
    const item =
      tag('rect', { x, y, width: size * 1.45, height: size * 1.45, rx: 3, fill: toneOf(owner, palette) }) +
      sign(
        owner,
        x + (size * 1.45 - textWidth(owner.kind === 'component' ? owner.letter : '', size, 'bold')) / 2,
        y + size * 1.08,
        size,
        palette.onTone,
      ) +
      line(owner.name, size, 'regular', { x: x + size * 1.9, y: y + size * 1.08, fill: palette.ink });
    x += w;
    return item;
  });
  return { svg: items.join(''), height: (row + 1) * size * 1.9 };
}

function axis(marks: ChartMarks, palette: Palette): string {
  const { sizes, scale } = marks;
  const ticks = marks.ticks
    .filter((tick) => tick.x >= scale.left - 1 && tick.x <= scale.right + 8)
    .map(
      (tick) =>
        tag('line', {
          x1: tick.x,
          x2: tick.x,
          y1: sizes.axis - (tick.label === null ? 4 : 8),
          y2: sizes.axis,
          stroke: palette.soft,
        }) +
        (tick.label === null || Math.abs(tick.x - marks.finish.x) < sizes.small * 5
          ? ''
          : line(tick.label, sizes.small, 'regular', {
              x: tick.x,
              y: sizes.axis - 12,
              fill: palette.soft,
              'text-anchor': 'middle',
            })),
    );
  const flags = [marks.finish, ...(marks.table === null ? [] : [marks.table])].map((flag) =>
    line(flag.label, sizes.small, 'bold', {
      x: flag.x,
      y: sizes.axis - 12,
      fill: flag === marks.table ? palette.limit : palette.ink,
      'font-weight': 700,
      'text-anchor': 'middle',
    }),
  );
  return ticks.join('') + flags.join('');
}

/** The binding chain: heavy underlines, and the way from link to link. */
function chainSvg({ underlines, joins }: ChainMarks, palette: Palette): string {
  const way = (d: string, stroke: string, width: number): string =>
    tag('path', { d, fill: 'none', stroke, 'stroke-width': width });
  return [
    ...joins.flatMap((join) => [way(join, palette.paper, 5), way(join, palette.ink, 2)]),
    ...underlines.flatMap(({ x, y, w, h }) => [
      tag('rect', { x: x - 1, y: y - 1, width: w + 2, height: h + 2, fill: palette.paper }),
      tag('rect', { x, y, width: w, height: h, fill: palette.ink }),
    ]),
  ].join('');
}

function plot(marks: ChartMarks, palette: Palette, chain: ChainMarks | null): string {
  const upright = (x: number, stroke: string, width: number, dash?: string): string =>
    tag('line', { x1: x, x2: x, y1: 0, y2: marks.height, stroke, 'stroke-width': width, 'stroke-dasharray': dash });
  return tag(
    'g',
    { 'clip-path': 'url(#plot)' },
    ...marks.ticks.map((tick) => upright(tick.x, tick.label === null ? palette.hair : palette.rule, 1)),
    marks.tail === null
      ? ''
      : tag('rect', {
          x: marks.tail.x,
          y: 0,
          width: marks.tail.w,
          height: marks.height,
          fill: palette.rule,
          opacity: 0.2,
        }),
    ...marks.groups.map((group) => groupSvg(group, marks, palette)),
    upright(marks.finish.x, palette.ink, 2),
    marks.tail === null ? '' : upright(marks.tail.x + marks.tail.w, palette.ink, 1, '2 4'),
    marks.table === null ? '' : upright(marks.table.x, palette.limit, 2),
    chain === null ? '' : chainSvg(chain, palette),
  );
}

/** A whole SVG document, with its own title and styles and no script. */
export function chartSvg(plan: Plan, options: ChartSvgOptions = {}): string {
  const palette = options.dark === true ? DARK : LIGHT;
  const width = Math.max(700, options.width ?? 1600);
  const groups = chartGroups(plan, options.everything === true);
  const marks = chartLayout(plan, groups, {
    width: width - 2 * MARGIN,
    view: wholeView(plan),
    reading: options.reading ?? 'near',
  });
  const chain = options.why === true ? chainMarks(plan, marks) : null;
  const top = head(plan, marks, palette);
  const dishes = legend(plan, marks, palette);
  const lanesAt = top.height + dishes.height + marks.sizes.axis + 10;
  const cautions = cautionsSvg(plan, marks.sizes.small, marks.width, palette.soft);
  const cautionsAt = lanesAt + marks.height + marks.sizes.text;
  const height = 2 * MARGIN + cautionsAt + cautions.height;
  const at = (y: number, svg: string): string => tag('g', { transform: `translate(0 ${Math.round(y)})` }, svg);
  return tag(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${width} ${Math.ceil(height)}`,
      width,
      height: Math.ceil(height),
      role: 'img',
      'font-family': SANS,
    },
    title(`Lanes of ${plan.name}`),
    `<style>.serif{font-family:${SERIF}}text{font-variant-numeric:tabular-nums lining-nums}</style>`,
    defs(palette, marks),
    tag('rect', { width: '100%', height: '100%', fill: palette.paper }),
    tag(
      'g',
      { transform: `translate(${MARGIN} ${MARGIN})` },
      at(0, top.svg),
      at(top.height + 6, dishes.svg),
      at(lanesAt - marks.sizes.axis, axis(marks, palette)),
      at(lanesAt, plot(marks, palette, chain) + marks.groups.map((group) => namesSvg(group, marks, palette)).join('')),
      at(cautionsAt, cautions.svg),
    ),
  );
}
