/**
 * Builds one plan: a schedule-generation scheme on top of propagation.
 *
 * Tasks are taken one by one, by priority among those whose predecessors are placed (serial) or by their first possible start
 * (parallel), and put at their first (backward: last) possible place; what a placed task binds closely is placed next. Choices are made
 * when their task is taken, by trying the options. When a task finds no place, the decision that bounded it last is undone and
 * moved on by what was lacking ("unscheduling", Franck, Neumann and Schwindt 2001), a limited number of times.
 */
import type { Budget } from '../budget.ts';
import type { CompiledMode } from '../compiled.ts';
import type { Propagation } from '../propagation/propagation.ts';
import type { Store } from '../propagation/store.ts';
import type { Random } from '../random.ts';
import type { Structure } from '../structure.ts';
import { BOUND, Decisions, DEMAND, OPTION } from './decisions.ts';
import { Demands } from './demands.ts';
import { Options } from './options.ts';
import { Selection } from './selection.ts';

/** Where no more decisions than this have to be made anew, a block's first dead end is mended without bringing it forward. */
const MANY = 32;
/** Decisions undone, at least, when a block is brought forward for the first time. */
const FEW = 8;
/** Dead ends of what stands at the front already, after which the dive is given up: a dive by another rule is sooner than turning all that came since. */
const HOPELESS = 3;
/** From here on it is all decisions in any case. */
const MOST_DOUBLINGS = 20;

export interface DiveOrders {
  /** Place from the end of the session back. */
  readonly backward: boolean;
  /** Take what can start first, instead of what has the best priority. */
  readonly parallel: boolean;
  /** Priority of each task, smaller first. */
  readonly key: Float64Array;
  /** Option to take for each choice, −1 where it is to be decided. */
  readonly guide: Int32Array;
  /** Times to decide by chance among open options, per cent. */
  readonly whim: number;
  /** The same for choices that decide which tasks there are. */
  readonly shapeWhim: number;
  /** Dead ends allowed. */
  readonly failLimit: number;
  /** Gives up after few dead ends of what stands at the front already: where another dive by another rule can follow. */
  readonly givesUp?: boolean;
  /** Where a place is refused, tries the next one in longer and longer strides: where any plan is better than none. */
  readonly strides?: boolean;
}

export class Dive {
  private readonly store: Store;
  private readonly demands: Demands;
  private readonly decisions: Decisions;
  private readonly selection: Selection;
  private readonly options: Options;
  private fails = 0;
  private lastUndone = -1;
  /** Places moved on near where they were decided. */
  private shifts = 0;
  private repeats = 0;
  /** Dead ends of blocks that cannot come any earlier. */
  private hopeless = 0;
  private demandsDirty = true;
  /** How many of the choices that shape the plan are made, in their order, since a decision was last undone. */
  private shaped = 0;
  /** The same for tasks that are placed or absent, and for choices made, in the order in which the last loose ends are looked for. */
  private finished = 0;
  private chosen = 0;
  /** Whether the option found last by `takeSoonest` is in force. */
  private soonestTaken = false;
  private orders!: DiveOrders;
  /** Dead ends of each block in this dive. */
  private readonly blocked: Int32Array;
  /** 1 where a block was brought forward with every decision undone: it cannot come any earlier. */
  private readonly fromStart: Uint8Array;
  /** Dead ends of each task since `forget`, so that callers can bring the hard ones forward. */
  readonly trouble: Int32Array;

  constructor(
    private readonly propagation: Propagation,
    private readonly structure: Structure,
    random: Random,
    private readonly budget: Budget,
  ) {
    this.store = propagation.store;
    this.options = new Options(propagation, structure, random);
    this.demands = new Demands(propagation);
    this.decisions = new Decisions(this.store.trail);
    this.selection = new Selection(propagation, structure);
    this.trouble = new Int32Array(this.store.compiled.taskCount);
    this.blocked = new Int32Array(structure.blockTasks.start.length);
    this.fromStart = new Uint8Array(structure.blockTasks.start.length);
  }

  /**
   * Builds a plan from what the store knows now; the store must be at a fixpoint. Call `unwind` afterwards in every case.
   *
   * @returns `plan` when every task is placed and every choice made, `dead` when it gave up, `stopped` by the budget
   */
  run(orders: DiveOrders): 'plan' | 'dead' | 'stopped' {
    const { store } = this;
    this.orders = orders;
    this.selection.orders = orders;
    this.options.orders = orders;
    this.decisions.begin();
    this.fails = 0;
    this.shifts = 0;
    this.hopeless = 0;
    this.lastUndone = -1;
    this.blocked.fill(0);
    this.fromStart.fill(0);
    this.selection.forgetPromoted();
    this.demandsDirty = true;
    this.forgetPassed();
    let current = -1;
    let work = store.work;
    for (;;) {
      const stop = this.budget.spend(store.work - work);
      work = store.work;
      if (stop) return 'stopped';
      if (this.demandsDirty) {
        this.demandsDirty = false;
        if (this.demands.find()) {
          this.demandsDirty = true;
          if (!this.decideDemand(0) && !this.retreatFromDemand()) return 'dead';
          current = -1;
          continue;
        }
      }
      const shaping = this.openShaping();
      if (shaping >= 0) {
        if (!this.decideOption(shaping, -1)) return 'dead';
        current = -1;
        continue;
      }
      if (current < 0 || !this.selection.isOpen(current)) current = this.selection.pick();
      if (current < 0) {
        const left = this.finishOne();
        if (left === 'done') {
          // Propagation may have settled the last places by itself, after the last look.
          if (!this.demands.find()) return 'plan';
          this.demandsDirty = true;
          continue;
        }
        if (left === 'dead') return 'dead';
        continue;
      }
      const step = this.advance(current);
      if (step === 'dead') return 'dead';
      if (step === 'again') current = -1;
    }
  }

  /** Takes back everything the dive did. */
  unwind(): void {
    this.propagation.timetable.focus = -1;
    this.decisions.unwind();
  }

  /** Forgets which tasks made trouble. */
  forget(): void {
    this.trouble.fill(0);
  }

  private openShaping(): number {
    const { shaping } = this.structure;
    for (; this.shaped < shaping.length; this.shaped++)
      if (this.store.openOptions(shaping[this.shaped] as number) > 1) return shaping[this.shaped] as number;
    return -1;
  }

  /** One decision for the task: a choice, or its place. */
  private advance(task: number): 'again' | 'same' | 'dead' {
    const { store, structure, propagation, orders } = this;
    const low = 4 * task + (orders.backward ? 3 : 0);
    const before = store.cells[low] as number;
    const block = structure.block[task] as number;
    const { start, items } = structure.blockTasks;
    const first = start[block] as number;
    const last = start[block + 1] as number;
    if (propagation.timetable.focus !== block) {
      propagation.timetable.focus = block;
      for (let k = first; k < last; k++) store.enqueueTask(items[k] as number);
    } else store.enqueueTask(task);
    if (!propagation.propagate()) return this.retreat(task) ? 'again' : 'dead';
    if (!this.selection.isOpen(task)) {
      this.demandsDirty = true;
      return 'again';
    }
    if (orders.parallel && !this.selection.isAnchored(task) && store.cells[low] !== before) return 'again';
    for (let k = first; k < last; k++) {
      const other = items[k] as number;
      if (structure.isContainer[other] === 0 || !store.isPresent(other)) continue;
      const choice = this.openOwnChoice(other);
      if (choice >= 0) return this.decideOption(choice, task) ? 'same' : 'dead';
    }
    const choice = this.openOwnChoice(task);
    if (choice >= 0) return this.decideOption(choice, task) ? 'same' : 'dead';
    if (!this.selection.isAnchored(task)) return this.decideBound(low, task) ? 'same' : 'dead';
    // The length counts in a total: as long as there is room for.
    return this.decideBound(orders.backward ? 4 * task : 4 * task + 3, task) ? 'same' : 'dead';
  }

  private openOwnChoice(task: number): number {
    const { start, items } = this.structure.ownChoices;
    const until = start[task + 1] as number;
    for (let k = start[task] as number; k < until; k++) {
      const choice = items[k] as number;
      if (this.structure.onDemand[choice] === 1 && this.store.compiled.taskChoice[task] !== choice) continue;
      if (this.store.openOptions(choice) > 1) return choice;
    }
    return -1;
  }

  /** Containers, lengths without a total, and choices that nothing asked about. */
  private finishOne(): 'done' | 'dead' | 'more' {
    const { store } = this;
    const { optionCount, taskCount } = store.compiled;
    let isPassing = true;
    for (let task = this.finished; task < taskCount; task++) {
      if (!store.isPresent(task) || store.isPlaced(task)) {
        isPassing &&= store.isPresent(task) || store.isAbsent(task);
        if (isPassing) this.finished = task + 1;
        continue;
      }
      const choice = this.openOwnChoice(task);
      if (choice >= 0) return this.decideOption(choice, task) ? 'more' : 'dead';
      if (!this.isStartFixed(task)) {
        return this.decideBound(4 * task + 1, task) ? 'more' : 'dead';
      }
      return this.decideBound(4 * task + 2, task) ? 'more' : 'dead';
    }
    for (; this.chosen < optionCount.length; this.chosen++) {
      if (store.openOptions(this.chosen) === 1) continue;
      return this.decideOption(this.chosen, -1) ? 'more' : 'dead';
    }
    return 'done';
  }

  /** Looks at all again from the first on: what was passed may be open once a decision is undone. */
  private forgetPassed(): void {
    this.shaped = 0;
    this.finished = 0;
    this.chosen = 0;
  }

  private isStartFixed(task: number): boolean {
    return (this.store.cells[4 * task] as number) + (this.store.cells[4 * task + 1] as number) === 0;
  }

  /**
   * Fixes an endpoint at the bound in the slot, or as near to it as is possible; in strides where that is asked.
   *
   * @returns false when the dive is dead
   */
  private decideBound(slot: number, task: number): boolean {
    const { store, propagation, decisions, orders } = this;
    for (let tries = 0; ; tries++) {
      const value = store.cells[slot] as number;
      decisions.push(BOUND, slot ^ 1, -value);
      if (store.raise(slot ^ 1, -value) && propagation.propagate()) {
        this.demandsDirty = true;
        return true;
      }
      propagation.clear();
      decisions.pop();
      // What stands in the way is often an hour of other work, and each minute of it would cost as much to refute as the first.
      const stride = orders.strides === true ? Math.max(1, tries) : 1;
      if (!(store.raise(slot, value + stride) && propagation.propagate())) {
        propagation.clear();
        return this.retreat(task);
      }
      if (store.isAbsent(task)) return true;
    }
  }

  /** Decides a choice. @returns false when the dive is dead */
  private decideOption(choice: number, task: number): boolean {
    const { store, propagation } = this;
    let option = this.options.led(choice, task);
    let taken = option >= 0 && this.take(choice, option);
    if (option < 0 && task >= 0) {
      option = this.takeSoonest(choice, task);
      taken = this.soonestTaken;
    }
    if (option < 0) return this.retreat(task);
    if (taken) {
      this.demandsDirty = true;
      return true;
    }
    if (store.removeOption(choice, option) && propagation.propagate()) return true;
    propagation.clear();
    return this.retreat(task);
  }

  /** Takes an option as the newest decision. @returns false, with nothing done, where that is contradictory */
  private take(choice: number, option: number): boolean {
    const { store, propagation, decisions } = this;
    decisions.push(OPTION, choice, option);
    if (store.assign(choice, option) && propagation.propagate()) return true;
    propagation.clear();
    decisions.pop();
    return false;
  }

  /**
   * Takes the option under which the task is soonest (backward: latest), ties by chance. Each is tried out, the most promising first, until no
   * other can be sooner than the best by the room that is left for its mode.
   *
   * @returns the option; `soonestTaken` says whether it is in force, or all are contradictory
   */
  private takeSoonest(choice: number, task: number): number {
    const { decisions } = this;
    const { options, draws, promises } = this.options.candidates(choice, task);
    let best = -1;
    let bestMeasure = Infinity;
    let current = -1;
    for (;;) {
      let next = -1;
      for (let k = 0; k < options.length; k++)
        if (next < 0 || (promises[k] as number) < (promises[next] as number)) next = k;
      if (next < 0 || (promises[next] as number) >= bestMeasure) break;
      promises[next] = Infinity;
      if (current >= 0) decisions.pop();
      current = -1;
      const option = options[next] as number;
      if (best < 0) best = option;
      if (!this.take(choice, option)) continue;
      current = option;
      const measure = this.options.measure(task, draws[next] as number);
      if (measure >= bestMeasure) continue;
      best = option;
      bestMeasure = measure;
    }
    this.soonestTaken = current >= 0 && current === best;
    if (current >= 0 && current !== best) {
      decisions.pop();
      this.soonestTaken = this.take(choice, best);
    }
    return best;
  }

  /** Serves the demand found last by its candidates from the given one on. */
  private decideDemand(from: number): boolean {
    const { propagation, demands, decisions } = this;
    const candidates = demands.candidates();
    for (let k = from; k < candidates.length; k++) {
      decisions.push(DEMAND, k, 0);
      if (demands.serve(candidates[k] as number) && propagation.propagate()) return true;
      propagation.clear();
      decisions.pop();
    }
    return false;
  }

  /**
   * Steps back when nothing serves a demand. For a cleaning: the task in want comes later, when a cleaning is left that has room
   * then; otherwise its place is chosen anew, or what soiled it is put after it.
   */
  private retreatFromDemand(): boolean {
    const { demands, store, orders, decisions } = this;
    const { dependent, source, kind } = demands;
    if (kind !== 'clean') return this.retreat(dependent);
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
  private retreat(task: number): boolean {
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
    this.demandsDirty = true;
    this.forgetPassed();
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
    this.demandsDirty = true;
    this.forgetPassed();
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
        return this.demands.find() && this.retreatFromDemand();
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
