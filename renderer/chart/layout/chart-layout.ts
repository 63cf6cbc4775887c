/**
 * The whole chart in px: plan's groups + width + view → marks. Pure, so that the window, the paper and the command line draw the same.
 */
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { durationMinutes } from '../../../solver/kitchen/values.ts';
import { barMark, type BarMark } from './bar-marks.ts';
import type { Bar, Gone, Group, Keeping, Lane } from './lane-model.ts';
import { hillMark, type HillMark } from './oven-marks.ts';
import { chartSizes, type ChartSizes, type Reading } from './sizes.ts';
import { clockTicks, timeScale, type Tick, type TimeScale, type View } from './time-scale.ts';
import { clockAt } from './wall-clock.ts';
import { waterMark, type WaterMark } from './water-marks.ts';

export interface KeepingMark {
  readonly keeping: Keeping;
  readonly x1: number;
  readonly x2: number;
  readonly y: number;
  readonly away: number | null;
  readonly label: string;
}

export interface LaneMark {
  readonly lane: Lane;
  readonly y: number;
  readonly h: number;
  readonly bars: readonly BarMark[];
  readonly gone: readonly { readonly gone: Gone; readonly x: number; readonly w: number }[];
  readonly water: WaterMark | null;
  readonly keeping: readonly KeepingMark[];
}

export interface GroupMark {
  readonly group: Group;
  readonly y: number;
  readonly h: number;
  readonly lanes: readonly LaneMark[];
  readonly hill: HillMark | null;
}

export interface LineMark {
  readonly minute: number;
  readonly x: number;
  readonly label: string;
}

export interface ChartMarks {
  readonly width: number;
  readonly height: number;
  readonly sizes: ChartSizes;
  readonly scale: TimeScale;
  readonly ticks: readonly Tick[];
  readonly groups: readonly GroupMark[];
  readonly finish: LineMark;
  /** Cooling and putting away past the finish. */
  readonly tail: { readonly x: number; readonly w: number; readonly label: string } | null;
  readonly table: LineMark | null;
}

/** A session whose work begins later than this is seen from shortly before its work, minutes. */
const LONG_WAIT = 15;

/** From a little before the first work to a little after everything is away. */
export function wholeView(plan: Plan): View {
  const to = Math.max(plan.allAwayMinutes, plan.finishMinutes, 10);
  const begin = Math.min(to - 10, ...plan.steps.map((step) => step.start), ...plan.pools.map((course) => course.from));
  const from = begin > LONG_WAIT ? begin - 3 : 0;
  return { from: from - (to - from) * 0.005, to: to + (to - from) * 0.025 };
}

interface Frame {
  readonly plan: Plan;
  readonly scale: TimeScale;
  readonly sizes: ChartSizes;
}

function laneMark({ plan, scale, sizes }: Frame, lane: Lane, y: number): LaneMark {
  const clock = (minute: number): string => clockAt(plan.start, minute);
  const top = y + sizes.caption;
  const rowHeight = lane.kind === 'hands' ? sizes.hands : sizes.bar;
  const gone =
    lane.kind === 'hands' || lane.kind === 'things'
      ? lane.gone.map((each) => ({ gone: each, x: scale.x(each.from), w: scale.x(each.until) - scale.x(each.from) }))
      : [];
  const rowMark = (bar: Bar, at: number): BarMark => {
    const after = lane.bars.filter((each) => each.row === bar.row && each.start >= bar.end);
    const next = Math.min(plan.allAwayMinutes + 1_000, ...after.map((each) => each.start));
    return barMark(bar, scale, sizes, at, rowHeight, Math.min(scale.right, scale.x(next)));
  };
  const rows = (start: number): readonly BarMark[] =>
    lane.bars.map((bar) => rowMark(bar, start + bar.row * (rowHeight + sizes.gap)));
  switch (lane.kind) {
    case 'hands':
    case 'things': {
      const h = sizes.caption + lane.rows * (rowHeight + sizes.gap);
      return { lane, y, h, gone, bars: rows(top), water: null, keeping: [] };
    }
    case 'water': {
      const steam = lane.steamRows * (rowHeight + sizes.gap);
      // Above the surface stands when it boils, below the pot what was ladled out.
      const words = sizes.small * 1.5;
      const boiling = Math.max(
        sizes.water + words,
        (lane.rows - lane.steamRows) * (rowHeight + sizes.gap) + sizes.small + words,
      );
      const bottom = top + steam + boiling;
      const foot = lane.draws.length === 0 ? 0 : words;
      const bars = lane.bars.map((bar) => {
        const row = bar.row * (rowHeight + sizes.gap);
        const down =
          bar.row < lane.steamRows ? row : row + boiling - (lane.rows - lane.steamRows) * (rowHeight + sizes.gap);
        return rowMark(bar, top + down);
      });
      const water = waterMark(lane, scale, top + steam + words, bottom, clock);
      return { lane, y, h: sizes.caption + steam + boiling + foot + sizes.gap, gone, bars, water, keeping: [] };
    }
    case 'keeping': {
      const keeping = lane.keeping.map((each, index) => ({
        keeping: each,
        x1: scale.x(each.from),
        x2: scale.x(each.until),
        y: top + (index + 0.5) * sizes.keeping,
        away: each.away === null ? null : scale.x(each.away),
        label: `by ${clock(each.until)}`,
      }));
      return {
        lane,
        y,
        h: sizes.caption + lane.keeping.length * sizes.keeping + sizes.gap,
        gone,
        bars: [],
        water: null,
        keeping,
      };
    }
  }
}

function groupMark(frame: Frame, group: Group, y: number): GroupMark {
  const { sizes, scale, plan } = frame;
  const above = group.hill === null ? 0 : sizes.dial;
  let at = y + sizes.between * 0.6 + above;
  const first = at;
  const lanes = group.lanes.map((lane) => {
    const mark = laneMark(frame, lane, at);
    at += mark.h;
    return mark;
  });
  const peak = first - above * 0.42;
  const hill =
    group.hill === null ? null : hillMark(group.hill, scale, sizes, peak, at, (minute) => clockAt(plan.start, minute));
  return { group, y, h: at + sizes.between * 0.4 - y, lanes, hill };
}

/** How a chart is seen. */
export interface Seen {
  /** Of the chart, px. */
  readonly width: number;
  readonly view: View;
  readonly reading: Reading;
}

/** @param groups of `plan`, from `chartGroups` */
export function chartLayout(plan: Plan, groups: readonly Group[], { width, view, reading }: Seen): ChartMarks {
  const sizes = chartSizes(width, reading);
  const scale = timeScale(view, sizes.gutter, width - (sizes.gutter === 0 ? 0 : 10));
  const frame: Frame = { plan, scale, sizes };
  let y = 0;
  const marks = groups.map((group) => {
    const mark = groupMark(frame, group, y);
    y += mark.h;
    return mark;
  });
  const finish = scale.x(plan.finishMinutes);
  const away = scale.x(plan.allAwayMinutes);
  const { table } = plan.session;
  const tableAt = table === undefined ? null : Math.round(durationMinutes(table.at));
  return {
    width,
    height: y,
    sizes,
    scale,
    ticks: clockTicks(plan.start, scale, sizes.small * 4.4),
    groups: marks,
    finish: { minute: plan.finishMinutes, x: finish, label: `finish ${clockAt(plan.start, plan.finishMinutes)}` },
    tail:
      plan.allAwayMinutes > plan.finishMinutes
        ? { x: finish, w: away - finish, label: `all away ${clockAt(plan.start, plan.allAwayMinutes)}` }
        : null,
    table:
      tableAt === null
        ? null
        : { minute: tableAt, x: scale.x(tableAt), label: `table ${clockAt(plan.start, tableAt)}` },
  };
}
