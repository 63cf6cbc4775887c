/**
 * Builds one plan: a schedule-generation scheme on top of propagation.
 *
 * Tasks are taken one by one, by priority among those whose predecessors are placed (serial) or by their first possible start
 * (parallel), and put at their first (backward: last) possible place; what a placed task binds closely is placed next. Choices are made
 * when their task is taken, by trying the options. What happens when a task finds no place is told in `retreat.ts`.
 */
import type { Budget } from '../budget.ts';
import type { Propagation } from '../propagation/propagation.ts';
import type { Store } from '../propagation/store.ts';
import type { Random } from '../random.ts';
import type { Structure } from '../structure.ts';
import { BOUND, Decisions, DEMAND, OPTION } from './decisions.ts';
import { Demands } from './demands.ts';
import { Options } from './options.ts';
import { Retreat } from './retreat.ts';
import { Selection } from './selection.ts';

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
  private readonly retreat: Retreat;
  private demandsDirty = true;
  /** How many of the choices that shape the plan are made, in their order, since a decision was last undone. */
  private shaped = 0;
  /** The same for tasks that are placed or absent, and for choices made, in the order in which the last loose ends are looked for. */
  private finished = 0;
  private chosen = 0;
  /** Whether the option found last by `takeSoonest` is in force. */
  private soonestTaken = false;
  private orders!: DiveOrders;

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
    this.retreat = new Retreat(propagation, structure, this.demands, this.decisions, this.selection, () => {
      this.demandsDirty = true;
      this.forgetPassed();
    });
  }

  /**
   * Builds a plan from what the store knows now; the store must be at a fixpoint. Call `unwind` afterwards in every case.
   *
   * @returns `plan` when every task is placed and every choice made, `dead` when it gave up, `stopped` by the budget
   */
  run(orders: DiveOrders): 'plan' | 'dead' | 'stopped' {
    const { store } = this;
    this.orders = orders;
    this.options.orders = orders;
    this.decisions.begin();
    this.retreat.begin(orders);
    this.selection.begin(orders);
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
          if (!this.decideDemand(0) && !this.retreat.fromDemand()) return 'dead';
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

  /** Dead ends of each task since `forget`, so that callers can bring the hard ones forward. */
  get trouble(): Int32Array {
    return this.retreat.trouble;
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
    if (!propagation.propagate()) return this.retreat.from(task) ? 'again' : 'dead';
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
        return this.retreat.from(task);
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
    if (option < 0) return this.retreat.from(task);
    if (taken) {
      this.demandsDirty = true;
      return true;
    }
    if (store.removeOption(choice, option) && propagation.propagate()) return true;
    propagation.clear();
    return this.retreat.from(task);
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
}
