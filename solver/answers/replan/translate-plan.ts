/** A plan document as the problem that it solves, and the solution that it is. */
import type { WallOffset } from '../../checker/clock.ts';
import type { Solution } from '../../engine/outcome.ts';
import type { InputFault } from '../../kitchen/fault.ts';
import { asLived } from '../../kitchen/lived.ts';
import { onceFor } from '../../kitchen/once.ts';
import type { Lived, Plan } from '../../kitchen/plan.ts';
import type { Session } from '../../kitchen/session.ts';
import type { Met, Translated } from '../../translate/legend.ts';
import { planToSolution, splitsShown } from '../../translate/plan-to-solution.ts';
import { STRICTEST_BUILT_IN } from '../../safety/rules-in-force.ts';
import { sessionToProblem } from '../../translate/session-to-problem.ts';
import { washesIn } from '../../translate/washes.ts';
import { verifySolution } from '../../engine/verify-solution.ts';

export type TranslatedPlan =
  | { readonly ok: true; readonly translated: Translated; readonly planned: Solution }
  | { readonly ok: false; readonly faults: readonly InputFault[] };

/** The crew that cooks, whatever the session calls it. */
const CREW = 'cooks';
const sessionCooked = onceFor(({ session, crew }: Plan): Session => ({
  ...session,
  crews: [{ id: CREW, name: CREW, people: crew }],
}));

/**
 * Translates a plan's own session with its own splits, every choice of things open.
 *
 * @param lived what has been told; absent: what the plan carries
 * @param followed the plan to be read as the solution, where that is another than the one translated
 * @param met what its dishes have met and carry from now on
 * @returns refused where the plan breaks a rule and nothing has been told that could be why
 */
export function translatePlan(
  plan: Plan,
  wallOffset: WallOffset | undefined,
  lived: Lived | undefined = plan.lived,
  followed: Plan = plan,
  met?: Met,
): TranslatedPlan {
  const translated = sessionToProblem({
    session: sessionCooked(plan),
    kitchen: plan.kitchen,
    components: plan.components,
    crew: CREW,
    rules: plan.rules ?? STRICTEST_BUILT_IN,
    intent: plan.intent,
    splits: splitsShown(plan),
    openThings: true,
    washed: washesIn(followed),
    ...(met === undefined ? {} : { met }),
    adjust: (instance) => asLived(instance, lived),
    ...(wallOffset === undefined ? {} : { wallOffset }),
  });
  if (!translated.ok) return translated;
  const planned = planToSolution(translated, followed);
  const fault = lived === undefined ? verifySolution(translated.problem, planned)[0] : undefined;
  if (fault === undefined) return { ok: true, translated, planned };
  return {
    ok: false,
    faults: [
      {
        document: `plan ${plan.id}`,
        path: 'steps',
        found: fault,
        wanted: 'a plan that keeps the rules',
        mend: 'see what `afterheat check` says of it',
      },
    ],
  };
}
