/** The reasons of a plan document that does not carry them: it is read back as a solution of its own session's problem. */
import type { WallOffset } from '../checker/clock.ts';
import { verifySolution } from '../engine/verify-solution.ts';
import type { Plan } from '../kitchen/plan.ts';
import { translatePlan } from './replan/translate-plan.ts';
import { whyThisLong, withReasons } from './why-this-long.ts';

/**
 * The plan with its binding chain and the slack of its steps.
 *
 * @param plan a plan that the checker accepts
 * @returns the plan as it is where it has a chain already; null where it cannot be read back: it keeps the rules but not the margins
 *   with which the translation plans
 */
export function withOwnReasons(plan: Plan, wallOffset?: WallOffset): Plan | null {
  if (plan.bindingChain !== undefined) return plan;
  const read = translatePlan(plan, wallOffset);
  if (!read.ok) return null;
  const { translated, planned } = read;
  if (verifySolution(translated.problem, planned).length > 0) return null;
  return withReasons(plan, whyThisLong(translated, planned, plan));
}
