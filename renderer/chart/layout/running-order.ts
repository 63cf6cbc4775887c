/** The plan as a list in order of time: what the chart shows, for those who read rather than look. */
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { componentOwners, ownerOf, type Owner } from './identity.ts';
import { personName, placeWords } from './kitchen-names.ts';
import { stepName } from './step-words.ts';
import { clockAt, minutesWords } from './wall-clock.ts';

export interface OrderLine {
  readonly minute: number;
  readonly end: number;
  readonly clock: string;
  readonly stepId: string | null;
  readonly owner: Owner | null;
  readonly words: string;
  readonly who: string;
  readonly length: string;
  readonly where: string;
  /** `mark`: a turn of the dial, the boil, the finish. */
  readonly kind: 'on' | 'off' | 'mark';
}

function stepLines(plan: Plan): readonly OrderLine[] {
  const owners = componentOwners(plan);
  return plan.steps.flatMap((step) =>
    step.segments.map((segment, index): OrderLine => {
      const name = stepName(plan, step);
      return {
        minute: segment.start,
        end: segment.end,
        clock: clockAt(plan.start, segment.start),
        stepId: step.id,
        owner: ownerOf(step, owners),
        words: segment.name === undefined ? name : `${name}: ${segment.name}`,
        who: segment.person === undefined ? '' : personName(plan, segment.person),
        length: minutesWords(segment.end - segment.start),
        where:
          index === 0
            ? step.places.map((place) => placeWords(plan, place)).join('; ')
            : step.places
                .filter((place) => place.from >= segment.start && place.from < segment.end && place.from > step.start)
                .map((place) => placeWords(plan, place))
                .join('; '),
        kind: segment.hands,
      };
    }),
  );
}

function markLines(plan: Plan): readonly OrderLine[] {
  const mark = (minute: number, words: string): OrderLine => ({
    minute,
    end: minute,
    clock: clockAt(plan.start, minute),
    stepId: null,
    owner: null,
    words,
    who: '',
    length: '',
    where: '',
    kind: 'mark',
  });
  const ovenName = (id: string): string => plan.kitchen.ovens.find((oven) => oven.id === id)?.name ?? id;
  const poolName = (id: string): string => plan.session.pools?.find((pool) => pool.id === id)?.name ?? id;
  return [
    ...plan.ovens.flatMap((programme) =>
      programme.settings.map((setting) =>
        mark(
          setting.minute,
          setting.celsius === null
            ? `${ovenName(programme.oven)} off`
            : `${ovenName(programme.oven)} to ${setting.celsius} °C, ${setting.function}`,
        ),
      ),
    ),
    ...plan.pools.flatMap((course) => course.boils.map((boil) => mark(boil.boilsAt, `${poolName(course.pool)} boils`))),
    mark(plan.finishMinutes, 'finish'),
    ...(plan.allAwayMinutes > plan.finishMinutes ? [mark(plan.allAwayMinutes, 'all away')] : []),
  ];
}

/** Every segment of every step, every turn of a dial, every boil, the finish: by time. */
export function runningOrder(plan: Plan): readonly OrderLine[] {
  const rank = { mark: 0, on: 1, off: 2 } as const;
  return [...stepLines(plan), ...markLines(plan)].sort((a, b) => a.minute - b.minute || rank[a.kind] - rank[b.kind]);
}
