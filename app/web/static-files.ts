/** The built renderer's files. Only what was in its folder when it was opened is served, so no path leads out of it. */
import { readFile, readdir } from 'node:fs/promises';
import { extname, join, relative, sep } from 'node:path';

export interface StaticFile {
  readonly body: Uint8Array<ArrayBuffer>;
  readonly type: string;
  /** The name changes with the contents, so it may be kept for good. */
  readonly lasting: boolean;
}

/** The file at a URL's path, such as `/` or `/assets/main-1a2b.js`; null where there is none. */
export type StaticFiles = (path: string) => Promise<StaticFile | null>;

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.json': 'application/json',
  '.txt': 'text/plain; charset=utf-8',
};

/** Opens a folder of built files. Files of other types than a page needs are left out. */
export async function openStaticFiles(folder: string): Promise<StaticFiles> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const paths = new Map(
    entries
      .filter((entry) => entry.isFile() && TYPES[extname(entry.name)] !== undefined)
      .map((entry) => {
        const file = join(entry.parentPath, entry.name);
        return [`/${relative(folder, file).split(sep).join('/')}`, file];
      }),
  );
  return async (path) => {
    const name = path === '/' ? '/index.html' : path;
    const file = paths.get(name);
    if (file === undefined) return null;
    return {
      body: new Uint8Array(await readFile(file)),
      type: TYPES[extname(file)]!,
      lasting: name.startsWith('/assets/'),
    };
  };
}
