/** The project's own folder, from wherever the running code was built to. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** @returns the nearest folder above this code with a package.json */
export function projectRoot(from: string = import.meta.url): string {
  let folder = dirname(fileURLToPath(from));
  while (!existsSync(join(folder, 'package.json'))) {
    const above = dirname(folder);
    if (above === folder) throw new Error('no package.json above the running code');
    folder = above;
  }
  return folder;
}
