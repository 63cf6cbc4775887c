/** What the main thread and the solver's thread say to each other. */
import type { HelpProgress, HelpResult, PlanProgress, PlanResult } from '../api.ts';
import type { Component } from '../../solver/kitchen/component.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import type { SafetyRules } from '../../solver/kitchen/safety-rules.ts';
import type { Intent, Session } from '../../solver/kitchen/session.ts';

/**
 * Work units after which planning ends by itself. The best plan is shown all the while and can be kept at any moment; these are enough to prove
 * most demo plans best in every respect, in ten to twenty seconds on an ordinary machine.
 */
export const DEFAULT_EFFORT = 30_000_000;
export const DEFAULT_SEED = 1;
/** Work units for the question what would help: some ten to fifteen seconds. */
export const DEFAULT_HELP_EFFORT = 4_000_000;

/** All that decides a plan. */
export interface PlanJob {
  readonly session: Session;
  readonly kitchen: Kitchen;
  readonly components: readonly Component[];
  readonly crew?: string;
  readonly intent?: Intent;
  /** The safety rules in force; absent: as the session says. */
  readonly rules?: SafetyRules;
  readonly seed: number;
  readonly effort: number;
}

/** To the thread. `stop[0]` becomes 1 when the job is to end with its best so far. */
export interface JobOrder {
  /** Absent: a plan. */
  readonly ask?: 'help';
  readonly job: PlanJob;
  readonly stop: Int32Array;
}

/** From the thread; `done` is the last of a job. */
export type JobReport =
  | { readonly kind: 'progress'; readonly progress: PlanProgress | HelpProgress }
  | { readonly kind: 'done'; readonly result: PlanResult | HelpResult };
