/** One lane per person: a bar for each hands-on segment, and the times at which they are not there. */
import type { Plan, PlannedSegment, PlannedStep } from '../../../solver/kitchen/plan.ts';
import { durationMinutes } from '../../../solver/kitchen/values.ts';
import { ownerOf, type Owner } from './identity.ts';
import { personName, placeWords } from './kitchen-names.ts';
import { shorterNames } from './label.ts';
import { inRows, type Gone, type Group, type Lane } from './lane-model.ts';
import type { LooseBar } from './place-bars.ts';
import { stepLabels, stepName, stepSentence } from './step-words.ts';

function segmentBar(
  plan: Plan,
  owners: ReadonlyMap<string, Owner>,
  step: PlannedStep,
  segment: PlannedSegment,
): LooseBar {
  const owner = ownerOf(step, owners);
  const name = segment.name;
  const where = step.places
    .filter((place) => place.from < segment.end && place.until > segment.start)
    .map((place) => placeWords(plan, place))
    .join('; ');
  const labels =
    name === undefined
      ? stepLabels(plan, step)
      : [...new Set([`${stepName(plan, step)}: ${name}`, ...shorterNames(name)])];
  return {
    id: `hands/${segment.person ?? ''}/${step.id}/${segment.start}`,
    stepId: step.id,
    owner,
    look: 'on',
    start: segment.start,
    end: segment.end,
    hands: [],
    labels,
    ticks: [],
    limit: null,
    words: stepSentence(plan, step, owner, segment.start, segment.end, [name ?? '', where].filter(Boolean).join(', ')),
  };
}

/** When a person is away between the start and the end of everything. */
function gone(plan: Plan, person: string): readonly Gone[] {
  const there = plan.session.people.find((candidate) => candidate.id === person)?.there;
  if (there === undefined) return [];
  const spans = there
    .map((span) => ({ from: durationMinutes(span.from), until: durationMinutes(span.until) }))
    .sort((a, b) => a.from - b.from);
  const away: Gone[] = [];
  let at = 0;
  for (const span of [...spans, { from: plan.allAwayMinutes, until: plan.allAwayMinutes }]) {
    if (span.from > at) away.push({ from: at, until: span.from, words: `${personName(plan, person)} is away` });
    at = Math.max(at, span.until);
  }
  return away;
}

export function handsGroup(plan: Plan, owners: ReadonlyMap<string, Owner>): Group {
  const lanes = plan.crew.map((person): Lane => {
    const bars = plan.steps.flatMap((step) =>
      step.segments
        .filter((segment) => segment.hands === 'on' && segment.person === person)
        .map((segment) => segmentBar(plan, owners, step, segment)),
    );
    return {
      kind: 'hands',
      id: `hands/${person}`,
      name: personName(plan, person),
      gone: gone(plan, person),
      ...inRows(bars),
    };
  });
  return { id: 'hands', kind: 'hands', name: 'Hands', lanes, hill: null };
}
