/** What came of a replan as the cooks are told it: a plan document held to the checker, and what the past has broken. */
import type { WallOffset } from '../../checker/clock.ts';
import { checkPlan } from '../../checker/check-plan.ts';
import type { Violation } from '../../checker/violation.ts';
import type { Worth } from '../../engine/replan/asked.ts';
import type { NoneWithin, ReplanOutcome, WayOn } from '../../engine/replan/outcome.ts';
import type { Solution } from '../../engine/outcome.ts';
import { tierValues } from '../../engine/tier-values.ts';
import type { Lived, Plan } from '../../kitchen/plan.ts';
import { harmCautions } from '../../safety/harm-cautions.ts';
import { STRICTEST_BUILT_IN } from '../../safety/rules-in-force.ts';
import { solutionToPlan } from '../../translate/solution-to-plan.ts';
import type { Met, Translated } from '../../translate/legend.ts';
import type { PlannedUnit } from './history.ts';
import { metByNow, metCautions } from './met.ts';
import { isPast } from './past-faults.ts';
import type { Answered } from './result.ts';
import type { ToldAhead } from './told-ahead.ts';

export interface Told {
  readonly plan: Plan;
  readonly translated: Translated;
  readonly units: readonly PlannedUnit[];
  readonly lived: Lived;
  /** Whether the past may have broken what the plan kept. */
  readonly mayHaveBroken: boolean;
  /** Steps that were told before what they wait for. */
  readonly toldAhead: readonly ToldAhead[];
  readonly seed: number;
  readonly effort: number;
  readonly wallOffset: WallOffset | undefined;
}

/** What the checker has against a plan, parted by whether a plan of the rest could mend it. */
interface Judged {
  readonly faults: readonly Violation[];
  readonly past: readonly Violation[];
  readonly ahead: readonly Violation[];
  /** Harm that lies ahead. */
  readonly harmful: readonly Violation[];
  /** Against the harm of both. */
  readonly cautions: readonly string[];
  readonly met: Met;
}

const NONE_MET: Met = new Map();
const UNJUDGED: Judged = { faults: [], past: [], ahead: [], harmful: [], cautions: [], met: NONE_MET };
const NONE_FOUND = 'no way to go on within every limit was found';

/**
 * @returns the outcome told: with a plan document where one can be gone on by. What the past has broken does not stand against a plan;
 *   harm that would come of going on does
 */
export function answer(outcome: ReplanOutcome, told: Told): Seen {
  switch (outcome.kind) {
    case 'proven':
    case 'bounded':
      return replanned(outcome, told);
    case 'impossible':
    case 'unknown':
      return noneWithin(outcome, told);
  }
}

/** An answer, with what dishes have met of allergens by now. */
export interface Seen {
  readonly answered: Answered;
  readonly met: Met;
}

function replanned(outcome: WayOn, told: Told): Seen {
  const { worth, bound, carriedOn, stopped, work } = outcome;
  const plan = planOf(outcome.solution, outcome, told);
  // Where nothing but lateness was told, limits that the engine knows are all that the past can have broken.
  const isChecked = told.mayHaveBroken || outcome.broken.length > 0;
  const { faults, past, ahead, harmful, cautions, met } = isChecked ? judged(plan, told) : UNJUDGED;
  // What lies ahead can hang on what no plan could foresee: an oven that was emptied before it was hot has less afterheat.
  const isOver = outcome.broken.length === 0 && ahead.length > 0;
  if (harmful.length > 0 || isOver) {
    const answered: Answered = {
      kind: 'unknown',
      reason: harmful.length > 0 ? `${NONE_FOUND} that does no harm` : NONE_FOUND,
      requirements: [],
      leastBad: harmful.length > 0 ? null : plan,
      broken: harmful.length > 0 ? past : faults,
      against: harmful,
      inTheWay: [],
      toldAhead: harmful.length > 0 ? told.toldAhead : [],
      cautions,
      stopped,
      work,
    };
    return { answered, met };
  }
  const answered: Answered = {
    kind: 'replanned',
    plan,
    worth: toldWorth(worth, told.units),
    bound,
    proven: outcome.kind === 'proven',
    carriedOn,
    broken: outcome.broken.length > 0 ? faults : past,
    cautions,
    stopped,
    work,
  };
  return { answered, met };
}

function noneWithin(outcome: NoneWithin, told: Told): Seen {
  const { kind, clash, stopped, work } = outcome;
  const nearest = outcome.nearest === null ? null : planOf(outcome.nearest, outcome, told);
  const { faults, past, ahead, harmful, cautions, met } = nearest === null ? UNJUDGED : judged(nearest, told);
  const isOffered = outcome.leastBad !== null && harmful.length === 0;
  const named = outcome.broken.flatMap((limit) =>
    limit.kind === 'lag' && limit.requirement !== undefined ? [limit.requirement] : [],
  );
  const answered: Answered = {
    kind,
    reason: clash?.reason ?? (outcome.stopped ? 'stopped before a way to go on was found' : NONE_FOUND),
    requirements: [...new Set([...(clash?.requirements ?? []), ...named])],
    leastBad: isOffered ? nearest : null,
    broken: isOffered ? faults : past,
    against: isOffered ? [] : harmful.length > 0 ? harmful : ahead,
    inTheWay: told.units
      .filter(({ tasks }) => tasks.some((task) => outcome.inTheWay.includes(task)))
      .map(({ id }) => id),
    toldAhead: isOffered ? [] : told.toldAhead,
    cautions,
    stopped,
    work,
  };
  return { answered, met };
}

function judged(made: Plan, { plan, lived, wallOffset }: Told): Judged {
  const faults = checkPlan(made, wallOffset === undefined ? {} : { wallOffset });
  const past = faults.filter(isPast(made, lived));
  const ahead = faults.filter((fault) => !past.includes(fault));
  const harmful = ahead.filter(({ harm }) => harm !== undefined);
  const harms = [...past, ...harmful].flatMap(({ harm }) => harm ?? []);
  const met = past.some(({ harm }) => harm === 'allergen') ? metByNow(made, lived, wallOffset) : NONE_MET;
  const cautions = [...metCautions(plan, met), ...harmCautions(harms, plan.rules ?? STRICTEST_BUILT_IN)];
  return { faults, past, ahead, harmful, cautions, met };
}

const toldWorth = ({ finish, changed, total }: Worth, units: readonly PlannedUnit[]) => ({
  finish,
  changed: changed.map((unit) => units[unit]!.id),
  total,
});

function planOf(solution: Solution, outcome: ReplanOutcome, { plan, translated, lived, seed, effort }: Told): Plan {
  const values = tierValues(translated.problem, solution);
  const finish = outcome.kind === 'proven' || outcome.kind === 'bounded' ? outcome.leastFinish : 0;
  const made = solutionToPlan(translated, solution, {
    id: plan.id,
    name: plan.name,
    seed,
    effort,
    kind: 'bounded',
    stopped: outcome.stopped,
    tiers: translated.problem.tiers.map(({ id }, index) => {
      const value = values[index]!;
      const bound = id === 'finish' ? Math.min(value, finish) : 0;
      return { id, value, bound, proven: index === 0 && bound === value };
    }),
  });
  return { ...made, session: plan.session, lived };
}
