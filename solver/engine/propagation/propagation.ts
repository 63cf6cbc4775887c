/**
 * Runs every rule until nothing more follows, or a contradiction shows.
 *
 * Lags come first (they are cheap), then the rules about single tasks, then reservoirs and totals. An arc raises the earliest time of
 * its end as soon as its `low` condition holds, and lowers the latest time of its beginning as soon as `high` does.
 */
import type { Arc, Compiled } from '../compiled.ts';
import { emptyLists, packLists, placesOf, type SparseLists } from '../sparse-lists.ts';
import { Orders } from './orders.ts';
import { Reservoirs } from './reservoirs.ts';
import type { Store } from './store.ts';
import { Timetable } from './timetable.ts';
import { Totals } from './totals.ts';

export class Propagation {
  readonly store: Store;
  readonly timetable: Timetable;
  readonly orders: Orders;
  readonly reservoirs: Reservoirs;
  readonly totals: Totals;
  private readonly compiled: Compiled;
  private readonly arcStart: Int32Array;
  private readonly arcTarget: Int32Array;
  private readonly arcLeast: Int32Array;
  private readonly arcCondition: Int32Array;
  private readonly conditionArcs: SparseLists;
  private readonly conditionTasks: SparseLists;
  private readonly conditionReservoirs: SparseLists;
  private readonly conditionTotals: SparseLists;
  private readonly arcSource: Int32Array;

  constructor(store: Store, block: Int32Array) {
    this.store = store;
    this.compiled = store.compiled;
    this.timetable = new Timetable(store, block);
    this.orders = new Orders(store);
    this.reservoirs = new Reservoirs(store);
    this.totals = new Totals(store);
    const { arcs, table, presence, reservoirs, totals, taskCount } = this.compiled;
    // Arc k forth is 2k here, and back, over the mirrored bounds, 2k + 1.
    const sources = new Int32Array(2 * arcs.length);
    arcs.forEach((arc, k) => {
      sources[2 * k] = 2 * arc.from;
      sources[2 * k + 1] = 2 * arc.to + 1;
    });
    const { start, items } = placesOf(2 * (2 * taskCount + 1), sources);
    this.arcStart = start;
    this.arcSource = items.map((k) => sources[k] as number);
    this.arcTarget = new Int32Array(items.length);
    this.arcLeast = new Int32Array(items.length);
    this.arcCondition = new Int32Array(items.length);
    items.forEach((k, at) => {
      const arc = arcs[k >> 1] as Arc;
      const forth = (k & 1) === 0;
      this.arcTarget[at] = forth ? 2 * arc.to : 2 * arc.from + 1;
      this.arcLeast[at] = arc.least;
      this.arcCondition[at] = forth ? arc.low : arc.high;
    });
    const byCondition = (conditions: ArrayLike<number>): SparseLists => placesOf(table.conditions.length, conditions);
    this.conditionArcs = byCondition(this.arcCondition);
    this.conditionTasks = byCondition(presence);
    const reservoirLists = emptyLists(table.conditions.length);
    reservoirs.forEach((reservoir, r) => reservoir.events.forEach((event) => reservoirLists[event.condition]?.push(r)));
    this.conditionReservoirs = packLists(reservoirLists);
    this.conditionTotals = byCondition(totals.map((total) => total.condition));
  }

  /** Tells every rule about everything once, at the root. */
  start(): boolean {
    const { store } = this;
    if (!store.settleForbidden()) return this.fail();
    for (let slot = 0; slot < store.slotQueue.length; slot++) store.enqueueSlot(slot);
    for (let task = 0; task < this.compiled.taskCount; task++) {
      if (store.shortest(task) > store.longest(task) && !store.refute(this.compiled.presence[task] as number))
        return this.fail();
      store.enqueueTask(task);
    }
    this.reservoirs.touchAll();
    this.totals.touchAll();
    return this.propagate();
  }

  /** @returns false on a contradiction, with empty queues */
  propagate(): boolean {
    const { store, reservoirs, totals } = this;
    for (;;) {
      if (!store.settleBroken()) return this.fail();
      if (store.trueQueue.length > 0) {
        if (!this.conditionHolds(store.trueQueue.pop() as number)) return this.fail();
      } else if (store.falseQueue.length > 0) {
        this.conditionFails(store.falseQueue.pop() as number);
      } else if (store.slotCount > 0) {
        if (!this.slotRaised(store.takeSlot())) return this.fail();
      } else if (store.taskCount > 0) {
        if (!this.taskChanged(store.takeTask())) return this.fail();
      } else if (store.choiceQueue.length > 0) {
        reservoirs.touchChoice(store.choiceQueue.pop() as number);
      } else if (totals.anyDirty) {
        if (!totals.update()) return this.fail();
      } else if (reservoirs.anyDirty) {
        if (!reservoirs.update()) return this.fail();
      } else return true;
    }
  }

  private fail(): false {
    this.clear();
    return false;
  }

  /** Forgets everything queued; to be called after a contradiction outside of `propagate`. */
  clear(): void {
    this.store.clearQueues();
    this.reservoirs.dirty.fill(0);
    this.reservoirs.anyDirty = false;
    this.totals.dirty.fill(0);
    this.totals.anyDirty = false;
  }

  private conditionHolds(condition: number): boolean {
    const { store, conditionArcs, conditionTasks } = this;
    for (let k = conditionArcs.start[condition] as number; k < (conditionArcs.start[condition + 1] as number); k++) {
      const arc = conditionArcs.items[k] as number;
      const source = store.cells[this.arcSource[arc] as number] as number;
      if (!store.raise(this.arcTarget[arc] as number, source + (this.arcLeast[arc] as number))) return false;
    }
    for (let k = conditionTasks.start[condition] as number; k < (conditionTasks.start[condition + 1] as number); k++) {
      const task = conditionTasks.items[k] as number;
      const at = 4 * task;
      if ((store.cells[at] as number) + (store.cells[at + 1] as number) > 0) return false;
      if ((store.cells[at + 2] as number) + (store.cells[at + 3] as number) > 0) return false;
      store.enqueueTask(task);
    }
    this.touchSums(condition);
    return true;
  }

  private conditionFails(condition: number): void {
    const { start, items } = this.conditionTasks;
    const until = start[condition + 1] as number;
    for (let k = start[condition] as number; k < until; k++) {
      this.reservoirs.touch(items[k] as number);
      this.totals.touch(items[k] as number);
    }
    this.touchSums(condition);
  }

  private touchSums(condition: number): void {
    const { conditionReservoirs, conditionTotals, reservoirs, totals } = this;
    let until = conditionReservoirs.start[condition + 1] as number;
    for (let k = conditionReservoirs.start[condition] as number; k < until; k++) {
      reservoirs.dirty[conditionReservoirs.items[k] as number] = 1;
      reservoirs.anyDirty = true;
    }
    until = conditionTotals.start[condition + 1] as number;
    for (let k = conditionTotals.start[condition] as number; k < until; k++) {
      totals.dirty[conditionTotals.items[k] as number] = 1;
      totals.anyDirty = true;
    }
  }

  private slotRaised(slot: number): boolean {
    const { store } = this;
    const value = store.cells[slot] as number;
    const until = this.arcStart[slot + 1] as number;
    for (let k = this.arcStart[slot] as number; k < until; k++) {
      const target = this.arcTarget[k] as number;
      const raised = value + (this.arcLeast[k] as number);
      if (raised <= (store.cells[target] as number)) continue;
      const condition = this.arcCondition[k] as number;
      if (condition !== 0 && !store.isTrue(condition)) continue;
      if (!store.raise(target, raised)) return false;
    }
    const task = slot >> 2;
    if (task === this.compiled.taskCount) return true;
    // start ≤ end − shortest, end ≤ start + longest, on bounds and mirrored bounds alike.
    switch (slot & 3) {
      case 0:
        return store.raise(slot + 2, value + store.shortest(task));
      case 1:
        return store.raise(slot + 2, value - store.longest(task));
      case 2:
        return store.raise(slot - 2, value - store.longest(task));
      default:
        return store.raise(slot - 2, value + store.shortest(task));
    }
  }

  private taskChanged(task: number): boolean {
    const { store } = this;
    if (store.isAbsent(task)) return true;
    store.work++;
    this.reservoirs.touch(task);
    this.totals.touch(task);
    return this.timetable.update(task) && (store.isAbsent(task) || this.orders.update(task));
  }
}
