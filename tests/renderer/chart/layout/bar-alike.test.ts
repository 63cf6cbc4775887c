import { expect, test } from 'vitest';
import { barAlike } from '../../../../renderer/chart/layout/bar-alike.ts';
import { allBars, chartGroups } from '../../../../renderer/chart/layout/chart-groups.ts';
import type { Bar } from '../../../../renderer/chart/layout/lane-model.ts';
import { supper } from '../../../support/supper.ts';

const byId = (bars: readonly Bar[]) => new Map(bars.map((bar) => [bar.id, bar]));
const before = allBars(chartGroups(supper, true));

test('a bar stands for itself in the same plan', () => {
  for (const bar of before) expect(barAlike(bar, before, byId(before))?.id).toBe(bar.id);
});

test('a bar of a plan that starts later stands for the same segment of the same step in the same place', () => {
  // Only the minute at the end of an id tells the two apart.
  const after = before.map((bar) => ({
    ...bar,
    id: bar.id.replace(/\/(\d+)$/, (_, minute) => `/${Number(minute) + 1000}`),
  }));
  const known = byId(after);
  before.forEach((bar, index) => expect(barAlike(bar, before, known)?.id).toBe(after[index]!.id));
});

test('a step that went to another place is found there; one that is gone is not found', () => {
  const bar = before.find(({ id }) => id.startsWith('hands/'))!;
  const elsewhere = { ...bar, id: bar.id.replace(/^hands\/[^/]*/, 'hands/somebody') };
  expect(barAlike(bar, before, byId([elsewhere]))?.id).toBe(elsewhere.id);
  expect(barAlike(bar, before, byId(before.filter(({ stepId }) => stepId !== bar.stepId)))).toBeNull();
});
