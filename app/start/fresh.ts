/** Whether something built is newer than what it is built from. */
import { readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Newest modification time of a file or below a folder, ms; 0 where there is none. */
export function newestMs(path: string): number {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (stat === undefined) return 0;
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => newestMs(join(path, name))));
}

/**
 * Builds where the sources are newer than the last build's stamp.
 *
 * @param out folder built into; the stamp is a file in it
 * @param sources files and folders that it is built from
 */
export async function buildIfStale(out: string, sources: readonly string[], build: () => Promise<void>): Promise<void> {
  const stamp = join(out, 'stamp');
  if (newestMs(stamp) > Math.max(...sources.map(newestMs))) return;
  await build();
  writeFileSync(stamp, '');
}
