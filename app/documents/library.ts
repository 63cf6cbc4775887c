/**
 * All documents at hand, from several sources in order: where two have the same kind and id, the one of the earlier source
 * stands. Read anew at each ask, since the user may edit the files; a text that has not changed is not read twice.
 */
import type { Answer, DocumentEntry, Fault } from '../api.ts';
import { kindOfFileName, type AnyDocument, type Documents, type Kind } from './kinds.ts';
import { readDocument } from './read-document.ts';
import type { Source, SourceText } from './sources.ts';

export interface Library {
  /** Every document, sound or not, by kind and then by name. */
  readonly list: () => Promise<readonly DocumentEntry[]>;
  /** A document by its id, or why there is none. */
  readonly find: <K extends Kind>(kind: K, id: string) => Promise<Answer<Documents[K]>>;
  /** The sound documents of a kind. */
  readonly all: <K extends Kind>(kind: K) => Promise<readonly Documents[K][]>;
}

interface Item {
  readonly entry: DocumentEntry;
  readonly document: AnyDocument | null;
}

const KIND_ORDER: readonly Kind[] = ['session', 'kitchen', 'component', 'plan', 'safety-rules'];

/** A library over sources, the first of them having precedence. */
export function createLibrary(sources: readonly Source[]): Library {
  const seen = new Map<string, { readonly text: string; readonly item: Item }>();

  const itemOf = (source: Source, index: number, given: SourceText): Item => {
    if (given.text === undefined) return { entry: brokenEntry(given, source.demo, [given.fault!]), document: null };
    const key = `${index}/${given.file}`;
    const known = seen.get(key);
    if (known?.text === given.text) return known.item;
    const item = readItem(given.file, given.text, source.demo);
    seen.set(key, { text: given.text, item });
    return item;
  };

  const items = async (): Promise<readonly Item[]> => {
    const groups = await Promise.all(
      sources.map(async (source, index) => (await source.texts()).map((given) => itemOf(source, index, given))),
    );
    const taken = new Map<string, DocumentEntry>();
    return groups.flatMap((group, index) => {
      const earlier = new Set(groups.slice(0, index).flatMap((other) => other.map(({ entry }) => keyOf(entry))));
      return group.flatMap((item) => {
        const key = keyOf(item.entry);
        if (earlier.has(key)) return [];
        const first = taken.get(key);
        if (first === undefined) {
          taken.set(key, item.entry);
          return [item];
        }
        return [{ entry: { ...item.entry, faults: [sameId(item.entry, first)] }, document: null }];
      });
    });
  };

  return {
    list: async () =>
      (await items())
        .map(({ entry }) => entry)
        .sort((a, b) => KIND_ORDER.indexOf(a.kind) - KIND_ORDER.indexOf(b.kind) || a.name.localeCompare(b.name, 'en')),
    find: async <K extends Kind>(kind: K, id: string): Promise<Answer<Documents[K]>> => {
      const all = (await items()).filter(({ entry }) => entry.kind === kind);
      const item = all.find(({ entry }) => entry.id === id);
      if (item === undefined) return { ok: false, faults: [notThere(kind, id, all)] };
      if (item.document === null) return { ok: false, faults: item.entry.faults };
      return { ok: true, value: item.document as Documents[K] };
    },
    all: async <K extends Kind>(kind: K) =>
      (await items()).flatMap(({ document }) => (document?.kind === kind ? [document as Documents[K]] : [])),
  };
}

const keyOf = (entry: DocumentEntry): string => `${entry.kind} ${entry.id}`;

function readItem(file: string, text: string, demo: boolean): Item {
  const named = kindOfFileName(file.split('/').at(-1)!);
  const answer = readDocument(file, text, named?.kind);
  if (!answer.ok) return { entry: brokenEntry({ file }, demo, answer.faults), document: null };
  const { kind, id, name } = answer.value;
  return { entry: { kind, id, name, file, demo, faults: [] }, document: answer.value };
}

/** A file that cannot be used is listed by what its name says. */
function brokenEntry({ file }: SourceText, demo: boolean, faults: readonly Fault[]): DocumentEntry {
  const name = file.split('/').at(-1)!;
  const { kind, id } = kindOfFileName(name) ?? { kind: 'session' as const, id: name };
  return { kind, id, name: id, file, demo, faults };
}

const sameId = (entry: DocumentEntry, first: DocumentEntry): Fault => ({
  document: entry.file,
  path: 'id',
  found: `"${entry.id}", which ${first.file} has too`,
  wanted: `an id of its own among the ${entry.kind} documents`,
  mend: 'give one of the two another id',
});

function notThere(kind: Kind, id: string, all: readonly Item[]): Fault {
  const known = all.map(({ entry }) => entry.id);
  return {
    document: `${kind} ${id}`,
    path: '',
    found: `no ${kind} with the id "${id}"`,
    wanted: known.length === 0 ? `a ${kind} document` : `one of ${known.join(', ')}`,
    mend: `correct the id, or put ${id}.${kind}.json into the data folder`,
  };
}

/** Whether a fault of `find` says that there is no such document, rather than what is wrong with it. */
export const isNotThere = (fault: Fault): boolean =>
  /^(kitchen|component|session|plan|safety-rules) /.test(fault.document);
