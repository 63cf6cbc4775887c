/** The reasons of a plan document that does not carry them: it is read back as a solution of its own session's problem. */
import { verifySolution } from '../engine/verify-solution.ts';
import type { Plan } from '../kitchen/plan.ts';
import { planToSolution, splitsShown } from '../translate/plan-to-solution.ts';
import { sessionToProblem, type SessionInput } from '../translate/session-to-problem.ts';
import { whyThisLong, withReasons } from './why-this-long.ts';

/**
 * The plan with its binding chain and the slack of its steps.
 *
 * @param plan a plan that the checker accepts
 * @returns the plan as it is where it has a chain already; null where it cannot be read back: it was changed on the way, or keeps
 *   the rules but not the margins with which the translation plans
 */
export function withOwnReasons(plan: Plan, wallOffset?: SessionInput['wallOffset']): Plan | null {
  if (plan.bindingChain !== undefined) return plan;
  const crew = { id: 'cooks', name: 'cooks', people: plan.crew };
  const translated = sessionToProblem({
    session: { ...plan.session, crews: [crew] },
    kitchen: plan.kitchen,
    components: plan.components,
    crew: crew.id,
    intent: plan.intent,
    splits: splitsShown(plan),
    openThings: true,
    ...(wallOffset === undefined ? {} : { wallOffset }),
  });
  if (!translated.ok) return null;
  const solution = planToSolution(translated, plan);
  if (verifySolution(translated.problem, solution).length > 0) return null;
  return withReasons(plan, whyThisLong(translated, solution, plan));
}
