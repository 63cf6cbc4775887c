import { warmUp } from '../../app/solving/warm-up.ts';

/**
 * Runs the engine warm as the program's own thread does at its start, so that an instance finds what a cook's session finds: compiled code.
 *
 * @returns words for the summary: that it was done, and how long it took
 */
export function workerWarmed(): string {
  const began = performance.now();
  warmUp(() => false);
  return `worker warmed in ${((performance.now() - began) / 1000).toFixed(1)} s`;
}
