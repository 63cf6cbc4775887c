/**
 * Builds one plan: a schedule-generation scheme on top of propagation.
 *
 * Tasks are taken one by one, by priority among those whose predecessors are placed (serial) or by their first possible start
 * (parallel), and put at their first (backward: last) possible place; what a placed task binds closely is placed next. Choices are made
 * when their task is taken, by trying the options. When a task finds no place, the decision that bounded it last is undone and
 * moved on by what was lacking ("unscheduling", Franck, Neumann and Schwindt 2001), a limited number of times.
 */
import type { Budget } from '../budget.ts';
import type { CompiledMode } from '../compile-problem.ts';
import type { Propagation } from '../propagation/propagation.ts';
import type { Store } from '../propagation/store.ts';
import type { Random } from '../random.ts';
import type { Structure } from '../structure.ts';
import { Demands } from './demands.ts';

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
}

const OPTION = 0;
const BOUND = 1;
const DEMAND = 2;
/** A task is urgent when it was bounded by what is placed and has no more than this much play, minutes. */
const URGENT = 20;

export class Dive {
  private readonly store: Store;
  private readonly demands: Demands;
  private frameMark = new Int32Array(256);
  private frameKind = new Int32Array(256);
  private frameA = new Int32Array(256);
  private frameB = new Int32Array(256);
  private depth = 0;
  private fails = 0;
  private lastUndone = -1;
  private repeats = 0;
  private baseMark = 0;
  private demandsDirty = true;
  private readonly taskCount: number;
  private orders!: DiveOrders;
  /** Dead ends of each task since `forget`, so that callers can bring the hard ones forward. */
  readonly trouble: Int32Array;

  constructor(
    private readonly propagation: Propagation,
    private readonly structure: Structure,
    private readonly random: Random,
    private readonly budget: Budget,
  ) {
    this.store = propagation.store;
    this.demands = new Demands(propagation);
    this.taskCount = this.store.compiled.taskCount;
    this.trouble = new Int32Array(this.store.compiled.taskCount);
  }

  /**
   * Builds a plan from what the store knows now; the store must be at a fixpoint. Call `unwind` afterwards in every case.
   *
   * @returns `plan` when every task is placed and every choice made, `dead` when it gave up, `stopped` by the budget
   */
  run(orders: DiveOrders): 'plan' | 'dead' | 'stopped' {
    const { store } = this;
    this.orders = orders;
    this.depth = 0;
    this.fails = 0;
    this.lastUndone = -1;
    this.demandsDirty = true;
    this.baseMark = store.trail.mark();
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
      if (current < 0 || !this.isOpen(current)) current = this.pick();
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
    this.store.trail.undo(this.baseMark);
    this.depth = 0;
  }

  /** Forgets which tasks made trouble. */
  forget(): void {
    this.trouble.fill(0);
  }

  private openShaping(): number {
    const { shaping } = this.structure;
    for (let k = 0; k < shaping.length; k++)
      if (this.store.openOptions(shaping[k] as number) > 1) return shaping[k] as number;
    return -1;
  }

  /** True while the task is present and its start (backward: end) or mode is open, or its length counts in a total. */
  private isOpen(task: number): boolean {
    const { store } = this;
    return store.isPresent(task) && !store.isPlaced(task) && (!this.isAnchored(task) || this.wantsMore(task));
  }

  private isAnchored(task: number): boolean {
    const at = 4 * task + (this.orders.backward ? 2 : 0);
    return (this.store.cells[at] as number) + (this.store.cells[at + 1] as number) === 0;
  }

  private wantsMore(task: number): boolean {
    return this.store.mode(task) < 0 || this.propagation.totals.has(task);
  }

  /** The next task to place, −1 when only containers and loose ends are left. */
  private pick(): number {
    const { store, structure, orders } = this;
    const { cells } = store;
    const low = orders.backward ? 3 : 0;
    const count = this.taskCount;
    let urgent = -1;
    let best = -1;
    let fallback = -1;
    for (let task = 0; task < count; task++) {
      if (!store.isPresent(task)) continue;
      const at = 4 * task + low;
      const width = -(cells[at] as number) - (cells[at ^ 1] as number);
      if (width === 0) {
        if (store.isPlaced(task) || !this.wantsMore(task)) continue;
        return task;
      }
      if (structure.isContainer[task] === 1) continue;
      if (this.closesOpen(task) || (width <= URGENT && this.isBound(task))) {
        if (urgent < 0 || (cells[at ^ 1] as number) > (cells[(4 * urgent + low) ^ 1] as number)) urgent = task;
        continue;
      }
      if (urgent >= 0) continue;
      if (fallback < 0 || (cells[at] as number) < (cells[4 * fallback + low] as number)) fallback = task;
      if (best >= 0 && !this.isBetter(task, best, low)) continue;
      if (this.openPredecessor(task) < 0) best = task;
    }
    store.work += count >> 4;
    if (urgent < 0) return best >= 0 ? best : fallback;
    for (let steps = 0; steps < 20; steps++) {
      const before = this.openPredecessor(urgent);
      if (before < 0) break;
      urgent = before;
    }
    return urgent;
  }

  /** True when the task ends (backward: begins) a container that is already begun (ended): what it holds is not free until then. */
  private closesOpen(task: number): boolean {
    const { structure, orders } = this;
    const lists = orders.backward ? structure.opens : structure.closes;
    const until = lists.start[task + 1] as number;
    for (let k = lists.start[task] as number; k < until; k++) {
      const container = lists.items[k] as number;
      if (this.isAnchored(container) && this.store.isPresent(container)) return true;
    }
    return false;
  }

  /** True when a lag from (backward: to) the task leads to one that is placed already. */
  private isBound(task: number): boolean {
    const { structure, orders, store } = this;
    const lists = orders.backward ? structure.raisers : structure.bounders;
    const conditions = orders.backward ? structure.raiserCondition : structure.bounderCondition;
    const until = lists.start[task + 1] as number;
    for (let k = lists.start[task] as number; k < until; k++)
      if (store.isTrue(conditions[k] as number) && this.isAnchored(lists.items[k] as number)) return true;
    return false;
  }

  private isBetter(task: number, best: number, low: number): boolean {
    const { key, parallel } = this.orders;
    if (parallel) {
      const difference = (this.store.cells[4 * task + low] as number) - (this.store.cells[4 * best + low] as number);
      if (difference !== 0) return difference < 0;
    }
    return (key[task] as number) < (key[best] as number);
  }

  /** A present task that must be placed before this one and is not, −1 when there is none. */
  private openPredecessor(task: number): number {
    const { store, structure, orders } = this;
    const lists = orders.backward ? structure.after : structure.before;
    const conditions = orders.backward ? structure.afterCondition : structure.beforeCondition;
    const until = lists.start[task + 1] as number;
    for (let k = lists.start[task] as number; k < until; k++) {
      const other = lists.items[k] as number;
      if (!store.isTrue(conditions[k] as number)) continue;
      if (!this.isAnchored(other)) return other;
    }
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
    if (!this.isOpen(task)) {
      this.demandsDirty = true;
      return 'again';
    }
    if (orders.parallel && !this.isAnchored(task) && store.cells[low] !== before) return 'again';
    for (let k = first; k < last; k++) {
      const other = items[k] as number;
      if (structure.isContainer[other] === 0 || !store.isPresent(other)) continue;
      const choice = this.openOwnChoice(other);
      if (choice >= 0) return this.decideOption(choice, task) ? 'same' : 'dead';
    }
    const choice = this.openOwnChoice(task);
    if (choice >= 0) return this.decideOption(choice, task) ? 'same' : 'dead';
    if (!this.isAnchored(task)) return this.decideBound(low, task) ? 'same' : 'dead';
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
    const { optionCount } = store.compiled;
    for (let task = 0; task < this.taskCount; task++) {
      if (!store.isPresent(task) || store.isPlaced(task)) continue;
      const choice = this.openOwnChoice(task);
      if (choice >= 0) return this.decideOption(choice, task) ? 'more' : 'dead';
      if (!this.isStartFixed(task)) {
        return this.decideBound(4 * task + 1, task) ? 'more' : 'dead';
      }
      return this.decideBound(4 * task + 2, task) ? 'more' : 'dead';
    }
    for (let choice = 0; choice < optionCount.length; choice++) {
      if (store.openOptions(choice) === 1) continue;
      return this.decideOption(choice, -1) ? 'more' : 'dead';
    }
    return 'done';
  }

  private isStartFixed(task: number): boolean {
    return (this.store.cells[4 * task] as number) + (this.store.cells[4 * task + 1] as number) === 0;
  }

  // Decisions.

  private push(kind: number, a: number, b: number): void {
    if (this.depth === this.frameMark.length) this.grow();
    this.frameMark[this.depth] = this.store.trail.mark();
    this.frameKind[this.depth] = kind;
    this.frameA[this.depth] = a;
    this.frameB[this.depth] = b;
    this.depth++;
  }

  private grow(): void {
    const larger = (old: Int32Array): Int32Array<ArrayBuffer> => {
      const next = new Int32Array(old.length * 2);
      next.set(old);
      return next;
    };
    this.frameMark = larger(this.frameMark);
    this.frameKind = larger(this.frameKind);
    this.frameA = larger(this.frameA);
    this.frameB = larger(this.frameB);
  }

  /** Undoes the newest decision. */
  private pop(): void {
    this.depth--;
    this.store.trail.undo(this.frameMark[this.depth] as number);
  }

  /** Fixes an endpoint at the bound in the slot, or as near to it as is possible. @returns false when the dive is dead */
  private decideBound(slot: number, task: number): boolean {
    const { store, propagation } = this;
    for (;;) {
      const value = store.cells[slot] as number;
      this.push(BOUND, slot ^ 1, -value);
      if (store.raise(slot ^ 1, -value) && propagation.propagate()) {
        this.demandsDirty = true;
        return true;
      }
      propagation.clear();
      this.pop();
      if (!(store.raise(slot, value + 1) && propagation.propagate())) {
        propagation.clear();
        return this.retreat(task);
      }
      if (store.isAbsent(task)) return true;
    }
  }

  /** Decides a choice. @returns false when the dive is dead */
  private decideOption(choice: number, task: number): boolean {
    const { store, propagation } = this;
    const option = this.bestOption(choice, task);
    if (option < 0) return this.retreat(task);
    this.push(OPTION, choice, option);
    if (store.assign(choice, option) && propagation.propagate()) {
      this.demandsDirty = true;
      return true;
    }
    propagation.clear();
    this.pop();
    if (store.removeOption(choice, option) && propagation.propagate()) return true;
    propagation.clear();
    return this.retreat(task);
  }

  private bestOption(choice: number, task: number): number {
    const { store, structure, orders, propagation, random } = this;
    const guided = orders.guide[choice] as number;
    if (guided >= 0 && store.isAlive(choice, guided)) return guided;
    const { start, items } = structure.leanest;
    const from = start[choice] as number;
    const until = start[choice + 1] as number;
    const whim = structure.shapes[choice] === 1 ? orders.shapeWhim : orders.whim;
    if (whim > 0 && random.percent(whim)) {
      let pick = random.below(store.openOptions(choice));
      for (let k = from; k < until; k++)
        if (store.isAlive(choice, items[k] as number) && pick-- === 0) return items[k] as number;
    }
    if (task < 0) {
      for (let k = from; k < until; k++) if (store.isAlive(choice, items[k] as number)) return items[k] as number;
      return -1;
    }
    let best = -1;
    let bestMeasure = Infinity;
    for (let k = from; k < until; k++) {
      const option = items[k] as number;
      if (!store.isAlive(choice, option)) continue;
      const mark = store.trail.mark();
      let measure = Infinity;
      if (store.assign(choice, option) && propagation.propagate()) measure = this.measure(task);
      else propagation.clear();
      store.trail.undo(mark);
      if (best < 0 || measure < bestMeasure) {
        best = option;
        bestMeasure = measure;
      }
    }
    return best;
  }

  /** How late (backward: early) the task would be, less is better; ties by chance. */
  private measure(task: number): number {
    const { store, orders, random } = this;
    const slots = orders.backward ? 4 * task + 1 : 4 * task + 2;
    const other = orders.backward ? 4 * task + 3 : 4 * task;
    const late = (store.cells[slots] as number) + (store.cells[other] as number);
    return late * 8 + random.below(8);
  }

  /** Serves the demand found last by its candidates from the given one on. */
  private decideDemand(from: number): boolean {
    const { propagation, demands } = this;
    const candidates = demands.candidates();
    for (let k = from; k < candidates.length; k++) {
      this.push(DEMAND, k, 0);
      if (demands.serve(candidates[k] as number) && propagation.propagate()) return true;
      propagation.clear();
      this.pop();
    }
    return false;
  }

  /**
   * Steps back when nothing serves a demand. For a cleaning: the task in want comes later, when a cleaning is left that has room
   * then; otherwise its place is chosen anew, or what soiled it is put after it.
   */
  private retreatFromDemand(): boolean {
    const { demands, store, orders } = this;
    const { dependent, source, kind } = demands;
    if (kind !== 'clean') return this.retreat(dependent);
    this.propagation.clear();
    const { trail } = store;
    const start = store.earliestStart(dependent);
    const behind = Math.max(1, store.earliestEnd(dependent) - store.earliestStart(source));
    const later = demands.room() - start;
    if (later > 0 && !orders.backward) {
      const level = this.levelOf(trail.lastChange(4 * dependent + 1));
      const latest = level > 0 ? -trail.valueAt(4 * dependent + 1, this.frameMark[level - 1] as number) : 0;
      if (latest >= start + later && this.undoTo(level, later)) return this.bookFail(-1, 1);
    }
    const placed = this.levelOf(trail.lastChange(4 * source + (orders.backward ? 2 : 1)));
    const chosen = this.levelOf(trail.lastChange(store.modeAddress(dependent)));
    if (chosen > placed && this.frameKind[chosen - 1] === OPTION && this.undoTo(chosen, 1))
      return this.bookFail(dependent, 2);
    if (!this.bookFail(dependent, 4)) return false;
    if (placed > 0 && placed <= this.depth && this.undoTo(placed, behind)) return true;
    return this.undoFurther(dependent);
  }

  /** Steps back from a dead end of the task. @returns false when the dive is dead */
  private retreat(task: number): boolean {
    if (!this.bookFail(task, 4)) return false;
    const lacking = task >= 0 ? this.lacking(task) : 1;
    const level = task >= 0 ? this.culprit(task) : this.depth;
    if (level > 0 && this.undoTo(level, lacking)) return true;
    return this.undoFurther(task);
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
    while (this.depth > 0) {
      const culprit = task >= 0 ? this.culprit(task) : 0;
      if (this.undoTo(culprit > 0 ? culprit : this.depth, 1)) return true;
      if (!this.bookFail(-1, 4)) return false;
    }
    return false;
  }

  /** Undoes decisions down to the level (from 1) and takes the other side of that one; `shift` is how far a place moves. */
  private undoTo(level: number, shift: number): boolean {
    this.depth = level - 1;
    this.store.trail.undo(this.frameMark[this.depth] as number);
    this.demandsDirty = true;
    // The same place undone again and again: move it on in longer and longer steps.
    const slot = this.frameKind[this.depth] === BOUND ? (this.frameA[this.depth] as number) : -1;
    this.repeats = slot >= 0 && slot === this.lastUndone ? this.repeats + 1 : 0;
    this.lastUndone = slot;
    if (this.turn(this.depth, Math.max(shift, this.repeats > 1 ? 1 << Math.min(6, this.repeats - 1) : 1))) return true;
    this.propagation.clear();
    return false;
  }

  /** Takes the other side of an undone decision. */
  private turn(frame: number, shift: number): boolean {
    const { store, propagation } = this;
    const a = this.frameA[frame] as number;
    const b = this.frameB[frame] as number;
    switch (this.frameKind[frame]) {
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
    const { trail } = this.store;
    const near = this.orders.backward ? 0 : 1;
    let at = Math.max(trail.lastChange(4 * task + near), trail.lastChange(4 * task + 2 + near));
    if (at < this.baseMark) at = Math.max(trail.lastChange(4 * task + 1 - near), trail.lastChange(4 * task + 3 - near));
    return this.levelOf(at);
  }

  /** Number (from 1) of the decision in force at a place of the log, 0 for places before all decisions. */
  private levelOf(at: number): number {
    if (at < this.baseMark) return 0;
    let level = this.depth;
    while (level > 0 && (this.frameMark[level - 1] as number) > at) level--;
    return level;
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
