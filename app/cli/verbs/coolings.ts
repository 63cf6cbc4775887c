/** `afterheat coolings SESSION` */
import { sessionCoolings } from '../../../solver/food/session-coolings.ts';
import { gatherSession } from '../../documents/gather-session.ts';
import type { Options } from '../arguments.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { COOLING_CAUTION, coolingsText } from '../text/coolings.ts';
import { tellNoPlan } from './no-plan.ts';
import { openSession } from './open-session.ts';

/** Prints how long the food of a session takes to cool and what shallower layers would gain; with `--json` the workings too. */
export async function coolingsVerb(subject: string, options: Options, terminal: Terminal): Promise<ExitCode> {
  const opened = await openSession(subject, options, terminal.folder);
  if (!opened.ok) return tellNoPlan({ kind: 'refused', faults: opened.faults }, options.json, terminal);
  const gathered = await gatherSession(opened.value.library, opened.value.requestFor());
  if (!gathered.ok) return tellNoPlan({ kind: 'refused', faults: gathered.faults }, options.json, terminal);
  const { session, components } = gathered.value;
  const coolings = sessionCoolings(session, components);
  terminal.out(
    options.json ? JSON.stringify({ coolings, caution: COOLING_CAUTION }, null, 2) : coolingsText(session, coolings),
  );
  return 0;
}
