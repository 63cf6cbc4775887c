/** One job from order to result: planned, then held to the checker before anybody sees it. */
import type { Clash, PlanProgress, PlanResult } from '../api.ts';
import { howSure } from '../../solver/answers/how-sure.ts';
import { whyNot } from '../../solver/answers/why-not.ts';
import { checkPlan } from '../../solver/checker/check-plan.ts';
import { planSession } from '../../solver/translate/plan-session.ts';
import { createDrafts } from './drafts.ts';
import type { PlanJob } from './job.ts';
import { wallOffsetOf } from './wall-offset.ts';

/** What a job needs of its surroundings. */
export interface JobControls {
  readonly shouldStop: () => boolean;
  readonly onProgress: (progress: PlanProgress) => void;
  /** Milliseconds that only go forward. */
  readonly now: () => number;
}

/**
 * Plans and checks.
 *
 * @returns a plan that keeps the ten rules; or `failed-check` with what it breaks, which is a defect of ours; or why there is none
 */
export function runJob(job: PlanJob, { shouldStop, onProgress, now }: JobControls): PlanResult {
  const began = now();
  let firstPlanMs: number | null = null;
  const wallOffset = wallOffsetOf(job.session.start);
  const drafts = createDrafts({ onProgress, now, wallOffset, effort: job.effort });
  const outcome = planSession({
    ...job,
    wallOffset,
    shouldStop: () => {
      if (shouldStop()) return true;
      drafts.look();
      return false;
    },
    onProgress: (row, draft) => {
      if (row.value !== null) firstPlanMs ??= now() - began;
      // Who stopped it waits for the answer, not for a draft.
      drafts.heard(row, shouldStop() ? null : draft);
    },
  });
  if (outcome.kind === 'impossible') {
    const clash = clashOf(job, wallOffset, shouldStop, (share) => onProgress({ value: null, bound: 0, share }));
    return clash === null ? outcome : { ...outcome, clash };
  }
  if (outcome.kind !== 'planned') return outcome;
  const solveMs = now() - began;
  const violations = drafts.passed(outcome.plan) ? [] : checkPlan(outcome.plan, { wallOffset });
  if (violations.length > 0)
    return { kind: 'failed-check', violations: violations.map(({ rule, message }) => `Rule ${rule}: ${message}`) };
  const sure = howSure(outcome.plan, { seed: job.seed, wallOffset, shouldStop });
  return {
    kind: 'planned',
    plan: outcome.plan,
    solveMs,
    firstPlanMs: firstPlanMs ?? solveMs,
    // Of few samples nothing can be said.
    ...(sure.kind === 'sure' && !sure.stopped ? { sure } : {}),
  };
}

/** Work units for the question why not: a few seconds. */
const CLASH_EFFORT = 1_000_000;

function clashOf(
  job: PlanJob,
  wallOffset: (days: number, clock: string) => number,
  shouldStop: () => boolean,
  onProgress: (share: number) => void,
): Clash | null {
  const answer = whyNot({ ...job, wallOffset }, { seed: job.seed, effort: CLASH_EFFORT, shouldStop, onProgress });
  if (answer.kind !== 'clash') return null;
  const { clash, minimal, singles, together } = answer;
  return { members: clash, minimal, singles, together };
}
