/**
 * Which task a dive places next.
 *
 * What is half done goes first, then what is urgent: tasks that end a container already begun (its place is not free until then), and
 * tasks that a lag ties closely to something placed; of these the one with the least time left. Otherwise the best by priority among
 * those whose predecessors are placed. Backward, everything is mirrored: ends instead of starts, successors instead of predecessors.
 */
import type { Propagation } from '../propagation/propagation.ts';
import type { Chain } from '../propagation/chain.ts';
import { CHAINS, SEEN_BY_SELECTION, type Store } from '../propagation/store.ts';
import { turnedAround, type SparseLists } from '../sparse-lists.ts';
import type { Structure } from '../structure.ts';
import type { DiveOrders } from './dive.ts';

/** A task tied to what is placed is urgent when it has no more than this much play, minutes. */
const URGENT = 20;

export class Selection {
  private orders!: DiveOrders;
  private readonly store: Store;
  /** For each block when it was brought forward, 0 where it was not; and these blocks in their order. */
  private readonly promoted: Uint8Array;
  private readonly forward: number[] = [];
  /** Tasks that are anchored with something left to decide. */
  private readonly loose: Chain;
  /** Tasks not anchored that are tied to an anchored one, or end (backward: begin) an anchored container. */
  private readonly tied: Chain;
  /** Tasks not anchored for which no other had to be placed first when they were last looked at. */
  private readonly ready: Chain;
  /** All tasks not anchored. Containers are in none of these three. */
  private readonly open: Chain;
  /** For each container the tasks that end it, and those that begin it. */
  private readonly closers: SparseLists;
  private readonly openers: SparseLists;

  constructor(
    private readonly propagation: Propagation,
    private readonly structure: Structure,
  ) {
    const { store } = propagation;
    const { taskCount } = store.compiled;
    this.store = store;
    this.promoted = new Uint8Array(structure.blockTasks.start.length);
    this.loose = store.chain(CHAINS.loose);
    this.tied = store.chain(CHAINS.tied);
    this.ready = store.chain(CHAINS.ready);
    this.open = store.chain(CHAINS.open);
    this.closers = turnedAround(structure.closes, taskCount);
    this.openers = turnedAround(structure.opens, taskCount);
  }

  /** A dive begins; what is noted from here on goes onto the trail. */
  begin(orders: DiveOrders): void {
    const { store, structure, open, ready, forward } = this;
    this.orders = orders;
    for (const block of forward) this.promoted[block] = 0;
    forward.length = 0;
    for (let task = store.compiled.taskCount - 1; task >= 0; task--) {
      if (structure.isContainer[task] === 1 || store.isAbsent(task) || this.isAnchored(task)) continue;
      open.add(task);
      if (this.openPredecessor(task) < 0) ready.add(task);
    }
  }

  /** Lets a block go before all that is not urgent, and after those brought forward before it. */
  promote(block: number): void {
    if (this.promoted[block] === 1) return;
    this.promoted[block] = 1;
    this.forward.push(block);
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
    this.gather();
    const loose = this.firstLoose();
    if (loose >= 0) return loose;
    let urgent = this.mostUrgent();
    if (urgent < 0) urgent = this.firstForward();
    if (urgent < 0) {
      const best = this.bestReady();
      return best >= 0 ? best : this.soonestOpen();
    }
    for (let steps = 0; steps < 20; steps++) {
      const first = this.openPredecessor(urgent);
      if (first < 0) break;
      urgent = first;
    }
    return urgent;
  }

  /** Notes what follows from tasks anchored since the last look: what is tied to them, and what they alone kept waiting. */
  private gather(): void {
    const { store, structure } = this;
    const { backward } = this.orders;
    const end = backward ? 1 : 0;
    const seen = store.searched + SEEN_BY_SELECTION;
    const before = store.cells[seen] as number;
    const count = store.cells[store.anchoredCount + end] as number;
    if (count === before) return;
    for (let k = before; k < count; k++) {
      const task = store.anchored[end][k] as number;
      if (!this.isDecided(task)) this.loose.add(task);
      this.addOpen(this.tied, backward ? structure.bounders : structure.raisers, task, false);
      this.addOpen(this.tied, backward ? this.openers : this.closers, task, false);
      this.addOpen(this.ready, backward ? structure.before : structure.after, task, true);
    }
    store.work += 1 + ((count - before) >> 2);
    store.trail.set(seen, count);
  }

  /** Adds the tasks of a list that are open, or only those of them that wait for no other, to a chain. */
  private addOpen(chain: Chain, { start, items }: SparseLists, of: number, waitingForNone: boolean): void {
    const { structure, store } = this;
    const until = start[of + 1] as number;
    for (let k = start[of] as number; k < until; k++) {
      const task = items[k] as number;
      if (chain.has(task) || structure.isContainer[task] === 1 || this.isAnchored(task) || store.isAbsent(task))
        continue;
      if (!waitingForNone || this.openPredecessor(task) < 0) chain.add(task);
    }
  }

  /** True where nothing is left to decide of an anchored task. */
  private isDecided(task: number): boolean {
    const { store } = this;
    return store.isPresent(task) ? store.isPlaced(task) || !this.wantsMore(task) : store.isAbsent(task);
  }

  private firstLoose(): number {
    const { store, loose } = this;
    let first = -1;
    let last = -1;
    for (let task = loose.first(); task >= 0;) {
      const next = loose.next(task);
      if (this.isDecided(task)) loose.remove(task, last);
      else {
        if (store.isPresent(task) && (first < 0 || task < first)) first = task;
        last = task;
      }
      task = next;
    }
    return first;
  }

  /** Of those that are tied closely, or end (begin) what is begun (ended), the one with the least time left; −1 where there is none. */
  private mostUrgent(): number {
    const { store, tied } = this;
    const far = this.orders.backward ? 2 : 1;
    let urgent = -1;
    let last = -1;
    let count = 0;
    for (let task = tied.first(); task >= 0; count++) {
      const next = tied.next(task);
      if (this.isAnchored(task) || store.isAbsent(task)) tied.remove(task, last);
      else {
        if (
          store.isPresent(task) &&
          (this.closesOpen(task) || (this.width(task) <= URGENT && this.isBound(task))) &&
          (urgent < 0 || this.isSooner(4 * task + far, 4 * urgent + far, urgent - task))
        )
          urgent = task;
        last = task;
      }
      task = next;
    }
    store.work += count >> 4;
    return urgent;
  }

  /** The first open task of the blocks brought forward, −1 where there is none. */
  private firstForward(): number {
    const { store, structure, forward } = this;
    const { start, items } = structure.blockTasks;
    for (const block of forward) {
      const until = start[block + 1] as number;
      for (let k = start[block] as number; k < until; k++) {
        const task = items[k] as number;
        if (structure.isContainer[task] === 0 && store.isPresent(task) && !this.isAnchored(task)) return task;
      }
    }
    return -1;
  }

  /** The best by priority of those that wait for no other, −1 where there is none. */
  private bestReady(): number {
    const { store, ready } = this;
    const low = this.orders.backward ? 3 : 0;
    let best = -1;
    let last = -1;
    let count = 0;
    for (let task = ready.first(); task >= 0; count++) {
      const next = ready.next(task);
      if (this.isAnchored(task) || store.isAbsent(task)) ready.remove(task, last);
      else {
        // A lag that holds only now may have put another before it.
        if (store.isPresent(task) && (best < 0 || this.isBetter(task, best, low)) && this.openPredecessor(task) < 0)
          best = task;
        last = task;
      }
      task = next;
    }
    store.work += count >> 4;
    return best;
  }

  /** Where all wait for each other: the one that can start first (backward: end last), −1 where there is none. */
  private soonestOpen(): number {
    const { store, open } = this;
    const low = this.orders.backward ? 3 : 0;
    let soonest = -1;
    let last = -1;
    let count = 0;
    for (let task = open.first(); task >= 0; count++) {
      const next = open.next(task);
      if (this.isAnchored(task) || store.isAbsent(task)) open.remove(task, last);
      else {
        if (store.isPresent(task) && (soonest < 0 || this.isSooner(4 * soonest + low, 4 * task + low, soonest - task)))
          soonest = task;
        last = task;
      }
      task = next;
    }
    store.work += count >> 4;
    return soonest;
  }

  /** Minutes between the first and the last possible start (backward: end). */
  private width(task: number): number {
    const at = 4 * task + (this.orders.backward ? 2 : 0);
    return -(this.store.cells[at] as number) - (this.store.cells[at + 1] as number);
  }

  /** True when the first slot holds more than the second; where both are equal, when `tie` is above 0. */
  private isSooner(a: number, b: number, tie: number): boolean {
    const { cells } = this.store;
    const difference = (cells[a] as number) - (cells[b] as number);
    return difference !== 0 ? difference > 0 : tie > 0;
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
