/**
 * What a replan is asked: a running plan, what is known of it by now, and how dear a change is.
 *
 * Points of tasks are numbered as in a plan's order: node 0 is the origin, `1 + 2t` the start and `2 + 2t` the end of the
 * problem's task t.
 */
import type { Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';

/** A fact that is not known yet. */
export const OPEN = -1;

/** Tasks that are one piece of work to the asker: they change together and count once. */
export interface Unit {
  readonly id: string;
  /** Positions of its tasks. A task is in one unit at most. */
  readonly tasks: readonly number[];
}

export interface ReplanAsked {
  /** With the lengths as they are now known. */
  readonly problem: Problem;
  /** The plan that is being followed: its choices, and its times as they were to be. It was a solution when it was made. */
  readonly old: Solution;
  readonly units: readonly Unit[];
  /** Minutes, by node: when a point was, or for certain will be; `OPEN` where it lies ahead, at `now` or later. */
  readonly facts: Int32Array;
  readonly now: number;
  /** What starts before this minute is left alone where that can be. */
  readonly frozenUntil: number;
  /** Nodes whose latest is the finish. */
  readonly finish: readonly number[];
  /** Minutes of finish that a changed unit weighs, a whole number ≥ 0. */
  readonly penalty: number;
  /** A way to go on that changes nothing and finishes by this minute ends the search; absent: only a proof does. */
  readonly goodEnough?: number;
  /** Positions of lags that are let go after all others that the asker named, where not every limit can be kept. */
  readonly guarded?: ReadonlySet<number>;
  /** Positions of lags that are never let go. */
  readonly kept?: ReadonlySet<number>;
  readonly seed: number;
  /** Most work units to spend, what gets a search ready among them; 0: the old order only. */
  readonly effort: number;
  /** The same where what has begun has met soil that it avoids, and the asker may have to ask anew because of it; absent: no less. */
  readonly effortIfSoiled?: number;
  readonly shouldStop?: () => boolean;
}

/** What a replan is worth: `finish + penalty × changed`, less is better. */
export interface Worth {
  /** Minutes. */
  readonly finish: number;
  /** Positions of the units that change. */
  readonly changed: readonly number[];
  readonly total: number;
}
