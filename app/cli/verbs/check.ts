/** `afterheat check PLAN` */
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import { wallOffsetOf } from '../../solving/wall-offset.ts';
import type { Options } from '../arguments.ts';
import { findNamed } from '../find-documents.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { tellNoPlan } from './no-plan.ts';

/** Holds a plan document to the ten rules; prints each violation as a sentence. */
export async function checkVerb(subject: string, options: Options, terminal: Terminal): Promise<ExitCode> {
  const named = await findNamed('plan', subject, {
    folder: terminal.folder,
    ...(options.data === undefined ? {} : { data: options.data }),
  });
  if (!named.ok) return tellNoPlan({ kind: 'refused', faults: named.faults }, options.json, terminal);
  const plan = named.value.document;
  const violations = checkPlan(plan, { wallOffset: wallOffsetOf(plan.session.start) });
  if (options.json) terminal.out(JSON.stringify({ valid: violations.length === 0, violations }, null, 2));
  else if (violations.length === 0) terminal.out(`${plan.name}: all ten rules hold (${plan.steps.length} steps)`);
  else terminal.out(violations.map(({ rule, message }) => `Rule ${rule}: ${message}`).join('\n'));
  return violations.length === 0 ? 0 : 1;
}
