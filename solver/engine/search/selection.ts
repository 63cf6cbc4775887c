/**
 * Which task a dive places next.
 *
 * What is half done goes first, then what is urgent: tasks that end a container already begun (its place is not free until then), and
 * tasks that a lag ties closely to something placed; of these the one with the least time left. Otherwise the best by priority among
 * those whose predecessors are placed. Backward, everything is mirrored: ends instead of starts, successors instead of predecessors.
 */
import type { Propagation } from '../propagation/propagation.ts';
import type { Store } from '../propagation/store.ts';
import type { Structure } from '../structure.ts';
import type { DiveOrders } from './dive.ts';

/** A task tied to what is placed is urgent when it has no more than this much play, minutes. */
const URGENT = 20;

export class Selection {
  /** Set by the dive before it begins. */
  orders!: DiveOrders;
  private readonly store: Store;
  /** For each block when it was brought forward, 0 where it was not. */
  private readonly promoted: Int32Array;
  private promotions = 0;
  /** All tasks, those that nothing is left to decide of in front; how many these are is kept on the trail. */
  private readonly tasks: Int32Array;

  constructor(
    private readonly propagation: Propagation,
    private readonly structure: Structure,
  ) {
    this.store = propagation.store;
    this.promoted = new Int32Array(structure.blockTasks.start.length);
    this.tasks = Int32Array.from({ length: this.store.compiled.taskCount }, (_, task) => task);
  }

  /** Lets a block go before all that is not urgent, and after those brought forward before it. */
  promote(block: number): void {
    if (this.promoted[block] === 0) this.promoted[block] = ++this.promotions;
  }

  forgetPromoted(): void {
    if (this.promotions === 0) return;
    this.promoted.fill(0);
    this.promotions = 0;
  }

  /** True while the task is present and its start (backward: end) or mode is open, or its length counts in a total. */
  isOpen(task: number): boolean {
    const { store } = this;
    return store.isPresent(task) && !store.isPlaced(task) && (!this.isAnchored(task) || this.wantsMore(task));
  }

  isAnchored(task: number): boolean {
    const at = 4 * task + (this.orders.backward ? 2 : 0);
    return (this.store.cells[at] as number) + (this.store.cells[at + 1] as number) === 0;
  }

  private wantsMore(task: number): boolean {
    return this.store.mode(task) < 0 || this.propagation.totals.has(task);
  }

  /** The next task to place, −1 when only containers and loose ends are left. Among equals it is the one of the lowest number. */
  pick(): number {
    const { store, structure, orders, tasks } = this;
    const { cells } = store;
    const low = orders.backward ? 3 : 0;
    const { taskCount } = store.compiled;
    const before = cells[store.decided] as number;
    let decided = before;
    let loose = -1;
    let urgent = -1;
    let best = -1;
    let fallback = -1;
    let forward = -1;
    for (let k = before; k < taskCount; k++) {
      const task = tasks[k] as number;
      if (!store.isPresent(task)) {
        if (store.isAbsent(task)) this.swap(k, decided++);
        continue;
      }
      const at = 4 * task + low;
      const width = -(cells[at] as number) - (cells[at ^ 1] as number);
      if (width === 0) {
        if (store.isPlaced(task) || !this.wantsMore(task)) this.swap(k, decided++);
        else if (loose < 0 || task < loose) loose = task;
        continue;
      }
      if (loose >= 0 || structure.isContainer[task] === 1) continue;
      if (this.closesOpen(task) || (width <= URGENT && this.isBound(task))) {
        if (urgent < 0 || this.isSooner(at ^ 1, (4 * urgent + low) ^ 1, urgent - task)) urgent = task;
        continue;
      }
      if (urgent >= 0) continue;
      if (this.promotions > 0 && this.comesForward(task, forward)) {
        forward = task;
        continue;
      }
      if (forward >= 0) continue;
      if (fallback < 0 || this.isSooner(4 * fallback + low, at, fallback - task)) fallback = task;
      if (best >= 0 && !this.isBetter(task, best, low)) continue;
      if (this.openPredecessor(task) < 0) best = task;
    }
    if (decided > before) store.trail.set(store.decided, decided);
    store.work += (taskCount - before) >> 4;
    if (loose >= 0) return loose;
    if (urgent < 0) urgent = forward;
    if (urgent < 0) return best >= 0 ? best : fallback;
    for (let steps = 0; steps < 20; steps++) {
      const first = this.openPredecessor(urgent);
      if (first < 0) break;
      urgent = first;
    }
    return urgent;
  }

  private swap(a: number, b: number): void {
    const { tasks } = this;
    const task = tasks[a] as number;
    tasks[a] = tasks[b] as number;
    tasks[b] = task;
  }

  /** True when the first slot holds more than the second; where both are equal, when `tie` is above 0. */
  private isSooner(a: number, b: number, tie: number): boolean {
    const { cells } = this.store;
    const difference = (cells[a] as number) - (cells[b] as number);
    return difference !== 0 ? difference > 0 : tie > 0;
  }

  /** True when the task's block was brought forward, and before that of the other task (−1: none). */
  private comesForward(task: number, other: number): boolean {
    const { block } = this.structure;
    const own = this.promoted[block[task] as number] as number;
    if (own === 0 || other < 0) return own > 0;
    const difference = own - (this.promoted[block[other] as number] as number);
    return difference !== 0 ? difference < 0 : task < other;
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
    const difference = (key[task] as number) - (key[best] as number);
    return difference !== 0 ? difference < 0 : task < best;
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
}
