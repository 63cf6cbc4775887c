/** Plans a small session and fails with the reason where there is no plan. */
import type { Component } from '../../solver/kitchen/component.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import type { Plan, PlannedStep } from '../../solver/kitchen/plan.ts';
import type { Session } from '../../solver/kitchen/session.ts';
import { planSession, type PlanSessionInput, type PlanSessionResult } from '../../solver/translate/plan-session.ts';
import { session as sessionOf, smallKitchen } from './documents.ts';

export const EFFORT = 300_000;

export interface Given {
  readonly components: readonly Component[];
  readonly session?: Partial<Session>;
  readonly kitchen?: Partial<Kitchen>;
  readonly options?: Partial<PlanSessionInput>;
}

export function planResult({ components, session = {}, kitchen = {}, options = {} }: Given): PlanSessionResult {
  return planSession({
    session: sessionOf(components, session),
    kitchen: smallKitchen(kitchen),
    components,
    seed: 1,
    effort: EFFORT,
    ...options,
  });
}

export function planned(given: Given): Plan {
  const result = planResult(given);
  if (result.kind !== 'planned') throw new Error(`no plan: ${JSON.stringify(result)}`);
  return result.plan;
}

export function stepOf(plan: Plan, id: string): PlannedStep {
  const step = plan.steps.find((candidate) => candidate.id === id);
  if (step === undefined) throw new Error(`no step ${id} among ${plan.steps.map((each) => each.id).join(', ')}`);
  return step;
}
