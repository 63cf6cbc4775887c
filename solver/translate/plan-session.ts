/** From a session to a plan: translated, solved, and read back. The caller checks it before it is shown. */
import { placeSlack } from '../answers/place-slack.ts';
import { whyThisLong, withReasons } from '../answers/why-this-long.ts';
import type { Solution, SolveOptions, TierOutcome, TraceRow } from '../engine/outcome.ts';
import { solveTogether } from '../engine/together.ts';
import type { InputFault } from '../kitchen/fault.ts';
import type { Plan } from '../kitchen/plan.ts';
import type { Translated } from './legend.ts';
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
  /**
   * Called as a tier's value or bound gets better. `draft` reads the best solution so far as a plan: as good as it was found, with its
   * binding chain, but without the last touches; a few milliseconds, so ask only for what will be seen. Null before the first.
   */
  readonly onProgress?: (row: TraceRow, draft: (() => Plan) | null) => void;
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
 *   the effort given; `refused` with every fault of the documents. Told to stop, the best plan comes without the last touches, at once
 */
export function planSession(input: PlanSessionInput): PlanSessionResult {
  const translated = sessionToProblem(input);
  if (!translated.ok) return { kind: 'refused', faults: translated.faults };
  const told = (): boolean => input.shouldStop?.() === true;
  if (told()) return stoppedTooSoon;
  const { onProgress } = input;
  const options: SolveOptions = {
    seed: input.seed,
    effort: input.effort,
    ...(input.shouldStop === undefined ? {} : { shouldStop: input.shouldStop }),
    ...(onProgress === undefined
      ? {}
      : {
          onProgress: (row, solution) => {
            const { tiers } = row;
            const open = tiers?.some(({ proven }) => !proven) === true;
            const draft = solution === null || tiers === undefined ? null : { solution, tiers, stopped: open };
            onProgress(row, draft === null ? null : () => planOf(input, translated, draft));
          },
        }),
  };
  const outcome = solveTogether(translated.problem, options);
  switch (outcome.kind) {
    case 'impossible':
      return { kind: 'impossible', reason: outcome.clash.reason, requirements: outcome.clash.requirements };
    case 'unknown':
      return outcome.stopped ? stoppedTooSoon : { kind: 'unknown', reason: 'no plan was found in the effort given' };
    case 'proven':
    case 'bounded': {
      const solution = told() ? outcome.solution : touchedUp(translated, outcome.solution);
      return { kind: 'planned', plan: planOf(input, translated, { ...outcome, solution }), work: outcome.work };
    }
  }
}

const stoppedTooSoon = { kind: 'unknown', reason: 'stopped before a plan was found' } as const;

/** The last touches: what no tier needs is taken away, and slack is placed where durations are least sure. */
const touchedUp = (translated: Translated, solution: Solution): Solution =>
  placeSlack(translated, tightened(translated, solution));

interface Found {
  readonly solution: Solution;
  /** What was proved of each tier. */
  readonly tiers: readonly TierOutcome[];
  readonly stopped: boolean;
}

/** What was found, read as a plan with its binding chain. */
function planOf(input: PlanSessionInput, translated: Translated, { solution, tiers, stopped }: Found): Plan {
  const values = tierValues(translated.problem, solution);
  const known = tiers.map((tier, index) => ({
    ...tier,
    value: values[index]!,
    // A better value of a tier leaves the bounds of those after it true, for it only leaves fewer plans.
    proven: tiers.slice(0, index + 1).every(({ bound }, above) => values[above] === bound),
  }));
  const plan = solutionToPlan(translated, solution, {
    id: input.planId ?? `${input.session.id}-plan`,
    name: input.planName ?? input.session.name,
    seed: input.seed,
    effort: input.effort,
    kind: known.every(({ proven }) => proven) ? 'proven' : 'bounded',
    stopped,
    tiers: known,
  });
  return withReasons(plan, whyThisLong(translated, solution, plan));
}
