/** What the core asks of a constraint that is neither a clause nor a difference. */
import type { Explanation } from './explanation.ts';

export interface Propagator {
  /** 0 runs before 1 before 2: cheap ones first. */
  readonly priority: 0 | 1 | 2;
  /** Set by the core: the number by which reasons name this propagator. */
  id: number;
  /** (slot, data) pairs: when the slot's bound rises, the propagator is queued, and before that told by `note(data)` what rose, unless data is −1. */
  watches(): readonly (readonly [slot: number, data: number])[];
  /** A watched slot rose. Called often; absent where it does not matter which. */
  note?(data: number): void;
  /** Narrows bounds; false on conflict, told to the trail. */
  propagate(): boolean;
  /** Drops whatever state was built above a level; absent where nothing is kept between runs. */
  backtrack?(level: number): void;
  /**
   * Writes literals, all true before `position`, that imply (slot, value), or, where slot is −1, that cannot hold together.
   * @param record the record's words begin at this index of the trail's records, the propagator's number first
   */
  explain(into: Explanation, position: number, slot: number, value: number, record: number): void;
  /** Work of one run, in units. */
  readonly cost: number;
}
