/** Work on the days before and after the session. */
import type { PlannedDay } from '../../kitchen/plan.ts';
import { minutesUp } from '../../kitchen/scaling.ts';
import { durationMinutes } from '../../kitchen/values.ts';
import type { Translation } from '../legend.ts';
import { legendsOf } from '../orders.ts';
import type { Reading } from './reading.ts';

export function daysOf(
  t: Translation,
  reading: Reading,
): { readonly ahead: readonly PlannedDay[]; readonly later: readonly PlannedDay[] } {
  const components = [...new Set(t.steps.map((step) => step.dish.component))];
  const ahead = components.flatMap((component) =>
    (component.ahead ?? []).map((step): PlannedDay => {
      const starts = legendsOf(t, component.id, step.until)
        .filter((legend) => reading.holds(legend.when))
        .map((legend) => reading.sure(legend.start.task)[legend.start.at as 'start']);
      return {
        component: component.id,
        step: step.id,
        name: step.name,
        start: t.wallOffset(-step.daysBefore, step.at),
        until: Math.min(...starts),
        handsOnMinutes: minutesUp(durationMinutes(step.hands)),
      };
    }),
  );
  const later = components.flatMap((component) =>
    (component.later ?? []).map((step): PlannedDay => {
      const start = t.wallOffset(step.daysAfter, step.at);
      const handsOnMinutes = minutesUp(durationMinutes(step.hands));
      return {
        component: component.id,
        step: step.id,
        name: step.name,
        start,
        until: start + handsOnMinutes,
        handsOnMinutes,
      };
    }),
  );
  const byStart = (a: PlannedDay, b: PlannedDay): number => a.start - b.start || a.step.localeCompare(b.step);
  return { ahead: ahead.sort(byStart), later: later.sort(byStart) };
}
