/** What the checker has to say against a plan. */
import type { Harm } from '../safety/harm-cautions.ts';

/** The ten rules, numbered as the checker's files are listed in `check-plan.ts`. */
export type RuleNumber = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10;

export interface Violation {
  readonly rule: RuleNumber;
  /** One sentence, in the words of a kitchen, with clock times where they help. */
  readonly message: string;
  /** Ids of the planned steps concerned; empty where there is none to point at. */
  readonly steps: readonly string[];
  /** When it happens, minutes from the start of the session. */
  readonly minute?: number;
  /** What it may do to who eats; absent: nothing by itself. */
  readonly harm?: Harm;
}
