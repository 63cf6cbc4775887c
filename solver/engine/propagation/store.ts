/**
 * What is known of a plan that is being built: options still open, conditions, modes, bounds of every endpoint, capacity left.
 * Every change can be undone; `propagation.ts` draws the consequences.
 *
 * Bounds are kept in **slots**: slot `2v` holds the earliest time of node `v` and slot `2v + 1` its negated latest time, so that
 * every rule only ever *raises* a slot and a lag serves both directions. Bounds of a task that may yet be absent mean "if
 * present"; when they cross, its presence is refuted. Methods return false when a contradiction is found; the caller then undoes.
 */
import type { Compiled } from '../compiled.ts';
import { Chain } from './chain.ts';
import { ChoiceStore } from './choice-store.ts';
import { SoilUsers } from './soil-users.ts';

/** What search keeps beside its chains: how much it has seen of what is anchored, for selection and for demands. */
export const SEEN_BY_SELECTION = 0;
export const SEEN_BY_DEMANDS = 1;
const SEARCHED_CELLS = 2;
/** The chains of search: see `selection.ts` and `demands.ts`. */
export const CHAINS = { unsettled: 0, loose: 1, tied: 2, ready: 3, open: 4 } as const;
const SEARCHED_CHAINS = 5;

export class Store extends ChoiceStore {
  private readonly modeBase: number;
  private readonly shortBase: number;
  private readonly longBase: number;
  /** Where the part in which each task surely runs begins and ends. */
  readonly partFrom: number;
  readonly partTo: number;
  /** 1 for placed tasks that search has found in want of nothing, which stands until it is undone; kept by `demands.ts`. */
  readonly settled: number;
  /** Tasks whose start is at a known minute, and those whose end is, in the order in which they came to be; valid up to their count. */
  readonly anchored: readonly [Int32Array, Int32Array];
  /** How many there are of the first; the next cell has that of the second. */
  readonly anchoredCount: number;
  /** Cells of search: what it has seen of these, and its chains of tasks. */
  readonly searched: number;
  /** Capacity left on resource `r` at minute `t` after all mandatory parts: `cells[free + r × horizon + t]`. */
  readonly free: number;
  /** Tasks of known mode on the resources that they may soil or find soiled. */
  readonly soilUsers: SoilUsers;

  readonly slotQueue: Int32Array;
  private readonly slotQueued: Uint8Array;
  private slotHead = 0;
  slotCount = 0;
  private readonly taskQueue: Int32Array;
  private readonly taskQueued: Uint8Array;
  private taskHead = 0;
  taskCount = 0;

  constructor(compiled: Compiled) {
    const { taskCount } = compiled;
    const slots = 2 * (2 * taskCount + 1);
    const resourceCount = compiled.problem.resources.length;
    const before = slots + 6 * taskCount + compiled.capacity.length + resourceCount;
    super(compiled, before + 2 + SEARCHED_CELLS + SEARCHED_CHAINS * Chain.cellsOf(taskCount));
    this.modeBase = slots;
    this.shortBase = slots + taskCount;
    this.longBase = slots + 2 * taskCount;
    this.partFrom = slots + 3 * taskCount;
    this.partTo = slots + 4 * taskCount;
    this.settled = slots + 5 * taskCount;
    this.free = slots + 6 * taskCount;
    this.anchoredCount = before;
    this.searched = before + 2;
    this.anchored = [new Int32Array(taskCount), new Int32Array(taskCount)];
    this.soilUsers = new SoilUsers(compiled, this.trail, this.free + compiled.capacity.length);
    this.slotQueue = new Int32Array(slots);
    this.slotQueued = new Uint8Array(slots);
    this.taskQueue = new Int32Array(taskCount + 1);
    this.taskQueued = new Uint8Array(taskCount + 1);
    this.fill();
  }

  /** The state before anything is known, which is never undone. */
  private fill(): void {
    const { compiled, cells } = this;
    const { taskCount, horizon, modes, taskModes } = compiled;
    for (let task = 0; task < taskCount; task++) {
      let shortest = 2 ** 30;
      let longest = 0;
      const from = taskModes.start[task] as number;
      const to = taskModes.start[task + 1] as number;
      for (let k = from; k < to; k++) {
        const mode = modes[taskModes.items[k] as number];
        if (mode === undefined) continue;
        shortest = Math.min(shortest, mode.shortest);
        longest = Math.max(longest, mode.longest);
      }
      if (from === to) shortest = 0;
      const only = to - from === 1 ? (taskModes.items[from] as number) : -1;
      cells[this.modeBase + task] = only;
      if (only >= 0) this.soilUsers.add(task, only);
      cells[this.shortBase + task] = shortest;
      cells[this.longBase + task] = longest;
      cells[4 * task] = 0;
      cells[4 * task + 1] = -horizon;
      cells[4 * task + 2] = 0;
      cells[4 * task + 3] = -horizon;
    }
    cells.set(compiled.capacity, this.free);
  }

  // Reading.

  earliestStart(task: number): number {
    return this.cells[4 * task] as number;
  }
  latestStart(task: number): number {
    return -(this.cells[4 * task + 1] as number);
  }
  earliestEnd(task: number): number {
    return this.cells[4 * task + 2] as number;
  }
  latestEnd(task: number): number {
    return -(this.cells[4 * task + 3] as number);
  }
  shortest(task: number): number {
    return this.cells[this.shortBase + task] as number;
  }
  longest(task: number): number {
    return this.cells[this.longBase + task] as number;
  }
  /** The task's mode if it is present, or −1 while several are open. */
  mode(task: number): number {
    return this.cells[this.modeBase + task] as number;
  }
  /** Where the mode of the task is kept. */
  modeAddress(task: number): number {
    return this.modeBase + task;
  }
  /** Present, in a known mode, at known times. */
  isPlaced(task: number): boolean {
    const { cells } = this;
    const at = 4 * task;
    return (
      (cells[at] as number) + (cells[at + 1] as number) === 0 &&
      (cells[at + 2] as number) + (cells[at + 3] as number) === 0 &&
      (cells[this.modeBase + task] as number) >= 0 &&
      this.isPresent(task)
    );
  }

  // Modes and lengths.

  protected updateMode(task: number, choice: number): void {
    const { compiled, cells, trail } = this;
    const { start, items } = compiled.optionMode;
    const base = start[task] as number;
    const count = (start[task + 1] as number) - base;
    let shortest = 2 ** 30;
    let longest = -1;
    let only = -2;
    for (let option = 0; option < count; option++) {
      const mode = items[base + option] as number;
      if (mode < 0 || !this.isAlive(choice, option)) continue;
      const { shortest: short, longest: long } = compiled.modes[mode] as { shortest: number; longest: number };
      if (short < shortest) shortest = short;
      if (long > longest) longest = long;
      only = only === -2 || only === mode ? mode : -1;
    }
    if (only === -2) return;
    if (only >= 0 && cells[this.modeBase + task] !== only) {
      trail.set(this.modeBase + task, only);
      this.soilUsers.add(task, only);
      this.enqueueTask(task);
    }
    this.limitLength(task, shortest, longest);
  }

  /** Narrows the length of the task (if present). */
  limitLength(task: number, shortest: number, longest: number): void {
    const { cells, trail } = this;
    let changed = false;
    if (shortest > (cells[this.shortBase + task] as number)) {
      trail.set(this.shortBase + task, shortest);
      changed = true;
    }
    if (longest < (cells[this.longBase + task] as number)) {
      trail.set(this.longBase + task, longest);
      changed = true;
    }
    if (!changed) return;
    for (let slot = 4 * task; slot < 4 * task + 4; slot++) this.enqueueSlot(slot);
    this.enqueueTask(task);
  }

  // Bounds.

  /** Raises a slot. */
  raise(slot: number, value: number): boolean {
    const { cells } = this;
    if (value <= (cells[slot] as number)) return true;
    const task = slot >> 2;
    const isOrigin = task === this.compiled.taskCount;
    const presence = isOrigin ? 0 : (this.compiled.presence[task] as number);
    if ((cells[this.broken + presence] as number) > 0) return true;
    this.work++;
    this.trail.set(slot, value);
    const width = -(cells[slot & ~1] as number) - (cells[slot | 1] as number);
    if (width < 0) return isOrigin ? false : this.refute(presence);
    this.enqueueSlot(slot);
    if (isOrigin) return true;
    if (width === 0) this.noteAnchored(task, (slot >> 1) & 1);
    this.enqueueTask(task);
    return true;
  }

  /** @param end 0 for the start, 1 for the end */
  private noteAnchored(task: number, end: number): void {
    const count = this.cells[this.anchoredCount + end] as number;
    (this.anchored[end] as Int32Array)[count] = task;
    this.trail.set(this.anchoredCount + end, count + 1);
  }

  /** One of the chains of tasks that search keeps, by number. */
  chain(number: number): Chain {
    const { taskCount } = this.compiled;
    return new Chain(this.trail, this.searched + SEARCHED_CELLS + number * Chain.cellsOf(taskCount), taskCount);
  }

  enqueueSlot(slot: number): void {
    if (this.slotQueued[slot] === 1) return;
    this.slotQueued[slot] = 1;
    const { length } = this.slotQueue;
    let tail = this.slotHead + this.slotCount;
    if (tail >= length) tail -= length;
    this.slotQueue[tail] = slot;
    this.slotCount++;
  }

  enqueueTask(task: number): void {
    if (this.taskQueued[task] === 1) return;
    this.taskQueued[task] = 1;
    const { length } = this.taskQueue;
    let tail = this.taskHead + this.taskCount;
    if (tail >= length) tail -= length;
    this.taskQueue[tail] = task;
    this.taskCount++;
  }

  takeSlot(): number {
    const slot = this.slotQueue[this.slotHead] as number;
    this.slotHead = this.slotHead + 1 === this.slotQueue.length ? 0 : this.slotHead + 1;
    this.slotCount--;
    this.slotQueued[slot] = 0;
    return slot;
  }

  takeTask(): number {
    const task = this.taskQueue[this.taskHead] as number;
    this.taskHead = this.taskHead + 1 === this.taskQueue.length ? 0 : this.taskHead + 1;
    this.taskCount--;
    this.taskQueued[task] = 0;
    return task;
  }

  /** Forgets everything queued, after a contradiction. */
  clearQueues(): void {
    this.clearConditions();
    while (this.slotCount > 0) this.takeSlot();
    while (this.taskCount > 0) this.takeTask();
  }
}
