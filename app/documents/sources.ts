/** Where documents come from: a folder of the user's, one file, or the demo that comes with the program. */
/// <reference types="vite/client" />
import { open, readdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { Fault } from '../api.ts';
import { kindOfFileName } from './kinds.ts';
import { MOST_BYTES } from './read-document.ts';

/** A file's text, not yet read as a document. */
export interface SourceText {
  /** File name, or `demo/…`. */
  readonly file: string;
  /** Absent where the file could not be read, as `fault` says. */
  readonly text?: string;
  readonly fault?: Fault;
}

export interface Source {
  readonly demo: boolean;
  readonly texts: () => Promise<readonly SourceText[]>;
}

/** Text of a file on disk, or the fault that keeps it from being read. */
export async function readText(path: string, name: string): Promise<SourceText> {
  const fault = (found: string, wanted: string, mend: string): SourceText => ({
    file: name,
    fault: { document: name, path: '', found, wanted, mend },
  });
  try {
    const file = await open(path, 'r');
    try {
      const stat = await file.stat();
      if (!stat.isFile()) return fault('no file but a folder or device', 'a file', 'give the path of a file');
      if (stat.size > MOST_BYTES)
        return fault(`${stat.size} bytes`, `at most ${MOST_BYTES} bytes`, 'check that it is the right file');
      return { file: name, text: new TextDecoder('utf-8', { fatal: true }).decode(await file.readFile()) };
    } finally {
      await file.close();
    }
  } catch (error) {
    if (error instanceof TypeError)
      return fault('bytes that are no UTF-8 text', 'UTF-8 text', 'save the file as UTF-8');
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT') return fault('no such file', 'a file that can be read', 'correct the path or the name');
    return fault(
      `a file that cannot be read (${code ?? String(error)})`,
      'a file that can be read',
      'check who may read it',
    );
  }
}

/** The documents directly in a folder, in order of their names; a folder that is not there has none. */
export function folderSource(folder: string): Source {
  return {
    demo: false,
    texts: async () => {
      const names = await readdir(folder).catch(() => []);
      const ours = names.filter((name) => kindOfFileName(name) !== null).sort();
      return Promise.all(ours.map((name) => readText(join(folder, name), name)));
    },
  };
}

/** One file, whatever its name. */
export function fileSource(path: string): Source {
  return { demo: false, texts: async () => [await readText(path, basename(path))] };
}

const demoTexts = import.meta.glob<string>('../demo/**/*.json', { query: '?raw', import: 'default', eager: true });

/** The documents that come with the program. */
export const demoSource: Source = {
  demo: true,
  texts: () =>
    Promise.resolve(
      Object.entries(demoTexts).map(([path, text]) => ({ file: `demo/${path.split('/').at(-1)!}`, text })),
    ),
};
