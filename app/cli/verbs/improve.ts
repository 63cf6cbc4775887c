/** `afterheat improve SESSION` */
import type { HelpResult, Host, PlanRequest } from '../../api.ts';
import { dataFolder } from '../../documents/data-folder.ts';
import { createHost } from '../../host/create-host.ts';
import type { SolverClient } from '../../solving/solver-client.ts';
import type { Options } from '../arguments.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { faultsText } from '../text/faults.ts';
import { helpsText } from '../text/helps.ts';
import { openSession } from './open-session.ts';

/** Tells what would help: minutes gained by one more of each thing, and by five minutes off each step. */
export async function improveVerb(
  subject: string,
  options: Options,
  terminal: Terminal,
  solver: () => SolverClient,
): Promise<ExitCode> {
  const opened = await openSession(subject, options, terminal.folder);
  if (!opened.ok) return tell({ kind: 'refused', faults: opened.faults }, options.json, terminal);
  const { library, kitchens, requestFor } = opened.value;
  const host = createHost({ library, folder: dataFolder(options.data), solver: solver() });
  return tell(await ask(host, requestFor(kitchens[0]), terminal), options.json, terminal);
}

function ask(host: Pick<Host, 'startHelp'>, request: PlanRequest, terminal: Terminal): Promise<HelpResult> {
  return new Promise((resolve) => {
    let deaf = (): void => {};
    const { stop } = host.startHelp(request, {
      onProgress: ({ share, report }) => {
        const best = report.answers[0];
        const most = best === undefined || best.gain === 0 ? 'nothing yet' : `${best.gain} min by ${best.help.words}`;
        terminal.progress(
          `asking what would help: ${report.answers.length} of ${report.answers.length + report.open}, most gain ${most}, ` +
            `${Math.round(share * 100)} % of the effort; Ctrl-C takes what is known`,
        );
      },
      onDone: (result) => {
        deaf();
        terminal.progress('');
        resolve(result);
      },
    });
    deaf = terminal.onInterrupt(stop);
  });
}

function tell(result: HelpResult, json: boolean, terminal: Terminal): ExitCode {
  if (json) {
    const { kind, ...rest } = result;
    terminal.out(JSON.stringify({ status: kind, ...('report' in rest ? rest.report : rest) }, null, 2));
  } else if (result.kind === 'answered') terminal.out(helpsText(result.report));
  else if (result.kind === 'refused') terminal.err(faultsText(result.faults));
  else if (result.kind === 'impossible')
    terminal.err('No plan is possible, so nothing was asked. afterheat plan tells what clashes.');
  else terminal.err(`No answer: ${result.reason}. More --effort may find one.`);
  if (result.kind === 'answered') return 0;
  return result.kind === 'refused' ? 2 : 1;
}
