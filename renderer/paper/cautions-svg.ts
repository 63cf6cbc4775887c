/** The cautions of a plan as lines of SVG text, as wide as the paper. */
import type { Plan } from '../../solver/kitchen/plan.ts';
import { cautionsOf } from '../../solver/safety/cautions.ts';
import { textWidth } from '../chart/layout/text-width.ts';
import { line } from './svg-tags.ts';

/** Text broken between words into lines no wider than `width`, px. */
export function broken(words: string, size: number, width: number): readonly string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of words.split(' ')) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (current === '' || textWidth(longer, size) <= width) current = longer;
    else {
      lines.push(current);
      current = word;
    }
  }
  return [...lines, current];
}

/**
 * Every caution from a line of its own on.
 *
 * @param size font size, px
 * @returns SVG from y = 0 down, and its height, px
 */
export function cautionsSvg(
  plan: Plan,
  size: number,
  width: number,
  fill: string,
): { readonly svg: string; readonly height: number } {
  const step = size * 1.45;
  const lines = cautionsOf(plan).flatMap(({ words }) => broken(words, size, width));
  const svg = lines.map((text, index) => line(text, size, 'regular', { x: 0, y: (index + 1) * step, fill })).join('');
  return { svg, height: lines.length * step };
}
