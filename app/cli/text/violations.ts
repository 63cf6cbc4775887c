/** What the checker has against a plan, a sentence a violation. */
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import type { Violation } from '../../../solver/checker/violation.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { wallOffsetOf } from '../../solving/wall-offset.ts';

/** A violation in one line, `Rule 4: …`. */
export const ruleText = ({ rule, message }: Violation): string => `Rule ${rule}: ${message}`;

/** @returns `Rule 4: …` for each violation; empty: the plan is valid */
export const violationsOf = (plan: Plan): readonly string[] =>
  checkPlan(plan, { wallOffset: wallOffsetOf(plan.session.start) }).map(ruleText);
