/** A document's text read: JSON, kind, version, schema; all of its faults at once. */
import * as v from 'valibot';
import type { Answer, Fault } from '../api.ts';
import { findingsOf } from './consistency/findings-of.ts';
import { issueFaults, nearest, valueText } from './issue-faults.ts';
import { readJson } from './json-text.ts';
import { KINDS, SCHEMAS, type AnyDocument, type Documents, type Kind } from './kinds.ts';
import { MIGRATIONS, migrate } from './migrate.ts';

/** Longer files are not read, bytes. A plan of two hundred steps has about 400 kB. */
export const MOST_BYTES = 16 * 1024 * 1024;

/**
 * Reads a document of any kind.
 *
 * @param name how faults call it: its file name
 * @param text what is in the file
 * @param wanted the kind it should have; absent: whichever it says
 * @returns the document in its newest version, or every fault; never throws, whatever the text
 */
export function readDocument<K extends Kind>(name: string, text: string, wanted: K): Answer<Documents[K]>;
export function readDocument(name: string, text: string, wanted?: Kind): Answer<AnyDocument>;
export function readDocument(name: string, text: string, wanted?: Kind): Answer<AnyDocument> {
  const json = readJson(text);
  if (!json.ok) {
    const { line, column, found, wanted: expected } = json.fault;
    const path = `line ${line}, column ${column}`;
    return refuse({ document: name, path, found, wanted: expected, mend: `correct the JSON at line ${line}` });
  }
  return acceptDocument(name, json.value, wanted);
}

/** As `readDocument`, for a value that is parsed already. */
export function acceptDocument<K extends Kind>(name: string, value: unknown, wanted: K): Answer<Documents[K]>;
export function acceptDocument(name: string, value: unknown, wanted?: Kind): Answer<AnyDocument>;
export function acceptDocument(name: string, value: unknown, wanted?: Kind): Answer<AnyDocument> {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return refuse({
      document: name,
      path: '',
      found: valueText(value),
      wanted: 'an object in { }',
      mend: 'put the document into one { }',
    });
  const given = value as Record<string, unknown>;
  const kind = KINDS.find((known) => known === given['kind']);
  if (kind === undefined || (wanted !== undefined && kind !== wanted))
    return refuse(kindFault(name, given['kind'], wanted));
  const migrated = migrate(given, MIGRATIONS[kind]);
  if (migrated.kind !== 'current') return refuse(versionFault(name, given['version'], migrated));
  const result = v.safeParse(SCHEMAS[kind], migrated.document);
  if (!result.success) return { ok: false, faults: issueFaults(name, result.issues) };
  const findings = findingsOf(result.output);
  if (findings.length > 0) return { ok: false, faults: findings.map((finding) => ({ document: name, ...finding })) };
  return { ok: true, value: result.output };
}

const refuse = (fault: Fault): { readonly ok: false; readonly faults: readonly Fault[] } => ({
  ok: false,
  faults: [fault],
});

function kindFault(document: string, found: unknown, wanted: Kind | undefined): Fault {
  const kinds = (wanted === undefined ? KINDS : [wanted]).map((kind) => `"${kind}"`);
  const list = kinds.length === 1 ? kinds[0]! : `one of ${kinds.join(', ')}`;
  const meant = typeof found === 'string' && wanted === undefined ? nearest(found, KINDS) : null;
  return {
    document,
    path: 'kind',
    found: valueText(found),
    wanted: list,
    mend:
      wanted !== undefined && KINDS.some((kind) => kind === found)
        ? `give a ${wanted} document here`
        : `write "kind": ${meant === null ? list : `"${meant}"`}`,
  };
}

function versionFault(
  document: string,
  found: unknown,
  { kind, known }: { readonly kind: 'newer' | 'no-version'; readonly known: number },
): Fault {
  const wanted = known === 1 ? 'version 1' : `a version from 1 to ${known}`;
  return kind === 'newer'
    ? {
        document,
        path: 'version',
        found: `version ${String(found)}, which is newer than this Afterheat knows`,
        wanted,
        mend: 'open it with a newer Afterheat',
      }
    : { document, path: 'version', found: valueText(found), wanted, mend: `write "version": ${known}` };
}
