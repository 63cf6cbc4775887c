/** Where what is done waits until its boxes are filled. */
import type { PlannedHold } from '../../kitchen/plan.ts';
import type { Translation } from '../legend.ts';
import type { Reading } from './reading.ts';

export function holdsOf(t: Translation, reading: Reading): readonly PlannedHold[] {
  return t.holds.flatMap((legend): PlannedHold[] => {
    const interval = reading.at(legend.task);
    if (interval === null) return [];
    const option = legend.options[reading.option(legend.choice)]!;
    return [
      {
        component: legend.instance.component.id,
        hold: legend.instance.hold.id,
        batch: legend.instance.batch,
        place: { ...option.place, from: interval.start, until: interval.end },
      },
    ];
  });
}
