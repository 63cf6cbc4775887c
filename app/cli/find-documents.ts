/** Documents that the command line names: by a file's path, or by an id in the data folder or the demo. */
import { statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import type { Answer } from '../api.ts';
import { dataFolder } from '../documents/data-folder.ts';
import type { Documents, Kind } from '../documents/kinds.ts';
import { createLibrary, type Library } from '../documents/library.ts';
import { readDocument } from '../documents/read-document.ts';
import { demoSource, fileSource, folderSource, readText, type Source } from '../documents/sources.ts';

/** Whether an argument means a file: it looks like a path, or there is such a file. */
export function isFile(argument: string, folder: string): boolean {
  return (
    argument.endsWith('.json') ||
    /[\\/]/.test(argument) ||
    statSync(resolve(folder, argument), { throwIfNoEntry: false })?.isFile() === true
  );
}

/** A document that is asked for, the library it was found in, and the folder of its file. */
export interface Named<K extends Kind> {
  readonly document: Documents[K];
  readonly library: Library;
}

/**
 * Finds the document that an argument names. Files among `also`, such as kitchens, take part in the library.
 *
 * @returns it, with a library in which the files named stand before the folder of its file, the data folder and the demo
 */
export async function findNamed<K extends Kind>(
  kind: K,
  argument: string,
  { folder, data, also = [] }: { readonly folder: string; readonly data?: string; readonly also?: readonly string[] },
): Promise<Answer<Named<K>>> {
  const path = resolve(folder, argument);
  const file = isFile(argument, folder);
  const files = [
    ...(file ? [path] : []),
    ...also.filter((other) => isFile(other, folder)).map((other) => resolve(folder, other)),
  ];
  const sources: readonly Source[] = [
    ...files.map(fileSource),
    ...(file ? [folderSource(dirname(path))] : []),
    folderSource(dataFolder(data)),
    demoSource,
  ];
  const library = createLibrary(sources);
  const answer = file ? await readFile(kind, path, argument) : await library.find(kind, argument);
  return answer.ok ? { ok: true, value: { document: answer.value, library } } : answer;
}

/** Reads a document from a file; faults name it as the user did. */
export async function readFile<K extends Kind>(kind: K, path: string, name: string): Promise<Answer<Documents[K]>> {
  const given = await readText(path, name);
  return given.text === undefined ? { ok: false, faults: [given.fault!] } : readDocument(name, given.text, kind);
}

/** Ids of the kitchens that arguments name, as files or as ids. */
export async function kitchenIds(kitchens: readonly string[], folder: string): Promise<Answer<readonly string[]>> {
  const answers = await Promise.all(
    kitchens.map(async (argument): Promise<Answer<string>> => {
      if (!isFile(argument, folder)) return { ok: true, value: argument };
      const read = await readFile('kitchen', resolve(folder, argument), argument);
      return read.ok ? { ok: true, value: read.value.id } : read;
    }),
  );
  const faults = answers.flatMap((answer) => (answer.ok ? [] : answer.faults));
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, value: answers.flatMap((answer) => (answer.ok ? [answer.value] : [])) };
}

/** Id of the safety rules that an argument names, as a file or as an id; null without one. */
export async function authorityId(argument: string | undefined, folder: string): Promise<Answer<string | null>> {
  if (argument === undefined || !isFile(argument, folder)) return { ok: true, value: argument ?? null };
  const read = await readFile('safety-rules', resolve(folder, argument), argument);
  return read.ok ? { ok: true, value: read.value.id } : read;
}
