/** From a session to a plan: translated, solved, and read back. The caller checks it before it is shown. */
import { placeSlack } from '../answers/place-slack.ts';
import { whyThisLong, withReasons } from '../answers/why-this-long.ts';
import type { SolveOptions, TraceRow } from '../engine/outcome.ts';
import { solveTogether } from '../engine/together.ts';
import type { InputFault } from '../kitchen/fault.ts';
import type { Plan } from '../kitchen/plan.ts';
import { sessionToProblem, type SessionInput } from './session-to-problem.ts';
import { solutionToPlan } from './solution-to-plan.ts';
import { tightened } from './tighten.ts';
import { tierValues } from '../engine/tier-values.ts';

export interface PlanSessionInput extends SessionInput {
  /** 32-bit seed of all chance. */
  readonly seed: number;
  /** Most work units to spend. */
  readonly effort: number;
  readonly shouldStop?: () => boolean;
  readonly onProgress?: (row: TraceRow) => void;
  readonly planId?: string;
  readonly planName?: string;
}

export type PlanSessionResult =
  | { readonly kind: 'planned'; readonly plan: Plan; readonly work: number }
  | { readonly kind: 'impossible'; readonly reason: string; readonly requirements: readonly string[] }
  | { readonly kind: 'unknown'; readonly reason: string }
  | { readonly kind: 'refused'; readonly faults: readonly InputFault[] };

/**
 * Plans a session.
 *
 * @returns a plan with what is proved of it; `impossible` with the reason, only after proof; `unknown` when nothing was found in
 *   the effort given; `refused` with every fault of the documents
 */
export function planSession(input: PlanSessionInput): PlanSessionResult {
  const translated = sessionToProblem(input);
  if (!translated.ok) return { kind: 'refused', faults: translated.faults };
  const { problem } = translated;
  const options: SolveOptions = {
    seed: input.seed,
    effort: input.effort,
    ...(input.shouldStop === undefined ? {} : { shouldStop: input.shouldStop }),
    ...(input.onProgress === undefined ? {} : { onProgress: (row) => input.onProgress!(row) }),
  };
  const outcome = solveTogether(problem, options);
  switch (outcome.kind) {
    case 'impossible':
      return { kind: 'impossible', reason: outcome.clash.reason, requirements: outcome.clash.requirements };
    case 'unknown':
      return {
        kind: 'unknown',
        reason: outcome.stopped ? 'stopped before a plan was found' : 'no plan was found in the effort given',
      };
    case 'proven':
    case 'bounded': {
      const solution = placeSlack(translated, tightened(translated, outcome.solution));
      const values = tierValues(problem, solution);
      const tiers = outcome.tiers.map((tier, index) => ({
        ...tier,
        value: values[index]!,
        // A better value of a tier leaves the bounds of those after it true, for it only leaves fewer plans.
        proven: outcome.tiers.slice(0, index + 1).every(({ bound }, above) => values[above] === bound),
      }));
      const plan = solutionToPlan(translated, solution, {
        id: input.planId ?? `${input.session.id}-plan`,
        name: input.planName ?? input.session.name,
        seed: input.seed,
        effort: input.effort,
        kind: tiers.every(({ proven }) => proven) ? 'proven' : 'bounded',
        stopped: outcome.stopped,
        tiers,
      });
      return { kind: 'planned', plan: withReasons(plan, whyThisLong(translated, solution, plan)), work: outcome.work };
    }
  }
}
