/**
 * The food-free scheduling problem: what the engine is asked.
 *
 * A problem has **tasks** (intervals of whole minutes, perhaps of flexible length, perhaps absent) whose **modes** use
 * **resources**; **choices** decide modes and presence; **lags** bind pairs of endpoints; **states** make modes wait for each
 * other with a transition gap; **soil** marks on resource uses must be cleaned away between two uses that clash;
 * **reservoirs** are filled and drawn. All times are integers; a task occupies `[start, end)`.
 *
 * This file is the format that `afterheat model` writes, so any other solver can be checked against ours. Ids are unique
 * strings within their list; every reference is by id.
 */
export interface Problem {
  readonly format: 'afterheat.problem';
  readonly version: 1;
  readonly name: string;
  /** Every present task ends no later than this, minutes, 1–100,000. Starts are at least 0. */
  readonly horizon: number;
  readonly choices: readonly Choice[];
  readonly tasks: readonly Task[];
  readonly resources: readonly Resource[];
  readonly states: readonly StateResource[];
  readonly reservoirs: readonly Reservoir[];
  readonly lags: readonly Lag[];
  /** Conjunctions that must not hold: in each, at least one literal is false. */
  readonly forbidden: readonly (readonly Literal[])[];
  readonly totals: readonly Total[];
  /** Objectives in order of rank: each is least first, before the next is looked at. */
  readonly tiers: readonly Tier[];
}

/** A finite decision: exactly one option is taken. */
export interface Choice {
  readonly id: string;
  /** Labels of the options, at least one; an option is referred to by its index. */
  readonly options: readonly string[];
}

/** True when the choice takes one of the options. */
export interface Literal {
  readonly choice: string;
  readonly options: readonly number[];
}

/**
 * An interval. Present when every literal of `when` holds and its mode is not null. With a `choice`, `modes` has one entry an
 * option (null: absent under that option); several tasks may share a choice. Without one, `modes` has one non-null entry.
 */
export interface Task {
  readonly id: string;
  readonly when?: readonly Literal[];
  readonly choice?: string;
  readonly modes: readonly (Mode | null)[];
  /** Used by tiers of kind `changes`. */
  readonly group?: string;
}

export interface Mode {
  /** `shortest ≤ end − start ≤ longest`, minutes; equal for work of fixed length; 0 is allowed. */
  readonly shortest: number;
  readonly longest: number;
  readonly uses: readonly Use[];
  readonly state?: { readonly state: string; readonly class: number };
  /** Integer cost while this mode is taken, for tiers of kind `cost`: `fixed + perMinute × (end − start)`. */
  readonly cost?: { readonly fixed: number; readonly perMinute: number };
}

/**
 * A use of a resource through the whole task.
 *
 * Soil: for two present uses u, v of one resource (of different tasks) where `leaves` of u meets `avoids` of v, either v ends
 * no later than u starts, or a present task with a `cleans` use of that resource starts no earlier than u ends and ends no
 * later than v starts. So they may never overlap.
 */
export interface Use {
  readonly resource: string;
  /** ≥ 0. */
  readonly amount: number;
  readonly leaves?: readonly string[];
  readonly avoids?: readonly string[];
  readonly cleans?: boolean;
}

/** Cumulative: at every minute the amounts in use sum to no more than the capacity then. Capacity 1 is exclusive. */
export interface Resource {
  readonly id: string;
  readonly capacity: number;
  /** Capacities that replace `capacity` within `[from, until)`; entries are sorted and do not overlap. */
  readonly calendar?: readonly { readonly from: number; readonly until: number; readonly capacity: number }[];
}

/**
 * A state that modes need in one of several classes. `gap[a][b]` is the least number of minutes from the end of a use of class
 * a to the start of a later use of class b; `null` means the two may overlap freely and need no gap. It is null for (a, b)
 * exactly when it is null for (b, a), and always null for (a, a).
 */
export interface StateResource {
  readonly id: string;
  readonly classes: readonly string[];
  readonly gap: readonly (readonly (number | null)[])[];
}

/**
 * A level changed by events and never below 0 nor above capacity at any minute (events of one minute count together: what
 * is asked is the level after all of them). An event counts when its task is present and its literals hold.
 */
export interface Reservoir {
  readonly id: string;
  readonly initial: number;
  readonly capacity?: number;
  readonly events: readonly {
    readonly point: Point & { readonly task: string };
    readonly amount: number;
    readonly if?: readonly Literal[];
  }[];
}

/** An endpoint of a task, or the session's first minute (0). */
export type Point = { readonly task: string; readonly at: 'start' | 'end' } | 'origin';

/**
 * `to − from ≥ least` whenever the tasks at both ends are present and every literal of `if` holds. A longest gap of `w` is the
 * reverse lag with `least = −w`.
 */
export interface Lag {
  readonly from: Point;
  readonly to: Point;
  readonly least: number;
  readonly if?: readonly Literal[];
  /** Names the asker's requirement behind this lag; several lags may share one. Used to explain clashes. */
  readonly requirement?: string;
}

/** The lengths of the present tasks among these sum to `total` whenever every literal of `if` holds. */
export interface Total {
  readonly tasks: readonly string[];
  readonly total: number;
  readonly if?: readonly Literal[];
}

export type Tier = LatestTier | WaitingTier | CostTier | ChangesTier;

/** Largest over the present points of `plus + point` (or `plus − point` where `minus`); 0 where none is present. Never negative. */
export interface LatestTier {
  readonly kind: 'latest';
  readonly id: string;
  readonly terms: readonly {
    readonly point: Point & { readonly task: string };
    readonly plus?: number;
    readonly minus?: boolean;
  }[];
}

/** Σ weight × max(0, to − from − free) over the terms whose tasks are both present. Weights are integers ≥ 0. */
export interface WaitingTier {
  readonly kind: 'waiting';
  readonly id: string;
  readonly terms: readonly {
    readonly weight: number;
    readonly from: Point;
    readonly to: Point;
    readonly free: number;
  }[];
}

/** Σ of the costs of the modes taken by present tasks. */
export interface CostTier {
  readonly kind: 'cost';
  readonly id: string;
}

/** For each resource named: its present uses in order of start (ties by id); how often the task's group differs from the one before. */
export interface ChangesTier {
  readonly kind: 'changes';
  readonly id: string;
  readonly resources: readonly string[];
}
