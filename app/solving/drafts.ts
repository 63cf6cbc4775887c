/**
 * Better plans on their way out of a job: the first is read, checked and handed on at once, those after it a few times a second at
 * most, and the newest that waits as soon as its time has come. What is not handed on is not read.
 */
import type { PlanProgress } from '../api.ts';
import { checkPlan } from '../../solver/checker/check-plan.ts';
import type { TraceRow } from '../../solver/engine/outcome.ts';
import type { Plan } from '../../solver/kitchen/plan.ts';
import { planTier } from '../../solver/translate/solution-to-plan.ts';

/** Between two plans handed on, ms. Each costs some tens of them, which the search pays. */
export const DRAFT_MS = 300;

export interface DraftControls {
  readonly onProgress: (progress: PlanProgress) => void;
  /** Milliseconds that only go forward. */
  readonly now: () => number;
  readonly wallOffset: (days: number, clock: string) => number;
  readonly effort: number;
}

export interface Drafts {
  /** To be called as the solver gets on; `draft` reads the best plan so far. */
  readonly heard: (row: TraceRow, draft: (() => Plan) | null) => void;
  /** To be called often: hands on what has waited long enough. */
  readonly look: () => void;
  /** Whether a plan was found to keep the rules when it was handed on as a draft. */
  readonly passed: (plan: Plan) => boolean;
}

interface Waiting {
  readonly progress: PlanProgress;
  readonly draft: () => Plan;
  readonly mark: string;
}

/** The drafts of one job. */
export function createDrafts({ onProgress, now, wallOffset, effort }: DraftControls): Drafts {
  let waiting: Waiting | null = null;
  /** Tier values of the plan handed on last: another plan with the same is no better. */
  let shown = '';
  let due = -Infinity;
  let sound: Plan | null = null;

  const look = (): void => {
    if (waiting === null || now() < due) return;
    const { progress, draft, mark } = waiting;
    waiting = null;
    const plan = draft();
    shown = mark;
    due = now() + DRAFT_MS;
    // One that breaks a rule is a defect of ours and is not shown; the last plan is judged again.
    if (checkPlan(plan, { wallOffset }).length > 0) return onProgress(progress);
    sound = plan;
    onProgress({ ...progress, plan });
  };

  return {
    heard: (row, draft) => {
      const progress = progressOf(row, effort);
      const mark = (row.tiers ?? []).map(({ value }) => value).join();
      const better = draft !== null && mark !== shown;
      if (better) waiting = { progress, draft, mark };
      if (better && now() >= due) look();
      else onProgress(progress);
    },
    look,
    passed: (plan) => sound !== null && samePlan(plan, sound),
  };
}

function progressOf({ work, value, bound, tier, tiers }: TraceRow, effort: number): PlanProgress {
  const common = { value, bound, share: Math.min(1, work / effort) };
  if (tiers === undefined) return common;
  const known = tiers.map(planTier);
  const worked = tier === undefined ? undefined : known[tier]?.id;
  return { ...common, ...(worked === undefined ? {} : { tier: worked }), tiers: known };
}

/** Whether two plans of one session put everything at the same place and time. */
const samePlan = (a: Plan, b: Plan): boolean =>
  JSON.stringify([a.steps, a.holds, a.ovens, a.pools]) === JSON.stringify([b.steps, b.holds, b.ovens, b.pools]);
