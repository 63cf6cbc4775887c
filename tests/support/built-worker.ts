/** The solver's thread as tests run it: built, since Node runs no TypeScript. */
import { pathToFileURL } from 'node:url';
import { buildNodeEntry } from '../../.config/run.mjs';

/** @returns the built `worker.ts`, for `createSolverClient` */
export async function builtWorker(): Promise<URL> {
  return pathToFileURL(await buildNodeEntry('app/solving/worker.ts'));
}
