/** What a job has come to so far, kept on this side of the thread, so that a stop is answered at once whatever the thread is at. */
import type { HelpProgress, HelpResult, PlanProgress, PlanResult } from '../api.ts';
import type { Plan, PlanTier } from '../../solver/kitchen/plan.ts';

export interface BestSoFar {
  readonly heard: (progress: PlanProgress | HelpProgress, elapsedMs: number) => void;
  /** The answer if the job ended now; null: there is nothing to answer with yet. */
  readonly answer: (elapsedMs: number) => PlanResult | HelpResult | null;
}

export function bestSoFar(): BestSoFar {
  let help: HelpProgress | null = null;
  let best: { readonly plan: Plan; readonly firstPlanMs: number } | null = null;
  return {
    heard: (progress, elapsedMs) => {
      if ('report' in progress) help = progress;
      else {
        const plan = progress.plan ?? best?.plan;
        if (plan === undefined) return;
        best = { plan: withNewerBounds(plan, progress.tiers), firstPlanMs: best?.firstPlanMs ?? elapsedMs };
      }
    },
    answer: (elapsedMs) => {
      if (best !== null) return { kind: 'planned', ...best, solveMs: elapsedMs };
      return help === null ? null : { kind: 'answered', report: { ...help.report, stopped: true } };
    },
  };
}

/** The plan with what was proved of it since. Bounds told with other values above them are of another plan, and are left out. */
function withNewerBounds(plan: Plan, told: readonly PlanTier[] | undefined): Plan {
  if (told === undefined) return plan;
  let alike = true;
  let proven = true;
  const tiers = plan.tiers.map((tier, index) => {
    const newer = told[index];
    // Bounds of a tier hold under the values above it, whatever its own value is.
    const bound = alike && newer?.id === tier.id ? Math.max(tier.bound, newer.bound) : tier.bound;
    alike = alike && newer?.value === tier.value;
    proven = proven && bound === tier.value;
    return { ...tier, bound, proven };
  });
  const main = tiers.find(({ id }) => id === 'finish' || id === 'latest-start');
  return {
    ...plan,
    tiers,
    boundMinutes: main?.bound ?? plan.boundMinutes,
    status: proven ? 'proven' : 'bounded',
    stopped: !proven,
  };
}
