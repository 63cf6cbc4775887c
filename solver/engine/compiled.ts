/**
 * The flat form of a problem that search works on.
 *
 * Every endpoint is a **node**: task `i` starts at node `2i` and ends at node `2i + 1`; node `2n` is the origin. The distinct
 * modes of a task are numbered through the problem. A lag is an **arc** with conditions: `all` (both tasks present and
 * the lag's literals hold), `low` (what must be known so that the arc may raise the earliest time of `to`, given that its task is
 * present) and `high` (likewise for the latest time of `from`).
 */
import type { ConditionTable } from './conditions.ts';
import type { Problem } from './problem.ts';
import type { SoilMarks } from './soil-marks.ts';
import type { SparseLists } from './sparse-lists.ts';

export interface CompiledUse {
  readonly resource: number;
  readonly amount: number;
  /** Index of its soil marks; 0 is clean and unconcerned. */
  readonly soil: number;
  readonly cleans: boolean;
}
export interface CompiledMode {
  readonly task: number;
  readonly shortest: number;
  /** No longer than the horizon. */
  readonly longest: number;
  readonly uses: readonly CompiledUse[];
  readonly state: number;
  readonly stateClass: number;
  readonly costFixed: number;
  readonly costPerMinute: number;
}
export interface Arc {
  readonly from: number;
  readonly to: number;
  readonly least: number;
  readonly all: number;
  /** The lag's own literals. */
  readonly asked: number;
  readonly low: number;
  readonly high: number;
  readonly lag: number;
}
export interface CompiledEvent {
  readonly node: number;
  readonly amount: number;
  readonly condition: number;
}
export interface CompiledReservoir {
  readonly initial: number;
  /** A number above every level where there is none. */
  readonly capacity: number;
  readonly events: readonly CompiledEvent[];
}
export interface CompiledTotal {
  readonly tasks: readonly number[];
  readonly total: number;
  readonly condition: number;
}
export type CompiledTier =
  | {
      readonly kind: 'latest';
      readonly terms: readonly { readonly node: number; readonly plus: number; readonly minus: boolean }[];
    }
  | {
      readonly kind: 'waiting';
      readonly terms: readonly {
        readonly weight: number;
        readonly from: number;
        readonly to: number;
        readonly free: number;
      }[];
    }
  | { readonly kind: 'cost' }
  | { readonly kind: 'changes'; readonly resources: readonly number[] };

export interface Compiled {
  readonly problem: Problem;
  readonly horizon: number;
  readonly taskCount: number;
  readonly origin: number;
  readonly optionCount: Int32Array;
  readonly table: ConditionTable;
  /** Condition under which each task is present. */
  readonly presence: Int32Array;
  /** Choice of each task's mode, or −1. */
  readonly taskChoice: Int32Array;
  readonly modes: readonly CompiledMode[];
  /** Distinct modes of each task. */
  readonly taskModes: SparseLists;
  /** For a task, the mode under each option (one entry where it has no choice); −1 where it is absent. */
  readonly optionMode: SparseLists;
  /** For each mode the options that give it to its task; option 0 where that hangs on no choice. */
  readonly modeOptions: SparseLists;
  readonly arcs: readonly Arc[];
  /** Capacity of resource `r` at minute `t`: `capacity[r × horizon + t]`. */
  readonly capacity: Int32Array;
  /** Tasks with a mode that uses the resource, in some amount. */
  readonly resourceTasks: SparseLists;
  readonly soilMarks: SoilMarks;
  /** Tasks with a mode that cleans the resource. */
  readonly cleaningTasks: SparseLists;
  readonly soilCount: number;
  /** 1 where a use with soil `u` leaves what a use with soil `v` avoids: `soilMeets[u × soilCount + v]`. */
  readonly soilMeets: Uint8Array;
  readonly stateTasks: SparseLists;
  /** For each state its gaps, row by row; −1 where two classes may overlap. */
  readonly gaps: readonly Int32Array[];
  readonly classCount: Int32Array;
  readonly reservoirs: readonly CompiledReservoir[];
  readonly forbidden: readonly number[];
  readonly totals: readonly CompiledTotal[];
  readonly tiers: readonly CompiledTier[];
  readonly group: Int32Array;
}
