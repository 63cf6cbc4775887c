import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Problem } from '../../solver/engine/problem.ts';
import type { Instance } from './measure.ts';
import { findPublishedBounds } from './published-bounds.ts';
import { readMultiMode } from './readers/multi-mode.ts';
import { readPatterson } from './readers/patterson.ts';
import { readProgenMax } from './readers/progen-max.ts';
import { readProjectReservoirs } from './readers/project-reservoirs.ts';
import { jobShopProblem, openShopProblem, type JobShop, type OpenShop } from './readers/shops.ts';

/** Families kept as a folder of files: the files' ending and their reader. */
const folders: Readonly<
  Record<string, { readonly ending: string; readonly read: (text: string, name: string) => Problem }>
> = {
  rcpsp: { ending: '.rcp', read: readPatterson },
  gaps: { ending: '.sch', read: readProgenMax },
  modes: { ending: '.mm', read: readMultiMode },
  reservoirs: { ending: '.rcp', read: readProjectReservoirs },
};

/** Families kept as one JSON file with `instances`. */
const files: Readonly<Record<string, (path: string, blocking: boolean) => Instance[]>> = {
  jobshop: (path, blocking) =>
    instancesOf<JobShop & { optimum?: number; optimumBlocking?: number }>(path).map((shop) => ({
      name: shop.name,
      problem: jobShopProblem(shop, blocking),
      published: optimum(blocking ? shop.optimumBlocking : shop.optimum),
    })),
  openshop: (path) =>
    instancesOf<OpenShop & { optimum?: number }>(path).map((shop) => ({
      name: shop.name,
      problem: openShopProblem(shop),
      published: optimum(shop.optimum),
    })),
};

export const families: readonly string[] = [...Object.keys(folders), ...Object.keys(files)];

/** An instance that is read only when it is asked for. */
export interface Listed {
  readonly name: string;
  readonly open: () => Instance;
}

/**
 * Lists the instances of a family.
 *
 * @param family one of `families`
 * @param path the folder (searched to its leaves) or the file
 * @param options.optima a list of published bounds, in place of `bounds.csv` beside the instances
 * @param options.blocking for job shops: whether a job keeps its machine until the next takes it
 */
export function listInstances(
  family: string,
  path: string,
  options: { readonly optima?: string | undefined; readonly blocking: boolean },
): Listed[] {
  if (!existsSync(path)) throw new Error(`nothing at ${path}`);
  const file = files[family];
  if (file && !statSync(path).isFile())
    throw new Error(`${path} is no file; ${family} wants one JSON file with "instances"`);
  if (file) return file(path, options.blocking).map((instance) => ({ name: instance.name, open: () => instance }));
  const folder = folders[family];
  if (!folder) throw new Error(`no family "${family}"; there are ${families.join(', ')}`);
  if (!statSync(path).isDirectory())
    throw new Error(`${path} is no folder; ${family} wants a folder of ${folder.ending} files`);
  const bounds = findPublishedBounds(path, options.optima);
  return filesBelow(path)
    .filter((each) => each.endsWith(folder.ending))
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }))
    .map((each) => {
      const name = join(basename(dirname(each)), basename(each));
      const open = (): Instance => ({
        name,
        problem: folder.read(readFileSync(each, 'utf8'), name),
        published: bounds(each),
      });
      return { name, open };
    });
}

function filesBelow(path: string): string[] {
  return readdirSync(path, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesBelow(join(path, entry.name)) : [join(path, entry.name)],
  );
}

function instancesOf<T>(path: string): readonly T[] {
  let read: { readonly instances?: unknown };
  try {
    read = JSON.parse(readFileSync(path, 'utf8')) as typeof read;
  } catch (error) {
    throw new Error(`${path} is not JSON: ${(error as Error).message}`, { cause: error });
  }
  if (!Array.isArray(read.instances)) throw new Error(`${path} has no list "instances"`);
  return read.instances as T[];
}

function optimum(value: number | undefined | null): Instance['published'] {
  return value === undefined || value === null ? undefined : { lower: value, upper: value };
}
