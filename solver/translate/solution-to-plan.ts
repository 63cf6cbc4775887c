/** A solution of the problem, read back as a plan in the kitchen's own words. */
import type { Solution, TierOutcome } from '../engine/outcome.ts';
import { minutesDown } from '../kitchen/scaling.ts';
import type { Plan, PlanTier, TierId } from '../kitchen/plan.ts';
import type { Translated } from './legend.ts';
import { daysOf } from './read-back/days.ts';
import { holdsOf } from './read-back/holds.ts';
import { ovens } from './read-back/ovens.ts';
import { poolCourse, poolSteps } from './read-back/pools.ts';
import { Reading } from './read-back/reading.ts';
import { plannedSteps } from './read-back/steps.ts';
import { washes } from './read-back/washes.ts';

const UNITS: Readonly<Record<TierId, PlanTier['unit']>> = {
  finish: 'min',
  'latest-start': 'min',
  'others-finish': 'min',
  waiting: 'weighted min',
  energy: 'Wh',
  calm: 'changes',
};

/** What is known of a tier, with what its number counts. */
export const planTier = ({ id, value, bound, proven }: TierOutcome): PlanTier => ({
  id: id as TierId,
  unit: UNITS[id as TierId],
  value,
  bound,
  proven,
});

export interface PlanFrame {
  readonly id: string;
  readonly name: string;
  readonly seed: number;
  readonly effort: number;
  readonly kind: 'proven' | 'bounded';
  readonly stopped: boolean;
  readonly tiers: readonly TierOutcome[];
}

/** Reads a solution back. The solution must be one of the problem's own. */
export function solutionToPlan(translated: Translated, solution: Solution, frame: PlanFrame): Plan {
  const { translation: t } = translated;
  const reading = new Reading(translated, solution);
  const own = [
    ...t.steps.flatMap((legend) => plannedSteps(reading, legend)),
    ...washes(t, reading),
    ...t.pools.flatMap((pool) => poolSteps(reading, pool)),
  ];
  const allAwayMinutes = Math.max(0, ...own.map((step) => step.end));
  const { programmes, preheats } = ovens(t, reading, own, allAwayMinutes);
  const steps = [...own, ...preheats].sort((a, b) => a.start - b.start || a.end - b.end || (a.id < b.id ? -1 : 1));
  const handsOn = steps.flatMap((step) =>
    step.segments.filter((segment) => segment.hands === 'on').map((segment) => ({ step, segment })),
  );
  const finishMinutes = Math.max(0, ...handsOn.filter(({ step }) => step.inFinish).map(({ segment }) => segment.end));
  const { ahead, later } = daysOf(t, reading);
  const used = new Set(t.session.dishes.map((dish) => dish.component));
  return {
    kind: 'plan',
    version: 1,
    id: frame.id,
    name: frame.name,
    start: t.session.start,
    session: t.session,
    kitchen: t.kitchen,
    components: t.components.filter((component) => used.has(component.id)),
    crew: t.crew.map((person) => person.id),
    rules: t.rules,
    intent: t.intent,
    made: { seed: frame.seed, effort: frame.effort },
    status: frame.kind,
    stopped: frame.stopped,
    tiers: frame.tiers.map(planTier),
    finishMinutes,
    boundMinutes: minutesDown(
      frame.tiers.find((tier) => tier.id === 'finish' || tier.id === 'latest-start')?.bound ?? 0,
    ),
    allAwayMinutes,
    handsOnMinutes: handsOn.reduce((sum, { segment }) => sum + segment.end - segment.start, 0),
    steps,
    holds: [...holdsOf(t, reading)],
    ovens: [...programmes],
    pools: t.pools.map((pool) => poolCourse(t, reading, pool, steps)),
    ahead: [...ahead],
    later: [...later],
  };
}
