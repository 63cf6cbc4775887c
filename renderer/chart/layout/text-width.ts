/** Width of a line of text without a screen, so that the same layout serves window, paper and command line. */
import { BOLD, OTHERS, REGULAR } from './glyph-widths.ts';

export type Weight = 'regular' | 'bold';

/** A letter that is not in the table is taken for a wide one, thousandths of an em. */
const UNKNOWN = 640;

/**
 * @param text one line
 * @param size font size, px
 * @returns px
 */
export function textWidth(text: string, size: number, weight: Weight = 'regular'): number {
  const table = weight === 'bold' ? BOLD : REGULAR;
  let sum = 0;
  for (const letter of text) {
    // A space that does not break is as wide as one that does.
    const code = letter === '\u00a0' ? 32 : letter.codePointAt(0)!;
    const index = code >= 32 && code < 127 ? code - 32 : OTHERS.indexOf(letter) + (OTHERS.includes(letter) ? 95 : -1);
    sum += table[index] ?? UNKNOWN;
  }
  return (sum * size) / 1000;
}
