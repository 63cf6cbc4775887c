/**
 * Steps as they turned out. A component says how long its work takes; once a cook has said how long it took, that is what counts,
 * for the plan of the rest and for the checker alike.
 */
import type { OffPart, Part, StepInstance, Way } from './expand.ts';
import type { Lived } from './plan.ts';

/** A hands-off part that took this long keeps the leeway of its component: so long at least, and no more over it than before. */
function offAsLived(part: OffPart, minutes: number): OffPart {
  const longest = minutes + part.longest - part.shortest;
  return {
    ...part,
    shortest: minutes,
    longest,
    boilMl: 0,
    recovers: false,
    // What was cut short has no looks that would come after its end.
    checks: part.checks.filter((check) => check.latest + check.minutes <= minutes),
  };
}

const partAsLived = (part: Part, minutes: number | null | undefined): Part =>
  minutes === null || minutes === undefined
    ? part
    : part.hands === 'on'
      ? { ...part, minutes }
      : offAsLived(part, minutes);

const LEFT_OUT: Omit<Way, 'name'> = {
  parts: [{ hands: 'off', name: null, shortest: 0, longest: 0, boilMl: 0, recovers: false, checks: [] }],
  needs: [],
};

/**
 * A step of a batch as it turned out.
 *
 * @param instance the step as its component has it
 * @param lived what has been told; absent: nothing
 * @returns the step with the minutes told; one left out has a single hands-off part of no minutes and needs nothing
 */
export function asLived(instance: StepInstance, lived: Lived | undefined): StepInstance {
  const told = lived?.steps.find(({ step }) => step === instance.id);
  if (told === undefined) return instance;
  if (told.skipped === true)
    return { ...instance, ways: instance.ways.map(({ name }) => ({ name, ...LEFT_OUT })), pieces: null };
  return {
    ...instance,
    ways: instance.ways.map((way) => ({
      ...way,
      parts: way.parts.map((part, index) => partAsLived(part, told.minutes[index])),
    })),
  };
}

/** Minutes that work of one segment took, of a wash or on a pool; undefined: as the kitchen says. */
export const livedMinutes = (lived: Lived | undefined, step: string): number | undefined =>
  lived?.steps.find((each) => each.step === step)?.minutes[0] ?? undefined;
