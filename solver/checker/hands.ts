/** Rule 3, hands: at no moment more work than people, each in their time there and at work that they may do. */
import type { PlannedSegment, PlannedStep } from '../kitchen/plan.ts';
import { minutesDown, minutesUp } from '../kitchen/scaling.ts';
import { durationMinutes } from '../kitchen/values.ts';
import { called, type Reading } from './reading.ts';
import { partsOf } from './segment-parts.ts';
import type { Violation } from './violation.ts';

const rule = 3 as const;

interface Work {
  readonly planned: PlannedStep;
  readonly segment: PlannedSegment;
}

function checkPeople(reading: Reading, work: readonly Work[]): readonly Violation[] {
  const { plan, clock } = reading;
  return work.flatMap(({ planned, segment }): readonly Violation[] => {
    const told = (message: string): readonly Violation[] => [
      { rule, message, steps: [planned.id], minute: segment.start },
    ];
    const span = clock.span(segment.start, segment.end);
    const person = plan.session.people.find(({ id }) => id === segment.person);
    if (segment.person === undefined) return told(`Nobody is named for ${called(planned)} at ${span}.`);
    if (person === undefined || !plan.crew.includes(person.id))
      return told(`${segment.person}, who is to do ${called(planned)} at ${span}, does not cook in this session.`);
    const there = person.there?.some(
      ({ from, until }) =>
        minutesUp(durationMinutes(from)) <= segment.start && segment.end <= minutesDown(durationMinutes(until)),
    );
    if (there === false) return told(`${person.name} is not there all through ${called(planned)} at ${span}.`);
    return [];
  });
}

function checkDoubled(reading: Reading, work: readonly Work[]): readonly Violation[] {
  const { plan, clock } = reading;
  return plan.session.people.flatMap((person) => {
    const own = work
      .filter(({ segment }) => segment.person === person.id && segment.end > segment.start)
      .sort((a, b) => a.segment.start - b.segment.start);
    let busy: Work | undefined;
    return own.flatMap((each): readonly Violation[] => {
      const before = busy;
      if (busy === undefined || each.segment.end > busy.segment.end) busy = each;
      if (before === undefined || each.segment.start >= before.segment.end) return [];
      return [
        {
          rule,
          message: `${person.name} is at ${called(before.planned)} and at ${called(each.planned)} at once, at ${clock.at(each.segment.start)}.`,
          steps: [before.planned.id, each.planned.id],
          minute: each.segment.start,
        },
      ];
    });
  });
}

function checkAllowed(reading: Reading): readonly Violation[] {
  const { plan, clock } = reading;
  return reading.steps
    .flatMap(({ pieces }) => pieces)
    .flatMap((piece) =>
      piece.planned.segments
        .filter(({ hands }) => hands === 'on')
        .flatMap((segment): readonly Violation[] => {
          const person = plan.session.people.find(({ id }) => id === segment.person);
          const wanted = partsOf(piece, segment).map(({ who }) => who);
          if (person === undefined || wanted.length === 0) return [];
          if (wanted.some((who) => who === null || person.can.includes(who))) return [];
          return [
            {
              rule,
              message: `${person.name} may not do ${called(piece.planned)} at ${clock.at(segment.start)}: it is for ${wanted[0]}.`,
              steps: [piece.planned.id],
              minute: segment.start,
            },
          ];
        }),
    );
}

export function checkHands(reading: Reading): readonly Violation[] {
  const work = reading.plan.steps.flatMap((planned) =>
    planned.segments.filter(({ hands }) => hands === 'on').map((segment) => ({ planned, segment })),
  );
  return [...checkPeople(reading, work), ...checkDoubled(reading, work), ...checkAllowed(reading)];
}
