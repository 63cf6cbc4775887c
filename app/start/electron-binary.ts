/**
 * Electron's binary, looked for without importing `electron`, since the import would start a download. Its package notes the
 * binary's place in `path.txt`, below `dist`, once it is fetched.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** @returns the path of the binary; null where it was not fetched */
export function electronBinary(root: string): string | null {
  const folder = join(root, 'node_modules', 'electron');
  const note = join(folder, 'path.txt');
  if (!existsSync(note)) return null;
  const binary = join(folder, 'dist', readFileSync(note, 'utf8').trim());
  return existsSync(binary) ? binary : null;
}

/** Fetches the binary with the package's own installer. @returns whether it is there now */
export function fetchElectron(root: string): boolean {
  const installer = join(root, 'node_modules', 'electron', 'install.js');
  spawnSync(process.execPath, [installer], { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] });
  return electronBinary(root) !== null;
}
