/** Washes, each with its own hands, sink and minutes. */
import { onceFor } from '../kitchen/once.ts';
import type { Kitchen } from '../kitchen/kitchen.ts';
import type { PlannedStep } from '../kitchen/plan.ts';
import { livedMinutes } from '../kitchen/lived.ts';
import type { SafetyRules } from '../kitchen/safety-rules.ts';
import { minutesUp } from '../kitchen/scaling.ts';
import { handWash } from '../safety/limits.ts';
import type { Reading } from './reading.ts';
import type { Violation } from './violation.ts';

export interface Wash {
  readonly start: number;
  readonly end: number;
}

/** Minutes to wash a thing or a person's hands; null: neither is there. */
function washMinutes(
  kitchen: Kitchen,
  rules: SafetyRules,
  people: readonly { readonly id: string }[],
  id: string,
): number | null {
  const has = (things: readonly { readonly id: string }[]): boolean => things.some((thing) => thing.id === id);
  const { washing } = kitchen;
  const minutes = has(kitchen.boards)
    ? washing.board
    : has(kitchen.pans)
      ? washing.pan
      : has(kitchen.trays)
        ? washing.tray
        : has(kitchen.bowls)
          ? washing.bowl
          : has(kitchen.tools)
            ? washing.tool
            : has(people)
              ? Math.max(washing.hands, (handWash(rules)?.value ?? 0) / 60)
              : null;
  return minutes === null ? null : Math.max(1, minutesUp(minutes));
}

/** What is wrong with a wash, as the end of a sentence; null: it cleans. */
function fault(reading: Reading, wash: PlannedStep): string | null {
  const { kitchen, session } = reading.plan;
  const { component: id, segments, start, end, places } = wash;
  const minutes = livedMinutes(reading.plan.lived, wash.id) ?? washMinutes(kitchen, reading.rules, session.people, id);
  if (minutes === null) return 'is of something that the kitchen does not have';
  const [segment, ...others] = segments;
  if (segment?.hands !== 'on' || others.length > 0 || segment.start !== start || segment.end !== end)
    return 'is not one piece of hands-on work';
  if (end - start < minutes) return `takes ${minutes} min and is planned with ${end - start}`;
  const holds = (wanted: (place: (typeof places)[number]) => boolean): boolean =>
    places.some((place) => wanted(place) && place.from <= start && place.until >= end);
  if (!holds(({ kind }) => kind === 'sink')) return 'has no sink';
  const person = session.people.some((each) => each.id === id);
  if (person) return segment.person === id ? null : 'is done by somebody else’s hands';
  return holds((place) => place.id === id) ? null : 'does not have the thing to be washed';
}

export function checkWashes(reading: Reading): readonly Violation[] {
  return reading.washes.flatMap((wash): readonly Violation[] => {
    const wrong = fault(reading, wash);
    if (wrong === null) return [];
    const message = `The wash of ${wash.component} at ${reading.clock.at(wash.start)} ${wrong}.`;
    return [{ rule: 8, message, steps: [wash.id], minute: wash.start, harm: 'unwashed' }];
  });
}

/** Good washes of a reading; the same are asked for thing by thing and person by person. */
const goodWashes = onceFor((reading: Reading) => reading.washes.filter((wash) => fault(reading, wash) === null));

/** Good washes of a thing; of a person's hands, those of things that the person washes at the sink too. */
export const washesOf = (reading: Reading, id: string): readonly Wash[] =>
  goodWashes(reading).filter((wash) => wash.component === id || wash.segments.some(({ person }) => person === id));
