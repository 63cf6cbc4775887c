/** `afterheat compare SESSION --kitchen A --kitchen B` */
import type { PlanResult } from '../../api.ts';
import { dataFolder } from '../../documents/data-folder.ts';
import { createHost } from '../../host/create-host.ts';
import type { SolverClient } from '../../solving/solver-client.ts';
import type { Options } from '../arguments.ts';
import { solve } from '../solve.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { comparisonText, headlineOf } from '../text/figures.ts';
import { summaryOf } from '../text/summary.ts';
import { noPlanText, tellNoPlan } from './no-plan.ts';
import { openSession } from './open-session.ts';

/** Plans a session in several kitchens (those of the session, unless named) and prints the figures side by side. */
export async function compareVerb(
  subject: string,
  options: Options,
  terminal: Terminal,
  solver: () => SolverClient,
): Promise<ExitCode> {
  const opened = await openSession(subject, options, terminal.folder);
  if (!opened.ok) return tellNoPlan({ kind: 'refused', faults: opened.faults }, options.json, terminal);
  const { library, session, requestFor } = opened.value;
  const kitchens = opened.value.kitchens.length > 0 ? opened.value.kitchens : session.kitchens;
  if (kitchens.length < 2) {
    terminal.err('afterheat compare takes at least two --kitchen, or a session that names two');
    return 2;
  }
  const host = createHost({ library, folder: dataFolder(options.data), solver: solver() });
  const results = await Promise.all(kitchens.map((kitchen) => solve(host, requestFor(kitchen), terminal, kitchen)));
  if (options.json)
    terminal.out(
      JSON.stringify(
        { session: session.id, plans: results.map((result, index) => jsonOf(result, kitchens[index]!)) },
        null,
        2,
      ),
    );
  else {
    const planned = results.flatMap((result) => (result.kind === 'planned' ? [result.plan] : []));
    results.forEach((result, index) => {
      if (result.kind !== 'planned') terminal.err(`${kitchens[index]}: ${noPlanText(result)}`);
    });
    if (planned.length === 1) terminal.out(`${planned[0]!.kitchen.name}: ${headlineOf(planned[0]!)}`);
    if (planned.length > 1) terminal.out(`${session.name}\n\n${comparisonText(planned)}`);
  }
  if (results.some(({ kind }) => kind === 'refused')) return 2;
  return results.every(({ kind }) => kind === 'planned') ? 0 : 1;
}

function jsonOf(result: PlanResult, kitchen: string): unknown {
  if (result.kind === 'planned') return summaryOf(result.plan, result);
  const { kind, ...rest } = result;
  return { kitchen, status: kind, ...rest };
}
