/** What the checker has against a plan, a sentence a violation. */
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { wallOffsetOf } from '../../solving/wall-offset.ts';

/** @returns `Rule 4: …` for each violation; empty: the plan is valid */
export const violationsOf = (plan: Plan): readonly string[] =>
  checkPlan(plan, { wallOffset: wallOffsetOf(plan.session.start) }).map(
    ({ rule, message }) => `Rule ${rule}: ${message}`,
  );
