/** Which of a planned step's places serves which of its needs. */
import type { Way } from '../kitchen/expand.ts';
import type { Plan, PlannedPlace } from '../kitchen/plan.ts';
import type { Need } from '../kitchen/step.ts';
import { mismatches, placeKind } from './suits.ts';

/** A step as a whole: from the start of its first piece to the end of its last, with the places of all. */
export interface Whole {
  readonly start: number;
  readonly end: number;
  readonly places: readonly PlannedPlace[];
  /** One a part of its way; null: it has other segments, or is done in pieces. */
  readonly spans: readonly { readonly start: number; readonly end: number }[] | null;
}

/** When a need must be held: through the segments that it names, or the whole step. */
export function needSpan(whole: Whole, need: Need): { readonly start: number; readonly end: number } {
  const { start, end, spans } = whole;
  if (need.during === undefined || spans === null) return { start, end };
  return { start: spans[need.during.from]?.start ?? start, end: spans[need.during.to]?.end ?? end };
}

interface Pair {
  readonly need: Need;
  readonly place: PlannedPlace;
}

/** The pairing of needs with places of one kind that has the least cost, as many pairs as there can be. */
function cheapest(
  needs: readonly Need[],
  places: readonly PlannedPlace[],
  cost: (pair: Pair) => number,
): readonly Pair[] {
  const [need, ...others] = needs;
  if (need === undefined || places.length === 0) return [];
  const total = (pairs: readonly Pair[]): number => pairs.reduce((sum, pair) => sum + cost(pair), 0);
  const choices = places.map((place) => [
    { need, place },
    ...cheapest(
      others,
      places.filter((each) => each !== place),
      cost,
    ),
  ]);
  if (needs.length > places.length) choices.push([...cheapest(others, places, cost)]);
  return choices.reduce((best, each) =>
    each.length > best.length || (each.length === best.length && total(each) < total(best)) ? each : best,
  );
}

/** Weight of something unsuitable beside a minute too early or too late. */
const UNSUITABLE = 10_000;

/**
 * Pairs the needs of a way with the places of a step, kind by kind, as well as can be.
 *
 * @returns the pairs, the needs without a place, and the places without a need
 */
export function meetNeeds(
  plan: Plan,
  whole: Whole,
  way: Way,
): { readonly met: readonly Pair[]; readonly unmet: readonly Need[]; readonly spare: readonly PlannedPlace[] } {
  const { kitchen, session } = plan;
  const cost = ({ need, place }: Pair): number => {
    const span = needSpan(whole, need);
    return (
      UNSUITABLE * mismatches(kitchen, session, need, place).length +
      Math.abs(place.from - span.start) +
      Math.abs(place.until - span.end)
    );
  };
  const kinds = [...new Set(way.needs.map(placeKind))];
  const met = kinds.flatMap((kind) =>
    cheapest(
      way.needs.filter((need) => placeKind(need) === kind),
      whole.places.filter((place) => place.kind === kind),
      cost,
    ),
  );
  const needs = new Set(met.map(({ need }) => need));
  const places = new Set(met.map(({ place }) => place));
  return {
    met,
    unmet: way.needs.filter((need) => !needs.has(need)),
    spare: whole.places.filter((place) => !places.has(place)),
  };
}
