/** Documents written to disk: whole or not at all, the one before kept, and nothing lost when it fails. */
import { copyFile, mkdir, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import type { Answer } from '../api.ts';
import type { AnyDocument } from './kinds.ts';

/** A document as it stands in a file. */
export const documentText = (document: AnyDocument): string => `${JSON.stringify(document, null, 2)}\n`;

/**
 * Writes a text to a file, whole or not at all; a file that was there is kept beside it as `….bak`.
 *
 * @param path of the file; missing folders are made
 * @param refuge folder for the text when the file cannot be written
 * @returns the path; or the fault, which says where the text was kept
 */
export async function writeText(path: string, text: string, refuge: string = tmpdir()): Promise<Answer<string>> {
  try {
    await mkdir(dirname(path), { recursive: true });
    await copyFile(path, `${path}.bak`).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'ENOENT') throw error;
    });
    await writeFileAtomic(path, text, { encoding: 'utf8' });
    return { ok: true, value: path };
  } catch (error) {
    const kept = join(refuge, `unsaved-${Date.now()}-${basename(path)}`);
    const saved = await writeFile(kept, text, { encoding: 'utf8', mode: 0o600 }).then(
      () => true,
      () => false,
    );
    return {
      ok: false,
      faults: [
        {
          document: basename(path),
          path: '',
          found: `the file could not be written (${(error as NodeJS.ErrnoException).code ?? String(error)})`,
          wanted: 'a folder with room, in which you may write',
          mend: saved
            ? `it was kept as ${kept}: mend the folder, then move it to ${path}`
            : `mend the folder, then save to ${path} again`,
        },
      ],
    };
  }
}
