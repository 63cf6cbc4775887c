/** What a replan answers. */
import type { Violation } from '../../checker/violation.ts';
import type { InputFault } from '../../kitchen/fault.ts';
import type { Plan } from '../../kitchen/plan.ts';
import type { ToldAhead } from './told-ahead.ts';

interface Common {
  /** What to do against the harm that the past has done, and against harm that would come of going on all the same, as sentences. */
  readonly cautions: readonly string[];
  readonly stopped: boolean;
  readonly work: number;
}

/** Of a replan that was not refused. */
export type Answered =
  | (Common & {
      readonly kind: 'replanned';
      readonly plan: Plan;
      /** Finish in minutes, ids of the steps that change, and `finish + penalty × changed`. */
      readonly worth: { readonly finish: number; readonly changed: readonly string[]; readonly total: number };
      /** No way to go on is worth less; equal to the worth where that is proven. */
      readonly bound: number;
      readonly proven: boolean;
      /** Worth of carrying on in the old order; null where it would break a limit. */
      readonly carriedOn: number | null;
      /**
       * What the past has broken, as sentences: limits, cooking told to be over too soon, and what was done with soil on hands or things.
       * It stays broken whatever follows; the rest breaks nothing.
       */
      readonly broken: readonly Violation[];
    })
  | (Common & {
      /** `impossible` only after proof. */
      readonly kind: 'impossible' | 'unknown';
      readonly reason: string;
      /** The asker's requirements that stand against each other. */
      readonly requirements: readonly string[];
      /**
       * The least bad way to go on: as few minutes over limits of time as were found. From now on it breaks nothing else, and never does
       * harm: null where every way found would, or work and order themselves contradict what was told.
       */
      readonly leastBad: Plan | null;
      /** What it breaks, as sentences, the past among it; where there is none, what the past has broken. */
      readonly broken: readonly Violation[];
      /** Where there is none: what the nearest way would have broken that must not break. Empty where there is not even that. */
      readonly against: readonly Violation[];
      /** Where not even times could be had: ids of the steps that stand in each other's way, whatever limits of time are let go. */
      readonly inTheWay: readonly string[];
      /** Where there is none: steps that were told before what they wait for. */
      readonly toldAhead: readonly ToldAhead[];
    });

export type ReplanResult = Answered | { readonly kind: 'refused'; readonly faults: readonly InputFault[] };
