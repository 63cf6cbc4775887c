/** The figures of a plan for its strip and for comparing, and how good it is in honest words. */
import type { Plan, TierId } from '../../solver/kitchen/plan.ts';
import { clockAt, minutesWords } from '../chart/layout/wall-clock.ts';
import { kWhWords } from './amount-words.ts';
import { amountWords } from './tier-words.ts';

export interface Figure {
  readonly id: 'begin' | 'finish' | 'minutes' | 'hands-on' | 'all-away' | 'energy' | 'waiting';
  readonly label: string;
  readonly words: string;
  /** For comparing; smaller is better. */
  readonly number: number;
  /** A difference in words. */
  readonly difference: (by: number) => string;
}

const inMinutes = (by: number): string => minutesWords(Math.abs(by));

/** Wh, rounded as kWh are shown, so that a difference is that of the two figures above it. */
const asShown = (wattHours: number): number => Math.round(wattHours / 10) * 10;

function firstHand(plan: Plan): number {
  const starts = plan.steps.flatMap((step) =>
    step.segments.filter((segment) => segment.hands === 'on').map((segment) => segment.start),
  );
  return starts.length === 0 ? 0 : Math.min(...starts);
}

/**
 * The figures of a plan.
 * @param takenWh energy by the plan's account, Wh; until it is known the planner's own coarser figure stands in, marked as about
 */
export function figuresOf(plan: Plan, takenWh?: number): readonly Figure[] {
  const tier = (id: string): number | undefined => plan.tiers.find((each) => each.id === id)?.value;
  // Towards a table time the first hand is wanted as late as can be; otherwise all counts from the session's start.
  const late = plan.tiers[0]?.id === 'latest-start';
  const begin = late ? firstHand(plan) : 0;
  const energy = takenWh ?? tier('energy');
  const about = takenWh === undefined ? 'about ' : '';
  const inKWh = (by: number): string => `${about}${kWhWords(Math.abs(by))}`;
  const waiting = tier('waiting');
  return [
    {
      id: 'finish',
      label: 'finish',
      words: clockAt(plan.start, plan.finishMinutes),
      number: plan.finishMinutes,
      difference: inMinutes,
    },
    ...(late
      ? [
          {
            id: 'begin' as const,
            label: 'first hand',
            words: clockAt(plan.start, begin),
            number: -begin,
            difference: inMinutes,
          },
        ]
      : []),
    {
      id: 'minutes',
      label: late ? 'first hand to finish' : 'start to finish',
      words: minutesWords(plan.finishMinutes - begin),
      number: plan.finishMinutes - begin,
      difference: inMinutes,
    },
    {
      id: 'hands-on',
      label: 'hands-on',
      words: minutesWords(plan.handsOnMinutes),
      number: plan.handsOnMinutes,
      difference: inMinutes,
    },
    {
      id: 'all-away',
      label: 'all away',
      words: clockAt(plan.start, plan.allAwayMinutes),
      number: plan.allAwayMinutes,
      difference: inMinutes,
    },
    ...(energy === undefined
      ? []
      : [{ id: 'energy' as const, label: 'energy', words: inKWh(energy), number: asShown(energy), difference: inKWh }]),
    ...(waiting === undefined
      ? []
      : [
          {
            id: 'waiting' as const,
            label: 'food past its best',
            words: `${waiting} weighted min`,
            number: waiting,
            difference: (by: number): string => `${Math.abs(by)} weighted min`,
          },
        ]),
  ];
}

const BEST: Readonly<Record<TierId, string>> = {
  finish: 'shortest',
  'latest-start': 'latest start',
  'others-finish': 'shortest',
  waiting: 'freshest',
  energy: 'thriftiest',
  calm: 'calmest',
};

/** What is proved of a plan's first tier. */
export function provenWords(plan: Plan): string {
  const [first] = plan.tiers;
  const stopped = plan.stopped ? ' More effort may do better.' : '';
  if (first === undefined) return stopped.trim();
  if (first.proven) return `Proven ${BEST[first.id]}: no valid plan does better.`;
  if (first.bound <= 0) return `A valid plan; how near it is to the best possible is not known yet.${stopped}`;
  const gap = Math.max(0, first.value - first.bound);
  return `Within ${amountWords(first, gap)} of the best possible.${stopped}`;
}

/** `6 min sooner`, `0.4 kWh less`, `the same`. */
export function differenceWords(figure: Figure, other: Figure): string {
  const by = other.number - figure.number;
  if (by === 0) return 'the same';
  if (figure.id === 'begin') return `${figure.difference(by)} ${by < 0 ? 'later' : 'sooner'}`;
  const clock = figure.id === 'finish' || figure.id === 'all-away';
  return `${figure.difference(by)} ${by < 0 ? (clock ? 'sooner' : 'less') : clock ? 'later' : 'more'}`;
}
