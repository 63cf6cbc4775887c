/** A kitchen reckoned: read as any document is, then its numbers with their workings. */
import type { Answer } from '../api.ts';
import { kitchenFigures, type KitchenFigures } from '../../solver/answers/kitchen-figures.ts';
import { acceptDocument } from '../documents/read-document.ts';

/** @param given a kitchen; not trusted, since it may come over a wire */
export function reckonKitchen(given: unknown): Answer<KitchenFigures> {
  const read = acceptDocument('the kitchen', given, 'kitchen');
  return read.ok ? { ok: true, value: kitchenFigures(read.value) } : read;
}
