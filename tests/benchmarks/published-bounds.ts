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

/**
 * Reads a list of published bounds: CSV with a heading, columns `file`, `lower_bound`, `upper_bound` and perhaps
 * `critical_path`, where `inf` means proven infeasible and an empty field nothing known.
 *
 * @param path the list
 * @returns looks a file up by its folder and name, then by its name alone
 */
export function readPublishedBounds(path: string): PublishedBounds {
  const [heading = '', ...lines] = readFileSync(path, 'utf8').trim().split(/\r?\n/);
  const columns = heading.split(',');
  const field = (cells: readonly string[], column: string): string => cells[columns.indexOf(column)]?.trim() ?? '';
  const number = (text: string, unknown: number): number =>
    text === '' ? unknown : text === 'inf' ? Infinity : Number(text);
  const found = new Map<string, Published>();
  for (const line of lines) {
    const cells = line.split(',');
    const file = field(cells, 'file');
    const published: Published = {
      lower: number(field(cells, 'lower_bound'), 0),
      upper: number(field(cells, 'upper_bound'), Infinity),
      ...(field(cells, 'critical_path') === '' ? {} : { criticalPath: Number(field(cells, 'critical_path')) }),
    };
    found.set(file, published);
    if (!found.has(basename(file))) found.set(basename(file), published);
  }
  return (file) => found.get(join(basename(dirname(file)), basename(file))) ?? found.get(basename(file));
}

/** The list named, or else `bounds.csv` in the folder or the one above; nothing known where there is none. */
export function findPublishedBounds(folder: string, named: string | undefined): PublishedBounds {
  const path = named ?? [join(folder, 'bounds.csv'), join(folder, '..', 'bounds.csv')].find((each) => existsSync(each));
  return path === undefined ? () => undefined : readPublishedBounds(path);
}
