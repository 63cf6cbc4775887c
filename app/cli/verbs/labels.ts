/** `afterheat labels PLAN` */
import { resolve } from 'node:path';
import { labelsHtml } from '../../../renderer/paper/labels-html.ts';
import { boxLabels, LABEL_CAUTION } from '../../../solver/boxes/labels.ts';
import { writeText } from '../../documents/write-document.ts';
import { wallClockOf } from '../../solving/wall-offset.ts';
import type { Options } from '../arguments.ts';
import { findNamed } from '../find-documents.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { faultsText } from '../text/faults.ts';
import { labelsText } from '../text/labels.ts';
import { tellNoPlan } from './no-plan.ts';

/** Prints the labels of a plan's boxes, and writes a page of them into the file of `--out`; 1 where one holds or may have met what its eater avoids. */
export async function labelsVerb(subject: string, options: Options, terminal: Terminal): Promise<ExitCode> {
  const named = await findNamed('plan', subject, {
    folder: terminal.folder,
    ...(options.data === undefined ? {} : { data: options.data }),
  });
  if (!named.ok) return tellNoPlan({ kind: 'refused', faults: named.faults }, options.json, terminal);
  const plan = named.value.document;
  const clock = wallClockOf(plan.session.start);
  const labels = boxLabels(plan, (minute) => clock(minute).day);
  if (options.out !== undefined) {
    const written = await writeText(resolve(terminal.folder, options.out), labelsHtml(plan.name, labels));
    if (!written.ok) {
      terminal.err(faultsText(written.faults));
      return 2;
    }
  }
  terminal.out(options.json ? JSON.stringify({ labels, caution: LABEL_CAUTION }, null, 2) : labelsText(plan, labels));
  return labels.some(({ notFor }) => notFor.length > 0) ? 1 : 0;
}
