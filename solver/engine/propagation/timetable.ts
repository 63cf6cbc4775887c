/**
 * Capacity: at every minute the amounts of all present tasks sum to no more than is there.
 *
 * A present task with known mode surely runs in its **mandatory part** `[LST, ECT)`, which is taken off the profile; a task is then
 * pushed to the first (last) start at which the minutes it would cover have room. A task whose mode is open is pushed to the first
 * start of its best mode, and modes without any place are dropped. Example: capacity 1, A surely in [3, 5), B of length 4 from
 * 0 on: B cannot start before 5. Time-table filtering as in Beldiceanu and Carlsson (2002) and Letort, Beldiceanu, Carlsson (2012).
 */
import type { CompiledMode, CompiledUse } from '../compiled.ts';
import type { Store } from './store.ts';

export class Timetable {
  /** Tasks whose start is open over more minutes than this are not pushed, only checked where they surely run. */
  scope = 60;
  /** Tasks of this block (see `structure.ts`) are pushed however open they are; −1 for none. */
  focus = -1;
  /** Block of each task. */
  readonly block: Int32Array;
  private readonly store: Store;
  private readonly horizon: number;
  /** By resource, the most that a mode uses of it. */
  private readonly largest: Int32Array;

  constructor(store: Store, block: Int32Array) {
    this.store = store;
    this.block = block;
    const { horizon, modes, problem } = store.compiled;
    this.horizon = horizon;
    this.largest = new Int32Array(problem.resources.length);
    for (const { uses } of modes)
      for (let u = 0; u < uses.length; u++) {
        const { resource, amount } = uses[u] as CompiledUse;
        if (amount > (this.largest[resource] as number)) this.largest[resource] = amount;
      }
  }

  /** Draws the consequences for a task whose bounds, mode or presence changed, or whose resources lost room. */
  update(task: number): boolean {
    const { store } = this;
    const mode = store.mode(task);
    const present = store.isPresent(task);
    if (present && mode >= 0 && !this.extendPart(task, mode)) return false;
    const width = store.latestStart(task) - store.earliestStart(task);
    if (width > this.scope && this.block[task] !== this.focus) return true;
    if (mode >= 0) {
      if (present && width === 0 && store.earliestEnd(task) === store.latestEnd(task)) return true;
      return this.push(task, mode);
    }
    return !present || this.pushOpen(task);
  }

  /** Takes the part in which the task surely runs off the room that is left. */
  private extendPart(task: number, mode: number): boolean {
    const { store } = this;
    const from = store.latestStart(task);
    const to = store.earliestEnd(task);
    if (from >= to) return true;
    const { cells, trail } = store;
    const oldFrom = cells[store.partFrom + task] as number;
    const oldTo = cells[store.partTo + task] as number;
    if (from === oldFrom && to === oldTo) return true;
    trail.set(store.partFrom + task, from);
    trail.set(store.partTo + task, to);
    const { uses } = store.compiled.modes[mode] as CompiledMode;
    for (let u = 0; u < uses.length; u++) {
      const { resource, amount } = uses[u] as { resource: number; amount: number };
      if (amount === 0) continue;
      if (oldFrom >= oldTo) {
        if (!this.take(resource, amount, from, to, task)) return false;
      } else {
        if (from < oldFrom && !this.take(resource, amount, from, oldFrom, task)) return false;
        if (oldTo < to && !this.take(resource, amount, oldTo, to, task)) return false;
      }
    }
    return true;
  }

  private take(resource: number, amount: number, from: number, to: number, by: number): boolean {
    const { store } = this;
    const { cells, trail } = store;
    const base = store.free + resource * this.horizon;
    let least = this.largest[resource] as number;
    for (let t = from; t < to; t++) {
      const left = (cells[base + t] as number) - amount;
      if (left < 0) return false;
      if (left < least) least = left;
      trail.set(base + t, left);
    }
    store.work += 1 + ((to - from) >> 3);
    // What is left is enough for any mode.
    if (least === this.largest[resource]) return true;
    const { start, items } = store.compiled.resourceTasks;
    const until = start[resource + 1] as number;
    for (let k = start[resource] as number; k < until; k++) {
      const other = items[k] as number;
      if (other === by) continue;
      const at = 4 * other;
      const earliest = cells[at] as number;
      const width = -(cells[at + 1] as number) - earliest;
      if (earliest >= to || -(cells[at + 3] as number) <= from) continue;
      if (width > this.scope && this.block[other] !== this.focus) continue;
      // Where it is placed already, it found room; and elsewhere it lacks none here.
      const mode = store.mode(other);
      if (mode < 0 || (this.uses(mode, resource) && !store.isPlaced(other))) store.enqueueTask(other);
    }
    return true;
  }

  private uses(mode: number, resource: number): boolean {
    const { uses } = this.store.compiled.modes[mode] as CompiledMode;
    for (let u = 0; u < uses.length; u++) if ((uses[u] as CompiledUse).resource === resource) return true;
    return false;
  }

  private push(task: number, modeIndex: number): boolean {
    const { store } = this;
    const mode = store.compiled.modes[modeIndex] as CompiledMode;
    const first = this.firstFit(task, mode, store.shortest(task));
    if (first > store.earliestStart(task) && !store.raise(4 * task, first)) return false;
    if (store.isAbsent(task)) return true;
    const last = this.lastFit(task, mode, store.shortest(task));
    return last >= store.latestEnd(task) || store.raise(4 * task + 3, -last);
  }

  private pushOpen(task: number): boolean {
    const { store } = this;
    const { taskModes, modes } = store.compiled;
    const until = taskModes.start[task + 1] as number;
    let first = this.horizon + 1;
    for (let k = taskModes.start[task] as number; k < until; k++) {
      const index = taskModes.items[k] as number;
      if (!this.isOpen(task, index)) continue;
      const mode = modes[index] as CompiledMode;
      const fit = this.firstFit(task, mode, Math.max(mode.shortest, store.shortest(task)));
      if (fit > store.latestStart(task)) {
        if (!this.dropMode(task, index)) return false;
      } else if (fit < first) first = fit;
    }
    return first <= store.earliestStart(task) || store.raise(4 * task, first);
  }

  /** True while an open option gives the task this mode. */
  isOpen(task: number, mode: number): boolean {
    const { start, items } = this.store.compiled.modeOptions;
    const choice = this.store.compiled.taskChoice[task] as number;
    if (choice < 0) return true;
    const until = start[mode + 1] as number;
    for (let k = start[mode] as number; k < until; k++) if (this.store.isAlive(choice, items[k] as number)) return true;
    return false;
  }

  private dropMode(task: number, mode: number): boolean {
    const { start, items } = this.store.compiled.modeOptions;
    const choice = this.store.compiled.taskChoice[task] as number;
    if (choice < 0) return false;
    const until = start[mode + 1] as number;
    for (let k = start[mode] as number; k < until; k++)
      if (!this.store.removeOption(choice, items[k] as number)) return false;
    return true;
  }

  /** The first start from the earliest on at which the task has room; past the latest start when there is none. */
  firstFit(task: number, mode: CompiledMode, length: number): number {
    const { store, horizon } = this;
    const { cells, free } = store;
    const { uses } = mode;
    const latest = store.latestStart(task);
    const leastEnd = store.earliestEnd(task);
    const partFrom = cells[store.partFrom + task] as number;
    const partTo = cells[store.partTo + task] as number;
    let start = store.earliestStart(task);
    let scanned = 0;
    search: while (start <= latest) {
      const end = start + length > leastEnd ? start + length : leastEnd;
      if (end > horizon) return horizon + 1;
      for (let u = 0; u < uses.length; u++) {
        const { resource, amount } = uses[u] as { resource: number; amount: number };
        if (amount === 0) continue;
        const base = free + resource * horizon;
        for (let t = end - 1; t >= start; t--) {
          if (t < partTo && t >= partFrom) t = partFrom;
          else if ((cells[base + t] as number) < amount) {
            scanned += end - t;
            start = t + 1;
            continue search;
          }
        }
        scanned += end - start;
      }
      break;
    }
    store.work += 1 + (scanned >> 4);
    return start;
  }

  /** The first start from `from` to `until` with room for `length` minutes, whatever the task's bounds; past `until` when there is none. */
  firstRoom(mode: CompiledMode, from: number, until: number, length: number): number {
    const { store, horizon } = this;
    const { uses } = mode;
    let start = Math.max(0, from);
    search: while (start <= until) {
      for (let u = 0; u < uses.length; u++) {
        const { resource, amount } = uses[u] as { resource: number; amount: number };
        const base = store.free + resource * horizon;
        for (let t = start + length - 1; t >= start; t--)
          if ((store.cells[base + t] as number) < amount) {
            start = t + 1;
            continue search;
          }
      }
      break;
    }
    return start;
  }

  /** The last end up to the latest at which the task has room; before the earliest end when there is none. */
  lastFit(task: number, mode: CompiledMode, length: number): number {
    const { store, horizon } = this;
    const { cells, free } = store;
    const { uses } = mode;
    const earliest = store.earliestEnd(task);
    const mostStart = store.latestStart(task);
    const partFrom = cells[store.partFrom + task] as number;
    const partTo = cells[store.partTo + task] as number;
    let end = store.latestEnd(task);
    let scanned = 0;
    search: while (end >= earliest) {
      const start = end - length < mostStart ? end - length : mostStart;
      if (start < 0) return -1;
      for (let u = 0; u < uses.length; u++) {
        const { resource, amount } = uses[u] as { resource: number; amount: number };
        if (amount === 0) continue;
        const base = free + resource * horizon;
        for (let t = start; t < end; t++) {
          if (t < partTo && t >= partFrom) t = partTo - 1;
          else if ((cells[base + t] as number) < amount) {
            scanned += t - start + 1;
            end = t;
            continue search;
          }
        }
        scanned += end - start;
      }
      break;
    }
    store.work += 1 + (scanned >> 4);
    return end;
  }
}
