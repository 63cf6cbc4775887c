/** `afterheat plan SESSION` */
import { resolve } from 'node:path';
import { dataFolder } from '../../documents/data-folder.ts';
import { documentText, writeText } from '../../documents/write-document.ts';
import { createHost } from '../../host/create-host.ts';
import type { SolverClient } from '../../solving/solver-client.ts';
import type { Options } from '../arguments.ts';
import { solve } from '../solve.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { faultsText } from '../text/faults.ts';
import { tiersText } from '../text/figures.ts';
import { runningOrder } from '../text/running-order.ts';
import { summaryOf } from '../text/summary.ts';
import { tellNoPlan } from './no-plan.ts';
import { openSession } from './open-session.ts';

/** Plans a session; prints its running order or summary, and writes the plan document where `--out` says. */
export async function planVerb(
  subject: string,
  options: Options,
  terminal: Terminal,
  solver: () => SolverClient,
): Promise<ExitCode> {
  const opened = await openSession(subject, options, terminal.folder);
  if (!opened.ok) return tellNoPlan({ kind: 'refused', faults: opened.faults }, options.json, terminal);
  const { library, kitchens, requestFor } = opened.value;
  const host = createHost({ library, folder: dataFolder(options.data), solver: solver() });
  const result = await solve(host, requestFor(kitchens[0]), terminal);
  if (result.kind !== 'planned') return tellNoPlan(result, options.json, terminal);
  const { plan } = result;
  terminal.out(
    options.json ? JSON.stringify(summaryOf(plan, result), null, 2) : `${runningOrder(plan)}\n\n${tiersText(plan)}`,
  );
  if (options.out === undefined) return 0;
  const written = await writeText(resolve(terminal.folder, options.out), documentText(plan));
  if (written.ok) return 0;
  terminal.err(faultsText(written.faults));
  return 2;
}
