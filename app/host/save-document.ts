/** Saving a document that was read, under its kind and id. */
import { join } from 'node:path';
import type { Answer, DocumentEntry } from '../api.ts';
import { fileNameOf, type AnyDocument } from '../documents/kinds.ts';
import { documentText, writeText } from '../documents/write-document.ts';

/**
 * Writes a document into a folder; one that was there is kept beside it.
 * @returns its entry, or why it could not be written
 */
export async function saveDocument(document: AnyDocument, folder: string): Promise<Answer<DocumentEntry>> {
  const { kind, id, name } = document;
  const file = fileNameOf(kind, id);
  const written = await writeText(join(folder, file), documentText(document));
  return written.ok ? { ok: true, value: { kind, id, name, file, demo: false, faults: [] } } : written;
}
