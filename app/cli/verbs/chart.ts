/** `afterheat chart PLAN --out x.svg` */
import { resolve } from 'node:path';
import { withOwnReasons } from '../../../solver/answers/reasons-of-plan.ts';
import { chartSvg } from '../../../renderer/paper/chart-svg.ts';
import { writeText } from '../../documents/write-document.ts';
import { wallOffsetOf } from '../../solving/wall-offset.ts';
import type { Options } from '../arguments.ts';
import { findNamed } from '../find-documents.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { faultsText } from '../text/faults.ts';
import { violationsOf } from '../text/violations.ts';
import { UNTOLD } from '../text/why-this-long.ts';

/** Draws a plan as lanes, into the file of `--out` or to the standard output. A plan that breaks a rule is not drawn. */
export async function chartVerb(subject: string, options: Options, terminal: Terminal): Promise<ExitCode> {
  const named = await findNamed('plan', subject, {
    folder: terminal.folder,
    ...(options.data === undefined ? {} : { data: options.data }),
  });
  if (!named.ok) {
    terminal.err(faultsText(named.faults));
    return 2;
  }
  const plan = named.value.document;
  const violations = violationsOf(plan);
  if (violations.length > 0) {
    terminal.err(['This plan breaks a rule, so it is not drawn:', ...violations].join('\n'));
    return 1;
  }
  const drawn = options.why === true ? withOwnReasons(plan, wallOffsetOf(plan.start)) : plan;
  if (drawn === null) {
    terminal.err(UNTOLD);
    return 1;
  }
  const svg = chartSvg(drawn, { dark: options.dark, why: options.why === true });
  if (options.out === undefined) {
    terminal.out(svg);
    return 0;
  }
  const written = await writeText(resolve(terminal.folder, options.out), svg);
  if (!written.ok) terminal.err(faultsText(written.faults));
  return written.ok ? 0 : 2;
}
