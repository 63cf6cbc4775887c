/** What a replan answers. */
import type { Clash, Solution } from '../outcome.ts';
import type { Worth } from './asked.ts';

/** A limit that a plan breaks: the lag of the asked problem, or a length or the horizon by the task. */
export type BrokenLimit =
  | { readonly kind: 'lag'; readonly lag: number; readonly requirement?: string }
  | { readonly kind: 'length'; readonly task: string }
  | { readonly kind: 'horizon' }
  | { readonly kind: 'calendar'; readonly resource: string };

/** A way to go on that keeps every limit that the past has not broken. */
export interface WayOn {
  readonly kind: 'proven' | 'bounded';
  readonly solution: Solution;
  readonly worth: Worth;
  /** No way to go on is worth less. */
  readonly bound: number;
  /** No way to go on finishes earlier. */
  readonly leastFinish: number;
  /** Worth of the old order carried on; null where it keeps not every limit. */
  readonly carriedOn: number | null;
  /** Limits that the past has broken already. */
  readonly broken: readonly BrokenLimit[];
  readonly stopped: boolean;
  readonly work: number;
}

/** `impossible` only after proof; `unknown`: no way to go on within every limit was found in the effort given. */
export interface NoneWithin {
  readonly kind: 'impossible' | 'unknown';
  readonly clash: Clash | null;
  /** A way to go on with some limits let go that keeps all else; null where none was found. */
  readonly leastBad: Solution | null;
  /**
   * The least bad; where there is none, the old order with limits let go, though it breaks what can never go (soil, a level, a look on the way). No way
   * to go on: it tells what stands against one. null where not even times could be had.
   */
  readonly nearest: Solution | null;
  /** Where not even times could be had: positions of the tasks that stand in each other's way, limits let go. */
  readonly inTheWay: readonly number[];
  /** Limits that either breaks, and those that the past has broken. */
  readonly broken: readonly BrokenLimit[];
  readonly stopped: boolean;
  readonly work: number;
}

export type ReplanOutcome = WayOn | NoneWithin;
