import { existsSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';

/** What is published of an instance: bounds of its least finish, `Infinity` for both where it is proven infeasible. */
export interface Published {
  readonly lower: number;
  readonly upper: number;
  /** Length of the longest chain, where the list gives it. */
  readonly criticalPath?: number;
}

export type PublishedBounds = (file: string) => Published | undefined;

/** Names that lists in use give their columns. */
const columnNames = {
  file: ['file', 'instance', 'name'],
  lower: ['lower_bound', 'lower bound', 'lower', 'lb'],
  upper: ['upper_bound', 'upper bound', 'upper', 'ub', 'best'],
  optimum: ['optimum', 'optimal', 'makespan', 'finish'],
  criticalPath: ['critical_path', 'critical path', 'cp', 'cpm'],
} as const;

/** A file by what its name is without folder and ending. */
const bare = (file: string): string => basename(file).replace(/\.\w+$/, '');

/**
 * Reads a list of published bounds: CSV with a heading, columns for the file and for its bounds (or its optimum alone) and perhaps
 * for the longest chain, where `inf` means proven infeasible and an empty field nothing known; or rows of numbers as the PSPLIB lists
 * have them: parameter, instance, least finish.
 *
 * @param path the list; in the second form it is of optima where its name says `opt`, of best known finishes otherwise
 * @returns looks a file up by its folder and name, then by its name alone
 * @throws Error where the list is of neither form
 */
export function readPublishedBounds(path: string): PublishedBounds {
  const lines = readFileSync(path, 'utf8').trim().split(/\r?\n/);
  const heading = (lines[0] ?? '').split(/[,;]/).map((column) => column.trim().toLowerCase());
  const column = (of: keyof typeof columnNames): number =>
    heading.findIndex((name) => (columnNames[of] as readonly string[]).includes(name));
  if (column('file') < 0) return fromNumbers(path, lines);
  if (column('upper') < 0 && column('optimum') < 0)
    throw new Error(
      `${path}: no column of bounds among "${heading.join('", "')}"; wanted lower_bound and upper_bound, or optimum`,
    );
  const found = new Map<string, Published>();
  for (const line of lines.slice(1)) {
    const cells = line.split(/[,;]/);
    const field = (of: keyof typeof columnNames): string => cells[column(of)]?.trim() ?? '';
    const number = (text: string, unknown: number): number => {
      if (text === '') return unknown;
      const value = text === 'inf' ? Infinity : Number(text);
      if (Number.isNaN(value)) throw new Error(`${path}: "${text}" is no bound, in the line "${line}"`);
      return value;
    };
    const optimum = field('optimum');
    const published: Published = {
      lower: number(optimum || field('lower'), 0),
      upper: number(optimum || field('upper'), Infinity),
      ...(field('criticalPath') === '' ? {} : { criticalPath: number(field('criticalPath'), 0) }),
    };
    const file = field('file');
    for (const key of [join(basename(dirname(file)), bare(file)), bare(file)])
      if (!found.has(key)) found.set(key, published);
  }
  return (file) => found.get(join(basename(dirname(file)), bare(file))) ?? found.get(bare(file));
}

/** Rows of parameter, instance and finish; a file belongs to the row of the last two numbers in its name. */
function fromNumbers(path: string, lines: readonly string[]): PublishedBounds {
  const proven = /opt/i.test(basename(path));
  const rows = lines.flatMap((line) => {
    const [, parameter, instance, value] = /^\s*(\d+)\s+(\d+)\s+(\d+)\b/.exec(line) ?? [];
    if (value === undefined) return [];
    const published: Published = { lower: proven ? Number(value) : 0, upper: Number(value) };
    return [[`${parameter}_${instance}`, published] as const];
  });
  if (rows.length === 0)
    throw new Error(`${path}: neither a CSV with a column "file" nor rows of parameter, instance and finish`);
  const found = new Map<string, Published>(rows);
  // Either j30_1_2 or j301_2, as the files of PSPLIB are named: what is asked after is 1_2.
  const key = (file: string): string =>
    /(?:^|\D)(\d{1,3}_\d+)$/.exec(bare(file).replace(/^[a-z]+(?:120|\d\d)(?=\d)/i, 'x'))?.[1] ?? '';
  return (file) => found.get(key(file));
}

/** The list named, or else `bounds.csv` in the folder or the one above; nothing known where there is none. */
export function findPublishedBounds(folder: string, named: string | undefined): PublishedBounds {
  if (named !== undefined && !existsSync(named)) throw new Error(`no list of published bounds at ${named}`);
  const path = named ?? [join(folder, 'bounds.csv'), join(folder, '..', 'bounds.csv')].find((each) => existsSync(each));
  return path === undefined ? () => undefined : readPublishedBounds(path);
}
