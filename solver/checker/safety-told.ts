/** A violation of rule 9. */
import type { Violation } from './violation.ts';

export const told = (message: string, steps: readonly string[], minute: number): Violation => ({
  rule: 9,
  message,
  steps,
  minute,
});
