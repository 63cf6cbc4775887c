/**
 * Reservoirs: the level after all events of each minute stays between 0 and the capacity.
 *
 * At minute `t` the most there can be is the initial level, plus every filling that may have come by `t`, less every draw that must
 * have come by `t`; the least is the mirror of it. A most below 0 or a least above the capacity is a contradiction. A draw is
 * pushed to the first minute at which the most allows it. (Laborie 2003; Neumann and Schwindt 2003.)
 */
import type { CompiledReservoir } from '../compile-problem.ts';
import { emptyLists, packLists, type SparseLists } from '../sparse-lists.ts';
import type { Store } from './store.ts';

export class Reservoirs {
  readonly dirty: Uint8Array;
  anyDirty = false;
  private readonly store: Store;
  private readonly ofTask: SparseLists;

  constructor(store: Store) {
    this.store = store;
    const { reservoirs, taskCount } = store.compiled;
    this.dirty = new Uint8Array(reservoirs.length);
    const lists = emptyLists(taskCount);
    reservoirs.forEach((reservoir, r) => {
      for (const event of reservoir.events) {
        const list = lists[event.node >> 1];
        if (list !== undefined && !list.includes(r)) list.push(r);
      }
    });
    this.ofTask = packLists(lists);
  }

  /** Marks the reservoirs that the task has events in. */
  touch(task: number): void {
    const { start, items } = this.ofTask;
    const until = start[task + 1] as number;
    for (let k = start[task] as number; k < until; k++) {
      this.dirty[items[k] as number] = 1;
      this.anyDirty = true;
    }
  }

  touchAll(): void {
    this.dirty.fill(1);
    this.anyDirty = this.dirty.length > 0;
  }

  /** Checks and pushes in every marked reservoir. */
  update(): boolean {
    this.anyDirty = false;
    for (let r = 0; r < this.dirty.length; r++) {
      if (this.dirty[r] === 0) continue;
      this.dirty[r] = 0;
      if (!this.updateOne(this.store.compiled.reservoirs[r] as CompiledReservoir)) return false;
    }
    return true;
  }

  private updateOne(reservoir: CompiledReservoir): boolean {
    const { store } = this;
    const { events, initial, capacity } = reservoir;
    for (let e = 0; e < events.length; e++) {
      const { node, amount, condition } = events[e] as { node: number; amount: number; condition: number };
      if (amount === 0 || !store.isTrue(condition)) continue;
      const latest = -(store.cells[2 * node + 1] as number);
      if (amount < 0) {
        if (this.extreme(reservoir, latest, 1) + initial < 0) return false;
        const first = this.firstPossible(reservoir, e);
        if (first > latest || !store.raise(2 * node, first)) return false;
      } else if (this.extreme(reservoir, latest, -1) + initial > capacity) return false;
    }
    store.work += events.length * events.length;
    return true;
  }

  /** The most (`sign` 1) or least (−1) change there can be up to minute t. */
  private extreme(reservoir: CompiledReservoir, t: number, sign: 1 | -1): number {
    const { store } = this;
    let level = 0;
    for (let e = 0; e < reservoir.events.length; e++) {
      const event = reservoir.events[e] as { node: number; amount: number; condition: number };
      if (event.amount * sign > 0) {
        if (!store.isFalse(event.condition) && (store.cells[2 * event.node] as number) <= t) level += event.amount;
      } else if (store.isTrue(event.condition) && -(store.cells[2 * event.node + 1] as number) <= t)
        level += event.amount;
    }
    return level;
  }

  /** First minute at which the draw could come as far as its own minute goes. */
  private firstPossible(reservoir: CompiledReservoir, draw: number): number {
    const { store } = this;
    const { node, amount } = reservoir.events[draw] as { node: number; amount: number };
    let t = store.cells[2 * node] as number;
    const latest = -(store.cells[2 * node + 1] as number);
    while (t < latest) {
      const level = reservoir.initial + this.extreme(reservoir, t, 1) + amount;
      if (level >= 0) return t;
      let next = latest + 1;
      for (let e = 0; e < reservoir.events.length; e++) {
        const event = reservoir.events[e] as { node: number; amount: number; condition: number };
        const earliest = store.cells[2 * event.node] as number;
        if (event.amount > 0 && !store.isFalse(event.condition) && earliest > t && earliest < next) next = earliest;
      }
      t = next;
    }
    return t;
  }
}
