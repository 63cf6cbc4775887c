/** `afterheat model SESSION` */
import { resolve } from 'node:path';
import { sessionToProblem } from '../../../solver/translate/session-to-problem.ts';
import { gatherSession } from '../../documents/gather-session.ts';
import { writeText } from '../../documents/write-document.ts';
import { wallOffsetOf } from '../../solving/wall-offset.ts';
import type { Options } from '../arguments.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { faultsText } from '../text/faults.ts';
import { openSession } from './open-session.ts';

/** Prints the food-free scheduling problem of a session as JSON, as `solver/engine/problem.ts` documents it. */
export async function modelVerb(subject: string, options: Options, terminal: Terminal): Promise<ExitCode> {
  const refuse = (faults: Parameters<typeof faultsText>[0]): ExitCode => {
    terminal.err(faultsText(faults));
    return 2;
  };
  const opened = await openSession(subject, options, terminal.folder);
  if (!opened.ok) return refuse(opened.faults);
  const { library, kitchens, requestFor } = opened.value;
  const gathered = await gatherSession(library, requestFor(kitchens[0]));
  if (!gathered.ok) return refuse(gathered.faults);
  const translated = sessionToProblem({
    ...gathered.value,
    ...(options.crew === undefined ? {} : { crew: options.crew }),
    ...(options.intent === undefined ? {} : { intent: options.intent }),
    wallOffset: wallOffsetOf(gathered.value.session.start),
  });
  if (!translated.ok) return refuse(translated.faults);
  const text = JSON.stringify(translated.problem, null, 1);
  if (options.out === undefined) {
    terminal.out(text);
    return 0;
  }
  const written = await writeText(resolve(terminal.folder, options.out), `${text}\n`);
  return written.ok ? 0 : refuse(written.faults);
}
