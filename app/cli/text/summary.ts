/** A plan in figures, all times in minutes from the start: what `plan --json` prints. */
import type { Plan, PlannedPlace } from '../../../solver/kitchen/plan.ts';

/** How long the solving took, ms. */
export interface Timing {
  readonly solveMs: number;
  readonly firstPlanMs: number;
}

const placeText = ({ kind, id, oven }: PlannedPlace): string =>
  oven === undefined ? `${kind}:${id}` : `${kind}:${oven}/${id}`;

/** The summary; without the documents that are frozen in the plan. */
export function summaryOf(plan: Plan, timing: Timing) {
  const { session, kitchen, crew, intent, made, status, stopped, tiers } = plan;
  return {
    session: session.id,
    kitchen: kitchen.id,
    crew,
    intent,
    start: plan.start,
    seed: made.seed,
    effort: made.effort,
    status,
    stopped,
    tiers,
    finishMinutes: plan.finishMinutes,
    boundMinutes: plan.boundMinutes,
    allAwayMinutes: plan.allAwayMinutes,
    handsOnMinutes: plan.handsOnMinutes,
    solveMs: Math.round(timing.solveMs),
    firstPlanMs: Math.round(timing.firstPlanMs),
    steps: plan.steps.map((step) => ({
      id: step.id,
      kind: step.kind,
      component: step.component,
      name: step.name,
      batch: step.batch,
      start: step.start,
      end: step.end,
      inFinish: step.inFinish,
      places: step.places.map((place) => ({
        place: placeText(place),
        from: place.from,
        until: place.until,
        amount: place.amount,
        ...(place.how === undefined ? {} : { how: place.how }),
        ...(place.leastC === undefined ? {} : { leastC: place.leastC, mostC: place.mostC }),
        ...(place.afterheat === undefined ? {} : { afterheat: place.afterheat }),
      })),
      hands: step.segments.flatMap(({ hands, person, start, end }) =>
        hands === 'on' ? [{ person: person ?? null, start, end }] : [],
      ),
    })),
    holds: plan.holds.map(({ component, hold, batch, place }) => ({
      component,
      hold,
      batch,
      place: placeText(place),
      from: place.from,
      until: place.until,
    })),
    ovens: plan.ovens.map(({ oven, settings }) => ({ oven, settings })),
    pools: plan.pools.map(({ pool, pan, from, until, boils, level }) => ({ pool, pan, from, until, boils, level })),
    ahead: plan.ahead,
    later: plan.later,
  };
}
