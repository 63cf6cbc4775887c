/** Of what the checker has against a plan, what had happened by now: no plan of the rest can mend it, and it is none's fault. */
import type { Violation } from '../../checker/violation.ts';
import { wholeId, type Lived, type Plan } from '../../kitchen/plan.ts';

/**
 * @param plan the whole plan, past and rest, that the violations are of
 * @param lived what was told, and by when
 * @returns a function: whether a violation is of the past, or of cooking that the cooks told to be over sooner than is safe
 */
export function isPast(plan: Plan, lived: Lived): (violation: Pick<Violation, 'rule' | 'steps' | 'minute'>) => boolean {
  const { now } = lived;
  const byId = new Map(plan.steps.map((step) => [step.id, step]));
  const told = new Set(lived.steps.flatMap(({ step, skipped }) => (skipped === true ? [] : [step])));
  return ({ rule, steps, minute }) => {
    if (minute === undefined) return false;
    // What names no step, as an oven that is on while it is not there.
    if (steps.length === 0) return minute < now;
    const named = steps.flatMap((id) => byId.get(id) ?? []);
    // A step told to be over at this very minute is past; one that begins at it is not.
    if (named.some(({ start, end }) => start >= now && end > now)) return false;
    return minute <= now || (rule === 9 && named.some((step) => told.has(wholeId(step)) && minute <= step.end));
  };
}

/** Whether any of the past may have gone otherwise than it was planned, so that it may have broken what the plan kept. */
export const mayHaveBroken = (plan: Plan, events: readonly { readonly kind: string }[], isCut: boolean): boolean =>
  plan.lived !== undefined || isCut || events.some(({ kind }) => kind !== 'late');
