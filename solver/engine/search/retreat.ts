/**
 * Steps back from the dead ends of a dive: the decision that bounded what finds no place is undone and moved on by what was lacking
 * ("unscheduling", Franck, Neumann and Schwindt 2001); what finds none again and again is brought forward, before what was decided last; and
 * all of it a limited number of times.
 */
import type { CompiledMode } from '../compiled.ts';
import type { Propagation } from '../propagation/propagation.ts';
import type { Store } from '../propagation/store.ts';
import type { Structure } from '../structure.ts';
import { BOUND, OPTION, type Decisions } from './decisions.ts';
import type { Demands } from './demands.ts';
import type { DiveOrders } from './dive.ts';
import type { Selection } from './selection.ts';

/** Where no more decisions than this have to be made anew, a block's first dead end is mended without bringing it forward. */
const MANY = 32;
/** Decisions undone, at least, when a block is brought forward for the first time. */
const FEW = 8;
/** Dead ends of what stands at the front already, after which the dive is given up: a dive by another rule is sooner than turning all that came since. */
const HOPELESS = 3;
/** From here on it is all decisions in any case. */
const MOST_DOUBLINGS = 20;

export class Retreat {
  private readonly store: Store;
  private orders!: DiveOrders;
  /** Dead ends, in quarters. */
  private fails = 0;
  private lastUndone = -1;
  /** Places moved on near where they were decided. */
  private shifts = 0;
  private repeats = 0;
  /** Dead ends of blocks that cannot come any earlier. */
  private hopeless = 0;
  /** Dead ends of each block in this dive. */
  private readonly blocked: Int32Array;
  /** 1 where a block was brought forward with every decision undone: it cannot come any earlier. */
  private readonly fromStart: Uint8Array;
  /** Dead ends of each task, over all dives. */
  readonly trouble: Int32Array;

  /** @param onUndo called when decisions were undone, before others are made */
  constructor(
    private readonly propagation: Propagation,
    private readonly structure: Structure,
    private readonly demands: Demands,
    private readonly decisions: Decisions,
    private readonly selection: Selection,
    private readonly onUndo: () => void,
  ) {
    this.store = propagation.store;
    this.trouble = new Int32Array(this.store.compiled.taskCount);
    this.blocked = new Int32Array(structure.blockTasks.start.length);
    this.fromStart = new Uint8Array(structure.blockTasks.start.length);
  }

  /** A dive begins. */
  begin(orders: DiveOrders): void {
    this.orders = orders;
    this.fails = 0;
    this.shifts = 0;
    this.hopeless = 0;
    this.lastUndone = -1;
    this.blocked.fill(0);
    this.fromStart.fill(0);
  }

  /**
   * Steps back when nothing serves a demand. For a cleaning: the task in want comes later, when a cleaning is left that has room
   * then; otherwise its place is chosen anew, or what soiled it is put after it.
   */
  fromDemand(): boolean {
    const { demands, store, orders, decisions } = this;
    const { dependent, source, kind } = demands;
    if (kind !== 'clean') return this.from(dependent);
    this.propagation.clear();
    const start = store.earliestStart(dependent);
    const behind = Math.max(1, store.earliestEnd(dependent) - store.earliestStart(source));
    const later = demands.room() - start;
    if (later > 0 && !orders.backward) {
      const level = decisions.levelOfChange(4 * dependent + 1);
      const latest = level > 0 ? -decisions.valueBefore(level, 4 * dependent + 1) : 0;
      const near = decisions.depth - level < FEW && ++this.shifts <= store.compiled.taskCount;
      if (latest >= start + later && this.undoTo(level, later)) return this.bookFail(-1, near ? 0 : 1);
    }
    const placed = decisions.levelOfChange(4 * source + (orders.backward ? 2 : 1));
    const chosen = decisions.levelOfChange(store.modeAddress(dependent));
    if (chosen > placed && decisions.kind(chosen) === OPTION && this.undoTo(chosen, 1))
      return this.bookFail(dependent, 2);
    if (!this.bookFail(dependent, 4)) return false;
    if (placed > 0 && placed <= decisions.depth && this.undoTo(placed, behind)) return true;
    return this.undoFurther(dependent);
  }

  /** Steps back from a dead end of the task. @returns false when the dive is dead */
  from(task: number): boolean {
    if (!this.bookFail(task, 4)) return false;
    const lacking = task >= 0 ? this.lacking(task) : 1;
    const level = task >= 0 ? this.culprit(task) : this.decisions.depth;
    if (task >= 0 && this.promote(task, level)) return true;
    if (this.orders.givesUp === true && task >= 0 && this.isAtFront(task) && ++this.hopeless >= HOPELESS) return false;
    if (level > 0 && this.undoTo(level, lacking)) return true;
    return this.undoFurther(task);
  }

  /**
   * What found no place twice is brought forward: decisions are undone, each time twice as many, and the task comes before what was
   * decided there. @returns false when it has been brought to the front already, or failed for the first time
   */
  private promote(task: number, culprit: number): boolean {
    const { decisions, structure, selection } = this;
    const block = structure.block[task] as number;
    const times = this.blocked[block] as number;
    this.blocked[block] = times + 1;
    if (times === 0 && decisions.depth - culprit < MANY) return false;
    const back = decisions.depth - (FEW << Math.min(times, MOST_DOUBLINGS));
    const level = Math.max(1, culprit > 0 ? Math.min(culprit, back) : back);
    if (decisions.depth === 0 || (level === 1 && this.fromStart[block] === 1)) return false;
    if (level === 1) this.fromStart[block] = 1;
    decisions.undoTo(level);
    selection.promote(block);
    this.onUndo();
    this.lastUndone = -1;
    return true;
  }

  private isAtFront(task: number): boolean {
    return this.fromStart[this.structure.block[task] as number] === 1;
  }

  /** Books a dead end. @returns false when there were too many */
  private bookFail(task: number, weight: number): boolean {
    this.fails += weight;
    if (task >= 0) this.trouble[task] = (this.trouble[task] as number) + 1;
    this.propagation.clear();
    return this.fails <= 4 * this.orders.failLimit;
  }

  /** Undoes older and older decisions until one can be turned. */
  private undoFurther(task: number): boolean {
    while (this.decisions.depth > 0) {
      const culprit = task >= 0 ? this.culprit(task) : 0;
      if (this.undoTo(culprit > 0 ? culprit : this.decisions.depth, 1)) return true;
      if (!this.bookFail(-1, 4)) return false;
    }
    return false;
  }

  /** Undoes decisions down to the level (from 1) and takes the other side of that one; `shift` is how far a place moves. */
  private undoTo(level: number, shift: number): boolean {
    const { decisions } = this;
    decisions.undoTo(level);
    this.onUndo();
    // The same place undone again and again: move it on in longer and longer steps.
    const slot = decisions.kind(level) === BOUND ? decisions.a(level) : -1;
    this.repeats = slot >= 0 && slot === this.lastUndone ? this.repeats + 1 : 0;
    this.lastUndone = slot;
    if (this.turn(level, Math.max(shift, this.repeats > 1 ? 1 << Math.min(6, this.repeats - 1) : 1))) return true;
    this.propagation.clear();
    return false;
  }

  /** Takes the other side of an undone decision. */
  private turn(level: number, shift: number): boolean {
    const { store, propagation, decisions } = this;
    const a = decisions.a(level);
    const b = decisions.b(level);
    switch (decisions.kind(level)) {
      case OPTION:
        return store.removeOption(a, b) && propagation.propagate();
      case BOUND:
        return store.raise(a ^ 1, -b + shift) && propagation.propagate();
      default:
        // Another cleaning would most often meet the same: move what wants it, or what soiled it.
        return this.demands.find() && this.fromDemand();
    }
  }

  /** Number (from 1) of the decision that last bounded the task from the far side, 0 when none did. */
  private culprit(task: number): number {
    const { decisions } = this;
    const near = this.orders.backward ? 0 : 1;
    const level = decisions.levelOfEither(4 * task + near, 4 * task + 2 + near);
    return level > 0 ? level : decisions.levelOfEither(4 * task + 1 - near, 4 * task + 3 - near);
  }

  /** Minutes beyond its last possible start until the task would find room. */
  private lacking(task: number): number {
    const { store, propagation, orders } = this;
    const index = store.mode(task);
    if (index < 0 || orders.backward) return 1;
    const mode = store.compiled.modes[index] as CompiledMode;
    const latest = store.latestStart(task);
    const most = store.compiled.horizon - store.shortest(task);
    return Math.max(1, propagation.timetable.firstRoom(mode, latest + 1, most, store.shortest(task)) - latest);
  }
}
