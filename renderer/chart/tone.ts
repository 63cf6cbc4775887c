/** The class that carries an owner's tone. */
import type { Owner } from './layout/identity.ts';

export function toneClass(owner: Owner): string {
  if (owner.kind === 'component') return `tone-${owner.tone}`;
  return owner.glyph === 'water' || owner.glyph === 'preheat' ? `tone-${owner.glyph}` : 'tone-work';
}
