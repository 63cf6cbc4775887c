/** Work that the planner added to the steps of the dishes: washes, and what a pool asks for. */
import type { PlannedPlace, PlannedStep } from '../../kitchen/plan.ts';
import type { Operation } from '../legend.ts';
import type { Reading } from './reading.ts';

/** Where washing is done, and water poured away. */
export const SINK = { kind: 'sink', id: 'sink', amount: 1 } as const;

/** One hands-on segment in the places given. */
export function addedWork(
  reading: Reading,
  operation: Operation,
  step: Pick<PlannedStep, 'id' | 'kind' | 'component' | 'step' | 'name'>,
  places: readonly Omit<PlannedPlace, 'from' | 'until'>[],
): PlannedStep {
  const interval = reading.sure(operation.task);
  return {
    ...step,
    batch: 1,
    alternative: 0,
    ...interval,
    segments: [{ hands: 'on', ...interval, person: reading.person(operation) }],
    places: places.map((place) => ({ ...place, from: interval.start, until: interval.end })),
    inFinish: true,
  };
}
