/** `afterheat labels PLAN` */
import { boxLabels, LABEL_CAUTION } from '../../../solver/boxes/labels.ts';
import { wallClockOf } from '../../solving/wall-offset.ts';
import type { Options } from '../arguments.ts';
import { findNamed } from '../find-documents.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { labelsText } from '../text/labels.ts';
import { tellNoPlan } from './no-plan.ts';

/** Prints the labels of a plan's boxes; 1 where one holds or may have met what its eater avoids. */
export async function labelsVerb(subject: string, options: Options, terminal: Terminal): Promise<ExitCode> {
  const named = await findNamed('plan', subject, {
    folder: terminal.folder,
    ...(options.data === undefined ? {} : { data: options.data }),
  });
  if (!named.ok) return tellNoPlan({ kind: 'refused', faults: named.faults }, options.json, terminal);
  const plan = named.value.document;
  const clock = wallClockOf(plan.session.start);
  const labels = boxLabels(plan, (minute) => clock(minute).day);
  terminal.out(options.json ? JSON.stringify({ labels, caution: LABEL_CAUTION }, null, 2) : labelsText(plan, labels));
  return labels.some(({ notFor }) => notFor.length > 0) ? 1 : 0;
}
