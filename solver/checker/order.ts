/** Rule 2: what comes first comes first, and the shortest and longest gaps hold. */
import { called, type Reading, type StepReading } from './reading.ts';
import type { Violation } from './violation.ts';

/** The steps that one must follow: of its own batch where both go batch by batch, else of every batch. */
export function predecessors(
  reading: Reading,
  { instance }: StepReading,
  before: { readonly component: string; readonly step: string },
): readonly StepReading[] {
  return reading.steps.filter(
    ({ instance: other, pieces }) =>
      pieces.length > 0 &&
      other.component.id === before.component &&
      other.step.id === before.step &&
      !(
        other.component.id === instance.component.id &&
        other.batched &&
        instance.batched &&
        other.batch !== instance.batch
      ),
  );
}

export function checkOrder(reading: Reading): readonly Violation[] {
  const { clock } = reading;
  return reading.steps
    .filter(({ pieces }) => pieces.length > 0)
    .flatMap((later) =>
      later.instance.after.flatMap((order) =>
        predecessors(reading, later, order).flatMap((earlier): readonly Violation[] => {
          const gap = later.start - earlier.end;
          const name = called(later.pieces[0]!.planned);
          const before = `${called(earlier.pieces.at(-1)!.planned)} ends at ${clock.at(earlier.end)}`;
          const steps = [earlier.pieces.at(-1)!.planned.id, later.pieces[0]!.planned.id];
          const told = (message: string): readonly Violation[] => [{ rule: 2, message, steps, minute: later.start }];
          if (gap < order.shortest)
            return told(
              order.shortest === 0
                ? `${name} begins at ${clock.at(later.start)}, and what it follows, ${before}.`
                : `${name} must wait ${order.shortest} min after ${before}, and begins at ${clock.at(later.start)}.`,
            );
          if (order.longest !== null && gap > order.longest)
            return told(
              `${name} must begin ${order.longest === 0 ? 'at once' : `within ${order.longest} min`} after ${before}, and begins at ${clock.at(later.start)}.`,
            );
          return [];
        }),
      ),
    );
}
