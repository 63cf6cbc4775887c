/** `afterheat sure PLAN` */
import { howSure } from '../../../solver/answers/how-sure.ts';
import { wallOffsetOf } from '../../solving/wall-offset.ts';
import type { Options } from '../arguments.ts';
import { findNamed } from '../find-documents.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { howSureText } from '../text/how-sure.ts';
import { tellNoPlan } from './no-plan.ts';

/** Plays a plan through many times with varying lengths; prints the chances and the steps that carry the risk. */
export async function sureVerb(subject: string, options: Options, terminal: Terminal): Promise<ExitCode> {
  const named = await findNamed('plan', subject, {
    folder: terminal.folder,
    ...(options.data === undefined ? {} : { data: options.data }),
  });
  if (!named.ok) return tellNoPlan({ kind: 'refused', faults: named.faults }, options.json, terminal);
  const plan = named.value.document;
  const result = howSure(plan, {
    ...(options.by === undefined ? {} : { by: options.by }),
    wallOffset: wallOffsetOf(plan.session.start),
    ...(options.samples === undefined ? {} : { samples: options.samples }),
    ...(options.seed === undefined ? {} : { seed: options.seed }),
  });
  if (result.kind === 'refused') return tellNoPlan(result, options.json, terminal);
  const { kind: _, ...sure } = result;
  terminal.out(options.json ? JSON.stringify(sure, null, 2) : howSureText(plan, sure));
  return 0;
}
