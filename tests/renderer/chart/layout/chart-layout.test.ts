import { describe, expect, test } from 'vitest';
import type { BarMark } from '../../../../renderer/chart/layout/bar-marks.ts';
import { chartGroups } from '../../../../renderer/chart/layout/chart-groups.ts';
import { chartLayout, wholeView, type ChartMarks } from '../../../../renderer/chart/layout/chart-layout.ts';
import type { Reading } from '../../../../renderer/chart/layout/sizes.ts';
import { textWidth } from '../../../../renderer/chart/layout/text-width.ts';
import type { View } from '../../../../renderer/chart/layout/time-scale.ts';
import { supper } from '../../../support/supper.ts';

const groups = chartGroups(supper, true);
const layout = (width: number, view: View = wholeView(supper), reading: Reading = 'near'): ChartMarks =>
  chartLayout(supper, groups, { width, view, reading });
const barsOf = (marks: ChartMarks): readonly BarMark[] =>
  marks.groups.flatMap((group) => group.lanes.flatMap((lane) => lane.bars));

const SIZES = [
  { name: 'a phone', width: 320, reading: 'near' },
  { name: 'a tablet across the kitchen', width: 1180, reading: 'far' },
  { name: 'a desktop', width: 1440, reading: 'near' },
  { name: 'a projector', width: 3840, reading: 'far' },
] as const;

describe.each(SIZES)('the chart on $name', ({ width, reading }) => {
  const view = width < 700 ? { from: 0, to: 50 } : wholeView(supper);
  const marks = layout(width, view, reading);

  test('draws every minute equally long', () => {
    for (const { bar, box } of barsOf(marks)) {
      expect(box.x).toBeCloseTo(marks.scale.x(bar.start), 6);
      const whole = (bar.end - bar.start) * marks.scale.perMinute;
      expect(box.w).toBeCloseTo(Math.max(2, whole - 1), 6);
    }
  });

  test('lets no two bars of a lane overlap', () => {
    for (const lane of marks.groups.flatMap((group) => group.lanes)) {
      for (const a of lane.bars) {
        for (const b of lane.bars) {
          if (a === b || a.box.y + a.box.h <= b.box.y || b.box.y + b.box.h <= a.box.y) continue;
          expect(a.bar.end <= b.bar.start || b.bar.end <= a.bar.start).toBe(true);
        }
      }
    }
  });

  test('stacks groups and lanes without overlap', () => {
    const edges = marks.groups.flatMap((group) => [group.y, ...group.lanes.map((lane) => lane.y), group.y + group.h]);
    expect([...edges].sort((a, b) => a - b)).toEqual(edges);
    expect(marks.height).toBe(marks.groups.at(-1)!.y + marks.groups.at(-1)!.h);
  });

  test('keeps labels within their bars, or beside them up to the next', () => {
    for (const lane of marks.groups.flatMap((group) => group.lanes)) {
      for (const { box, text, bar } of lane.bars) {
        if (text === null) continue;
        for (const line of text.lines) {
          const long = textWidth(line.text, text.size, text.weight);
          if (text.upright) {
            expect(line.y - long).toBeGreaterThanOrEqual(box.y);
            expect(line.x).toBeLessThanOrEqual(box.x + box.w + 1);
          } else if (line.x < box.x + box.w) expect(line.x + long).toBeLessThanOrEqual(box.x + box.w + 0.01);
          else {
            const next = Math.min(
              ...lane.bars.filter((each) => each.bar.row === bar.row && each.box.x > box.x).map((each) => each.box.x),
            );
            expect(line.x + long).toBeLessThanOrEqual(Math.min(next, marks.scale.right));
          }
        }
      }
    }
  });

  test('makes labels of whole words of the step', () => {
    for (const { bar, text } of barsOf(marks)) {
      if (text === null) continue;
      expect(bar.labels).toContain(text.lines.map((line) => line.text).join(' '));
    }
  });

  test('has no mark that is not a number', () => {
    expect(JSON.stringify(marks)).not.toMatch(/NaN/);
  });
});

describe('zoomed in', () => {
  test('a bar that began before the view has its label where it is seen', () => {
    const marks = layout(1440, { from: 20, to: 40 });
    const roast = barsOf(marks).find((mark) => mark.bar.id.startsWith('rack/top/chicken'))!;
    expect(roast.box.x).toBeLessThan(marks.scale.left);
    expect(roast.letter!.x).toBeGreaterThanOrEqual(marks.scale.left);
    expect(roast.text!.lines.map((line) => line.text)).toEqual(['roast the chicken · 30 min at 180–200°']);
  });

  test('ticks stand on round clock times and say them', () => {
    const labels = (view: View) =>
      layout(1440, view)
        .ticks.flatMap((tick) => tick.label ?? [])
        .slice(0, 3);
    expect(labels({ from: 0, to: 10 })).toEqual(['10:00', '10:01', '10:02']);
    expect(labels({ from: 3, to: 63 })).toEqual(['10:05', '10:10', '10:15']);
    expect(labels({ from: 0, to: 600 })).toEqual(['10:00', '10:30', '11:00']);
  });
});

describe('the beginning', () => {
  test('is the start, or shortly before the work where that is much later', () => {
    expect(wholeView(supper).from).toBeCloseTo(-0.385);
    const late = { ...supper, steps: supper.steps.filter((step) => step.start >= 36), pools: [] };
    expect(wholeView(late).from).toBeGreaterThan(32);
  });
});

describe('the end', () => {
  test('is marked by the finish, and the tail runs past it', () => {
    const marks = layout(1440);
    expect(marks.finish).toMatchObject({ minute: 66, label: 'finish 11:06' });
    expect(marks.tail!.label).toBe('all away 11:17');
    expect(marks.tail!.w).toBeCloseTo(11 * marks.scale.perMinute, 6);
    expect(marks.table).toBeNull();
  });

  test('a table time has its own line', () => {
    const plan = { ...supper, session: { ...supper.session, table: { at: 'PT45M', dishes: ['chicken'] } } };
    expect(chartLayout(plan, groups, { width: 1440, view: wholeView(plan), reading: 'near' }).table).toMatchObject({
      minute: 45,
      label: 'table 10:45',
    });
  });
});
