/** A violation of rule 9. */
import type { Harm } from '../safety/harm-cautions.ts';
import type { Violation } from './violation.ts';

export const told = (message: string, steps: readonly string[], minute: number, harm?: Harm): Violation => ({
  rule: 9,
  message,
  steps,
  minute,
  ...(harm === undefined ? {} : { harm }),
});
