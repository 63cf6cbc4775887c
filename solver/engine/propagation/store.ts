/**
 * What is known of a plan that is being built: options still open, conditions, modes, bounds of every endpoint, capacity left.
 * Every change can be undone; `propagation.ts` draws the consequences.
 *
 * Bounds are kept in **slots**: slot `2v` holds the earliest time of node `v` and slot `2v + 1` its negated latest time, so that
 * every rule only ever *raises* a slot and a lag serves both directions. Bounds of a task that may yet be absent mean "if
 * present"; when they cross, its presence is refuted. Methods return false when a contradiction is found; the caller then undoes.
 */
import type { Compiled } from '../compiled.ts';
import { ChoiceStore } from './choice-store.ts';
import { SoilUsers } from './soil-users.ts';

export class Store extends ChoiceStore {
  private readonly modeBase: number;
  private readonly shortBase: number;
  private readonly longBase: number;
  /** Where the part in which each task surely runs begins and ends. */
  readonly partFrom: number;
  readonly partTo: number;
  /** 1 for placed tasks that search has found in want of nothing, which stands until it is undone; kept by `demands.ts`. */
  readonly settled: number;
  /** How many of the tasks that soil counts for search has nothing left to ask of; kept by `demands.ts`. */
  readonly quiet: number;
  /** How many tasks have nothing left to decide, as far as search has looked; kept by `selection.ts`. */
  readonly decided: number;
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
    super(compiled, slots + 6 * taskCount + compiled.capacity.length + resourceCount + 2);
    this.modeBase = slots;
    this.shortBase = slots + taskCount;
    this.longBase = slots + 2 * taskCount;
    this.partFrom = slots + 3 * taskCount;
    this.partTo = slots + 4 * taskCount;
    this.settled = slots + 5 * taskCount;
    this.free = slots + 6 * taskCount;
    this.decided = this.free + compiled.capacity.length + resourceCount;
    this.quiet = this.decided + 1;
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
    if ((cells[slot & ~1] as number) + (cells[slot | 1] as number) > 0) return isOrigin ? false : this.refute(presence);
    this.enqueueSlot(slot);
    if (!isOrigin) this.enqueueTask(task);
    return true;
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
