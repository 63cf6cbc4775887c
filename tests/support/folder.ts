/** A folder of its own for a test, gone after it. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** Makes an empty folder for the running test. */
export async function emptyFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'afterheat-test-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}
