/** Labels that fit: shortened by whole words, wrapped by whole words, never cut within one. */
import { textWidth, type Weight } from './text-width.ts';

const ARTICLES = new Set(['the', 'a', 'an', 'them', 'their']);
/** Words that cannot end a label. */
const LEANING = new Set([
  'and',
  'or',
  'of',
  'in',
  'into',
  'on',
  'onto',
  'to',
  'with',
  'from',
  'for',
  'over',
  'under',
  'at',
  'then',
  'until',
  'out',
]);

const unique = (names: readonly string[]): readonly string[] => [...new Set(names.filter((name) => name !== ''))];

/**
 * A name and its shorter forms, longest first: without articles, without what follows the first comma, then a word fewer each time.
 * `fill the pot of water, on the heat` gives … `fill pot of water`, `fill pot`, `fill`.
 */
export function shorterNames(name: string): readonly string[] {
  const bare = (text: string): string[] => text.split(' ').filter((word) => !ARTICLES.has(word));
  const clause = name.split(/[,;(]/)[0]!.trim();
  const words = bare(clause);
  const shorter: string[] = [];
  for (let count = words.length; count > 0; count -= 1) {
    const last = words[count - 1]!;
    if (!LEANING.has(last) || count === 1) shorter.push(words.slice(0, count).join(' '));
  }
  return unique([name, bare(name).join(' '), ...shorter]);
}

/**
 * Breaks a text at its spaces.
 * @param width px of one line
 * @returns the lines; null where a word is wider than the line or the lines are more than `most`
 */
export function wrapped(
  text: string,
  width: number,
  most: number,
  size: number,
  weight: Weight,
): readonly string[] | null {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer, size, weight) <= width) {
      line = longer;
      continue;
    }
    if (line === '' || textWidth(word, size, weight) > width) return null;
    lines.push(line);
    line = word;
  }
  if (line !== '') lines.push(line);
  return lines.length <= most ? lines : null;
}

export interface Fit {
  readonly lines: readonly string[];
  /** Which of the texts it is, 0 the fullest. */
  readonly choice: number;
}

/** The fullest of `texts` that fits a box of `width` by `most` lines; null where none does. */
export function fit(texts: readonly string[], width: number, most: number, size: number, weight: Weight): Fit | null {
  if (most < 1) return null;
  for (const [choice, text] of texts.entries()) {
    const lines = wrapped(text, width, most, size, weight);
    if (lines !== null) return { lines, choice };
  }
  return null;
}
