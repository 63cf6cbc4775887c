/** The binding chain on the chart: a heavy underline below what binds, and lines from each link to the next. */
import type { Plan } from '../../../solver/kitchen/plan.ts';
import type { BarMark } from './bar-marks.ts';
import type { ChartMarks } from './chart-layout.ts';
import { homeRank } from './link-marks.ts';

type Link = NonNullable<Plan['bindingChain']>[number];

export interface ChainMark {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export interface ChainMarks {
  readonly underlines: readonly ChainMark[];
  /** SVG path data; a step of time between two links slants. */
  readonly joins: readonly string[];
}

const round = (value: number): number => Math.round(value * 10) / 10;

/** The bar under which a link is drawn: of the bars of its step at that time, where the step spends it. */
function barOf(bars: readonly BarMark[], link: Link): BarMark | undefined {
  const own =
    link.step === undefined
      ? bars.filter(({ bar }) => link.thing !== undefined && bar.id.startsWith(`boil/${link.thing}/`))
      : bars.filter(({ bar }) => bar.stepId === link.step);
  const overlap = ({ bar }: BarMark): number => Math.min(bar.end, link.until) - Math.max(bar.start, link.from);
  return own
    .filter((mark) => overlap(mark) > 0 || (link.from === link.until && overlap(mark) === 0))
    .sort((a, b) => overlap(b) - overlap(a) || homeRank(a) - homeRank(b))[0];
}

/** Where a link is drawn: below its bar; below the racks for an oven that heats or turns; null where the chart shows nothing of it. */
function bottomOf(plan: Plan, marks: ChartMarks, bars: readonly BarMark[], link: Link): number | null {
  const mark = barOf(bars, link);
  if (mark !== undefined) return mark.box.y + mark.box.h;
  const heating = plan.steps.find((step) => step.id === link.step && step.kind === 'preheat');
  const ovenId = link.thing ?? heating?.component;
  const oven = marks.groups.find(({ group }) => ovenId !== undefined && group.id === `oven/${ovenId}`);
  const lane = oven?.lanes.at(-1);
  return lane === undefined ? null : lane.y + lane.h - marks.sizes.gap;
}

/** @returns nothing for a plan that carries no chain */
export function chainMarks(plan: Plan, marks: ChartMarks): ChainMarks {
  const { scale, sizes } = marks;
  const bars = marks.groups.flatMap((group) => group.lanes.flatMap((lane) => lane.bars));
  const h = Math.max(3.5, sizes.gap * 0.8);
  const underlines = (plan.bindingChain ?? []).flatMap((link): ChainMark[] => {
    const bottom = bottomOf(plan, marks, bars, link);
    if (bottom === null || link.from === link.until) return [];
    const x = scale.x(link.from);
    return [
      { x: round(x), y: round(bottom + sizes.gap * 0.1), w: round(Math.max(2, scale.x(link.until) - x)), h: round(h) },
    ];
  });
  const joins = underlines.slice(1).map((to, index) => {
    const from = underlines[index]!;
    const [x1, x2] = [from.x + from.w, to.x];
    return `M${round(x1)} ${round(from.y + h / 2)}L${round(x2)} ${round(to.y + h / 2)}`;
  });
  return { underlines, joins };
}

/** Ids of the planned steps of the chain. */
export const chainSteps = (plan: Plan): ReadonlySet<string> =>
  new Set((plan.bindingChain ?? []).flatMap((link) => link.step ?? []));
