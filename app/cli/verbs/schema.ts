/** `afterheat schema KIND` */
import { resolve } from 'node:path';
import { jsonSchemaOf } from '../../documents/json-schema.ts';
import { KINDS } from '../../documents/kinds.ts';
import { writeText } from '../../documents/write-document.ts';
import type { Options } from '../arguments.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { faultsText } from '../text/faults.ts';

/** Prints the JSON Schema of a kind of document. */
export async function schemaVerb(subject: string, options: Options, terminal: Terminal): Promise<ExitCode> {
  const kind = KINDS.find((known) => known === subject);
  if (kind === undefined) {
    terminal.err(`KIND is one of ${KINDS.join(', ')}, not "${subject}"`);
    return 2;
  }
  const text = JSON.stringify(jsonSchemaOf(kind), null, 2);
  if (options.out === undefined) {
    terminal.out(text);
    return 0;
  }
  const written = await writeText(resolve(terminal.folder, options.out), `${text}\n`);
  if (!written.ok) terminal.err(faultsText(written.faults));
  return written.ok ? 0 : 2;
}
