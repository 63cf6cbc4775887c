/** `afterheat account PLAN` */
import { accountOf } from '../../../solver/accounts/plan-account.ts';
import type { Options } from '../arguments.ts';
import { findNamed } from '../find-documents.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { accountText } from '../text/account.ts';
import { tellNoPlan } from './no-plan.ts';

/** Prints what a plan takes of energy, water and money, and what sharing saved. */
export async function accountVerb(subject: string, options: Options, terminal: Terminal): Promise<ExitCode> {
  const named = await findNamed('plan', subject, {
    folder: terminal.folder,
    ...(options.data === undefined ? {} : { data: options.data }),
  });
  if (!named.ok) return tellNoPlan({ kind: 'refused', faults: named.faults }, options.json, terminal);
  const plan = named.value.document;
  const account = accountOf(plan);
  terminal.out(options.json ? JSON.stringify(account, null, 2) : accountText(plan.name, account));
  return 0;
}
