/** `afterheat why PLAN` */
import { withOwnReasons } from '../../../solver/answers/reasons-of-plan.ts';
import { wallOffsetOf } from '../../solving/wall-offset.ts';
import type { Options } from '../arguments.ts';
import { findNamed } from '../find-documents.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { violationsOf } from '../text/violations.ts';
import { UNTOLD, whyThisLongText } from '../text/why-this-long.ts';
import { tellNoPlan } from './no-plan.ts';

/** Tells why a plan takes as long as it does: its binding chain, and what has time to spare. */
export async function whyVerb(subject: string, options: Options, terminal: Terminal): Promise<ExitCode> {
  const named = await findNamed('plan', subject, {
    folder: terminal.folder,
    ...(options.data === undefined ? {} : { data: options.data }),
  });
  if (!named.ok) return tellNoPlan({ kind: 'refused', faults: named.faults }, options.json, terminal);
  const read = named.value.document;
  const violations = violationsOf(read);
  if (violations.length > 0) {
    terminal.err(['This plan breaks a rule, so there is no telling why it takes so long:', ...violations].join('\n'));
    return 1;
  }
  const plan = withOwnReasons(read, wallOffsetOf(read.start));
  if (plan === null) {
    terminal.err(UNTOLD);
    return 1;
  }
  const slack = Object.fromEntries(
    plan.steps.flatMap(({ id, slack: minutes }) => (minutes === undefined ? [] : [[id, minutes]])),
  );
  terminal.out(
    options.json ? JSON.stringify({ chain: plan.bindingChain ?? [], slack }, null, 2) : whyThisLongText(plan),
  );
  return 0;
}
