/** What raw or dry food weighs when it is cooked. */
import type { Source } from '../source.ts';
import { figure, readTable } from './data/read-table.ts';
import { YIELDS } from './data/yields.ts';

export interface Yield {
  /** Keys of the table of foods. */
  readonly from: string;
  readonly to: string;
  /** Weight cooked of 1 g raw or dry, > 0. */
  readonly factor: number;
  /** What 1 g is of: the part that is eaten, or the food as bought with what is cut off. */
  readonly of: 'edible' | 'bought';
  readonly source: Source;
}

type Column = 'from' | 'to' | 'of' | 'raw' | 'cooked' | 'source';

/** Every yield of the table. */
export const YIELD_TABLE: readonly Yield[] = readTable<Column>(YIELDS).map((row) => ({
  from: row.from,
  to: row.to,
  factor: figure(row.cooked)! / figure(row.raw)!,
  of: row.of === 'bought' ? 'bought' : 'edible',
  source: { standing: row.of === 'solids' ? 'derived' : 'published', cite: row.source },
}));

/** The yield from one food of the table to another; undefined where no figure is known. */
export const yieldBetween = (from: string, to: string): Yield | undefined =>
  YIELD_TABLE.find((row) => row.from === from && row.to === to);

/** Keys of the cooked foods that a raw or dry one can become by a known yield. */
export const cookedOf = (from: string): readonly string[] =>
  YIELD_TABLE.filter((row) => row.from === from).map(({ to }) => to);
