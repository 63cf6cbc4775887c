/** How sure a plan is, in words and shares for the screen. */
import type { HowSure } from '../../solver/answers/how-sure.ts';
import { wholeId, type Plan } from '../../solver/kitchen/plan.ts';
import { componentOwners, ownerOf, type Owner } from '../chart/layout/identity.ts';
import { clockAt } from '../chart/layout/wall-clock.ts';

export interface ChanceRow {
  readonly minute: number;
  readonly clock: string;
  /** `as planned`, `5 min later`. */
  readonly when: string;
  readonly chance: string;
  /** 0–1. */
  readonly share: number;
}

export interface RiskRow {
  readonly stepId: string;
  readonly owner: Owner | null;
  readonly name: string;
  /** The dish; empty where the name says it. */
  readonly of: string;
  /** `1.4 min`. */
  readonly brings: string;
}

export interface SureWords {
  readonly half: string;
  readonly nine: string;
  /** How much later than planned nine in ten are, as a sentence. */
  readonly give: string;
  readonly rows: readonly ChanceRow[];
  readonly risks: readonly RiskRow[];
  /** Limits that may well break; empty: none is likely to. */
  readonly limits: readonly string[];
}

/** Steps that carry the most are shown; less than this is no risk to speak of, min. */
const MOST_RISKS = 3;
const LEAST_DELAY = 0.05;
/** A limit less likely to break than this is not told. */
const LEAST_CHANCE = 0.05;

/** A share as one would say it: never certain where chance is at play. */
export function chanceWords(share: number): string {
  if (share < 0.01) return share <= 0 ? 'hardly ever' : 'under 1 %';
  if (share > 0.99) return share >= 1 ? 'nearly always' : 'over 99 %';
  return `${Math.round(share * 100)} %`;
}

/** The same after a verb: `49 % of the time`. */
const oftenWords = (share: number): string =>
  share > 0 && share < 1 ? `${chanceWords(share)} of the time` : chanceWords(share);

const laterWords = (minutes: number): string =>
  minutes === 0 ? 'as planned' : minutes > 0 ? `${minutes} min later` : `${-minutes} min earlier`;

export function sureWordsOf(plan: Plan, sure: HowSure): SureWords {
  const owners = componentOwners(plan);
  const stepOf = (id: string) => plan.steps.find((step) => wholeId(step) === id);
  const late = sure.p90 - sure.plannedFinish;
  return {
    half: clockAt(plan.start, sure.p50),
    nine: clockAt(plan.start, sure.p90),
    give:
      late <= 0
        ? 'Nine times in ten it is over by the time planned.'
        : `To be done nine times in ten, allow ${late} min more than planned.`,
    rows: sure.by.map(({ minute, chance }) => ({
      minute,
      clock: clockAt(plan.start, minute),
      when: laterWords(minute - sure.plannedFinish),
      chance: chanceWords(chance),
      share: chance,
    })),
    risks: sure.steps
      .filter(({ delayMinutes }) => delayMinutes >= LEAST_DELAY)
      .slice(0, MOST_RISKS)
      .map(({ step: id, name, delayMinutes }): RiskRow => {
        const step = stepOf(id);
        const dish = plan.components.find((component) => component.id === step?.component)?.name ?? '';
        return {
          stepId: step?.id ?? id,
          owner: step === undefined ? null : ownerOf(step, owners),
          name,
          of: name.includes(dish) ? '' : dish,
          brings: `${delayMinutes.toFixed(1)} min`,
        };
      }),
    limits: sure.limits
      .filter(({ chance }) => chance >= LEAST_CHANCE)
      .slice(0, MOST_RISKS)
      .map(({ step, requirement, chance }) => {
        const name = stepOf(step)?.name ?? step;
        return `${requirement ?? `${name} goes on no longer than it may`}: missed ${oftenWords(chance)}`;
      }),
  };
}
