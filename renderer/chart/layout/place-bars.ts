/** Bars of things: a place is held from the hand that fills it to the hand that clears it. */
import type { PlaceKind, Plan, PlannedPlace, PlannedStep } from '../../../solver/kitchen/plan.ts';
import { ownerOf, type Owner } from './identity.ts';
import { placeWords, windowWords } from './kitchen-names.ts';
import type { Bar, HandsOn } from './lane-model.ts';
import { piecesOf, segmentLimit, stepLabels, stepSentence } from './step-words.ts';
import { minutesWords } from './wall-clock.ts';

export type LooseBar = Omit<Bar, 'row'>;

/** Hands-on minutes of a step, all pieces, within [from, until), joined where they touch. */
export function handsWithin(plan: Plan, step: PlannedStep, from: number, until: number): readonly HandsOn[] {
  const spans = piecesOf(plan, step)
    .flatMap((piece) => piece.segments)
    .filter((segment) => segment.hands === 'on' && segment.end > from && segment.start < until)
    .map((segment) => ({
      start: Math.max(from, segment.start),
      end: Math.min(until, segment.end),
      check: segment.check === true,
    }))
    .sort((a, b) => a.start - b.start);
  const joined: HandsOn[] = [];
  for (const span of spans) {
    const last = joined.at(-1);
    if (last !== undefined && last.end === span.start && last.check === span.check) {
      joined[joined.length - 1] = { ...last, end: span.end };
    } else joined.push(span);
  }
  return joined;
}

/** The longest hands-off stretch within a place, and the last minute at which it may end. */
function waiting(
  plan: Plan,
  step: PlannedStep,
  from: number,
  until: number,
): { minutes: number; limit: number | null } {
  const off = step.segments
    .filter((segment) => segment.hands === 'off' && segment.start >= from && segment.end <= until)
    .sort((a, b) => b.end - b.start - (a.end - a.start))[0];
  if (off === undefined) return { minutes: 0, limit: null };
  return { minutes: off.end - off.start, limit: segmentLimit(plan, step, off) };
}

export function placeBar(
  plan: Plan,
  owners: ReadonlyMap<string, Owner>,
  step: PlannedStep,
  place: PlannedPlace,
): LooseBar {
  const owner = ownerOf(step, owners);
  const { from, until } = place;
  const hands = handsWithin(plan, step, from, until);
  const { minutes, limit } = waiting(plan, step, from, until);
  const heat = place.kind === 'rack' ? windowWords(place) : '';
  const tails = [
    ...(minutes > 0 && heat !== '' ? [`${minutesWords(minutes)} at ${heat}`] : []),
    ...(minutes > 0 ? [minutesWords(minutes)] : []),
  ];
  const whole = hands.length === 1 && hands[0]!.start === from && hands[0]!.end === until;
  const limitWords = limit !== null && limit > until ? `may wait ${minutesWords(limit - until)} longer` : '';
  return {
    id: `${place.kind}/${place.id}/${step.id}/${from}`,
    stepId: step.id,
    owner,
    look: whole ? 'on' : 'off',
    start: from,
    end: until,
    hands: whole ? [] : hands,
    labels: stepLabels(plan, step, tails),
    ticks: [],
    limit: limit !== null && limit > until ? limit : null,
    words: stepSentence(
      plan,
      step,
      owner,
      from,
      until,
      [placeWords(plan, place), limitWords].filter(Boolean).join(', '),
    ),
  };
}

/** Bars of all steps that take places of a kind; `keep` narrows them to one thing. */
export function placeBars(
  plan: Plan,
  owners: ReadonlyMap<string, Owner>,
  kind: PlaceKind,
  keep: (place: PlannedPlace) => boolean,
): readonly LooseBar[] {
  return plan.steps.flatMap((step) =>
    step.places
      .filter((place) => place.kind === kind && keep(place))
      .map((place) => placeBar(plan, owners, step, place)),
  );
}
