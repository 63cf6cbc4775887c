/** Saving a kitchen: read as any document is, then written. */
import type { Answer, DocumentEntry } from '../api.ts';
import { acceptDocument } from '../documents/read-document.ts';
import { saveDocument } from './save-document.ts';

/**
 * Saves a kitchen into a folder under its id. There it stands before one of the same id that came with the program.
 *
 * @param given a kitchen; not trusted, since it may come over a wire
 * @returns its entry; or its faults; or why it could not be written
 */
export async function saveKitchen(given: unknown, folder: string): Promise<Answer<DocumentEntry>> {
  const read = acceptDocument('the kitchen', given, 'kitchen');
  return read.ok ? saveDocument(read.value, folder) : read;
}
