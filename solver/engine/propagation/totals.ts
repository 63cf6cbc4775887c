/**
 * Totals: the lengths of the present tasks of a set sum to a given number.
 *
 * Each member may be as short as the total less the most the others can be, and as long as the total less the least the others must
 * be. A member without which the sum cannot be reached is made present.
 */
import type { CompiledTotal } from '../compiled.ts';
import { emptyLists, packLists, type SparseLists } from '../sparse-lists.ts';
import type { Store } from './store.ts';

export class Totals {
  readonly dirty: Uint8Array;
  anyDirty = false;
  private readonly store: Store;
  private readonly ofTask: SparseLists;

  constructor(store: Store) {
    this.store = store;
    const { totals, taskCount } = store.compiled;
    this.dirty = new Uint8Array(totals.length);
    const lists = emptyLists(taskCount);
    totals.forEach((total, index) => total.tasks.forEach((task) => lists[task]?.push(index)));
    this.ofTask = packLists(lists);
  }

  /** Marks the totals that the task belongs to. */
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

  /** True when the task's length counts in some total. */
  has(task: number): boolean {
    return (this.ofTask.start[task + 1] as number) > (this.ofTask.start[task] as number);
  }

  /** Checks and narrows every marked total. */
  update(): boolean {
    this.anyDirty = false;
    for (let k = 0; k < this.dirty.length; k++) {
      if (this.dirty[k] === 0) continue;
      this.dirty[k] = 0;
      if (!this.updateOne(this.store.compiled.totals[k] as CompiledTotal)) return false;
    }
    return true;
  }

  private updateOne({ tasks, total, condition }: CompiledTotal): boolean {
    const { store } = this;
    if (!store.isTrue(condition)) return true;
    let least = 0;
    let most = 0;
    for (const task of tasks) {
      if (store.isAbsent(task)) continue;
      most += this.mostLength(task);
      if (store.isPresent(task)) least += this.leastLength(task);
    }
    store.work += tasks.length;
    if (least > total || most < total) return false;
    for (const task of tasks) {
      if (store.isAbsent(task)) continue;
      const others = most - this.mostLength(task);
      const present = store.isPresent(task);
      if (!present && others < total && !store.establish(store.compiled.presence[task] as number)) return false;
      const mustBe = total - others;
      const mayBe = total - (least - (present ? this.leastLength(task) : 0));
      if (mustBe > mayBe || mayBe < store.shortest(task)) {
        if (!store.refute(store.compiled.presence[task] as number)) return false;
        continue;
      }
      store.limitLength(task, mustBe, mayBe);
      if (store.shortest(task) > store.longest(task) && !store.refute(store.compiled.presence[task] as number))
        return false;
    }
    return true;
  }

  private leastLength(task: number): number {
    return Math.max(this.store.shortest(task), this.store.earliestEnd(task) - this.store.latestStart(task));
  }

  private mostLength(task: number): number {
    return Math.min(this.store.longest(task), this.store.latestEnd(task) - this.store.earliestStart(task));
  }
}
