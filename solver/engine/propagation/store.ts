/**
 * What is known of a plan that is being built: options still open, conditions, modes, bounds of every endpoint, capacity left.
 * Every change can be undone; `propagation.ts` draws the consequences.
 *
 * Bounds are kept in **slots**: slot `2v` holds the earliest time of node `v` and slot `2v + 1` its negated latest time, so that
 * every rule only ever *raises* a slot and a lag serves both directions. Bounds of a task that may yet be absent mean "if
 * present"; when they cross, its presence is refuted. Methods return false when a contradiction is found; the caller then undoes.
 */
import type { Compiled } from '../compile-problem.ts';
import { emptyLists, packLists, type SparseLists } from '../sparse-lists.ts';
import { Trail } from './trail.ts';

export class Store {
  readonly compiled: Compiled;
  readonly trail: Trail;
  readonly cells: Int32Array;
  /** Work units spent since the start; about one a slot raised or a task looked at. */
  work = 0;

  readonly optionBase: Int32Array;
  private readonly alive: number;
  private readonly aliveCount: number;
  private readonly literalIn: number;
  private readonly literalOut: number;
  private readonly pending: number;
  private readonly broken: number;
  private readonly refuted: number;
  private readonly modeBase: number;
  private readonly shortBase: number;
  private readonly longBase: number;
  readonly partFrom: number;
  readonly partTo: number;
  /** Capacity left on resource `r` at minute `t` after all mandatory parts: `cells[free + r × horizon + t]`. */
  readonly free: number;

  private readonly literalHas: Uint8Array;
  private readonly literalBase: Int32Array;
  private readonly choiceLiterals: SparseLists;
  private readonly literalConditions: SparseLists;
  private readonly conditionLiterals: SparseLists;
  readonly choiceTasks: SparseLists;
  private readonly mustBreak: Uint8Array;
  /** 1 for choices whose losses are queued; set by the rules that want to know. */
  readonly watched: Uint8Array;

  /** Choices that lost an option since they were last followed up. */
  readonly choiceQueue: number[] = [];
  /** Conditions that became true and were not yet followed up. */
  readonly trueQueue: number[] = [];
  /** Conditions that became false and were not yet followed up. */
  readonly falseQueue: number[] = [];
  private readonly breakQueue: number[] = [];
  readonly slotQueue: Int32Array;
  readonly slotQueued: Uint8Array;
  slotHead = 0;
  slotCount = 0;
  readonly taskQueue: Int32Array;
  readonly taskQueued: Uint8Array;
  taskHead = 0;
  taskCount = 0;

  constructor(compiled: Compiled) {
    this.compiled = compiled;
    const { taskCount, optionCount, table } = compiled;
    const slots = 2 * (2 * taskCount + 1);
    this.optionBase = new Int32Array(optionCount.length + 1);
    optionCount.forEach((count, c) => (this.optionBase[c + 1] = (this.optionBase[c] ?? 0) + count));
    const options = this.optionBase[optionCount.length] ?? 0;
    let size = slots;
    const allocate = (count: number): number => {
      size += count;
      return size - count;
    };
    this.alive = allocate(options);
    this.aliveCount = allocate(optionCount.length);
    this.literalIn = allocate(table.literals.length);
    this.literalOut = allocate(table.literals.length);
    this.pending = allocate(table.conditions.length);
    this.broken = allocate(table.conditions.length);
    this.refuted = allocate(table.conditions.length);
    this.modeBase = allocate(taskCount);
    this.shortBase = allocate(taskCount);
    this.longBase = allocate(taskCount);
    this.partFrom = allocate(taskCount);
    this.partTo = allocate(taskCount);
    this.free = allocate(compiled.capacity.length);
    this.trail = new Trail(size);
    this.cells = this.trail.cells;

    this.literalBase = new Int32Array(table.literals.length);
    let has = 0;
    const choiceLiterals = emptyLists(optionCount.length);
    table.literals.forEach((literal, l) => {
      this.literalBase[l] = has;
      has += optionCount[literal.choice] ?? 0;
      choiceLiterals[literal.choice]?.push(l);
    });
    this.literalHas = new Uint8Array(has);
    table.literals.forEach((literal, l) => {
      for (const option of literal.options) this.literalHas[(this.literalBase[l] ?? 0) + option] = 1;
    });
    const literalConditions = emptyLists(table.literals.length);
    table.conditions.forEach((literals, c) => literals.forEach((l) => literalConditions[l]?.push(c)));
    const choiceTasks = emptyLists(optionCount.length);
    compiled.taskChoice.forEach((choice, task) => {
      if (choice >= 0) choiceTasks[choice]?.push(task);
    });
    this.choiceLiterals = packLists(choiceLiterals);
    this.literalConditions = packLists(literalConditions);
    this.conditionLiterals = packLists(table.conditions);
    this.choiceTasks = packLists(choiceTasks);
    this.mustBreak = new Uint8Array(table.conditions.length);
    for (const condition of compiled.forbidden) this.mustBreak[condition] = 1;
    this.watched = new Uint8Array(optionCount.length);
    this.slotQueue = new Int32Array(slots);
    this.slotQueued = new Uint8Array(slots);
    this.taskQueue = new Int32Array(taskCount + 1);
    this.taskQueued = new Uint8Array(taskCount + 1);
    this.fill();
  }

  /** The state before anything is known, written without a trail. */
  private fill(): void {
    const { compiled, cells } = this;
    const { taskCount, horizon, optionCount, table, modes, taskModes } = compiled;
    cells.fill(1, this.alive, this.aliveCount);
    optionCount.forEach((count, c) => (cells[this.aliveCount + c] = count));
    table.literals.forEach((literal, l) => {
      cells[this.literalIn + l] = literal.options.length;
      cells[this.literalOut + l] = (optionCount[literal.choice] ?? 0) - literal.options.length;
    });
    table.conditions.forEach((literals, c) => {
      cells[this.pending + c] = literals.length;
      // A literal without options is false from the start.
      cells[this.broken + c] = literals.filter((l) => table.literals[l]?.options.length === 0).length;
    });
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
      cells[this.modeBase + task] = to - from === 1 ? (taskModes.items[from] as number) : -1;
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
  isAlive(choice: number, option: number): boolean {
    return this.cells[this.alive + (this.optionBase[choice] as number) + option] === 1;
  }
  openOptions(choice: number): number {
    return this.cells[this.aliveCount + choice] as number;
  }
  /** The least option still open. */
  firstOption(choice: number): number {
    let option = 0;
    while (!this.isAlive(choice, option)) option++;
    return option;
  }
  isTrue(condition: number): boolean {
    return this.cells[this.pending + condition] === 0 && this.cells[this.broken + condition] === 0;
  }
  isFalse(condition: number): boolean {
    return (this.cells[this.broken + condition] as number) > 0;
  }
  isPresent(task: number): boolean {
    return this.isTrue(this.compiled.presence[task] as number);
  }
  isAbsent(task: number): boolean {
    return this.isFalse(this.compiled.presence[task] as number);
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

  // Choices and conditions.

  /** Takes the option and drops all others. */
  assign(choice: number, option: number): boolean {
    if (!this.isAlive(choice, option)) return false;
    const count = this.compiled.optionCount[choice] as number;
    for (let other = 0; other < count; other++) if (other !== option && !this.removeOption(choice, other)) return false;
    return true;
  }

  removeOption(choice: number, option: number): boolean {
    const { cells, trail } = this;
    const at = this.alive + (this.optionBase[choice] as number) + option;
    if (cells[at] === 0) return true;
    const left = (cells[this.aliveCount + choice] as number) - 1;
    if (left === 0) return false;
    this.work++;
    trail.set(at, 0);
    trail.set(this.aliveCount + choice, left);
    if (this.watched[choice] === 1) this.choiceQueue.push(choice);
    const { start, items } = this.choiceLiterals;
    const until = start[choice + 1] as number;
    for (let k = start[choice] as number; k < until; k++) {
      const literal = items[k] as number;
      if (this.literalHas[(this.literalBase[literal] as number) + option] === 1) {
        const inside = (cells[this.literalIn + literal] as number) - 1;
        trail.set(this.literalIn + literal, inside);
        if (inside === 0) this.literalFails(literal);
      } else {
        const outside = (cells[this.literalOut + literal] as number) - 1;
        trail.set(this.literalOut + literal, outside);
        if (outside === 0 && !this.literalHolds(literal)) return false;
      }
    }
    const tasks = this.choiceTasks;
    const last = tasks.start[choice + 1] as number;
    for (let k = tasks.start[choice] as number; k < last; k++) this.updateMode(tasks.items[k] as number, choice);
    return true;
  }

  private literalFails(literal: number): void {
    const { start, items } = this.literalConditions;
    const until = start[literal + 1] as number;
    for (let k = start[literal] as number; k < until; k++) {
      const at = this.broken + (items[k] as number);
      const broken = this.cells[at] as number;
      this.trail.set(at, broken + 1);
      if (broken === 0) this.falseQueue.push(items[k] as number);
    }
  }

  private literalHolds(literal: number): boolean {
    const { cells } = this;
    const { start, items } = this.literalConditions;
    const until = start[literal + 1] as number;
    for (let k = start[literal] as number; k < until; k++) {
      const condition = items[k] as number;
      const pending = (cells[this.pending + condition] as number) - 1;
      this.trail.set(this.pending + condition, pending);
      if (cells[this.broken + condition] !== 0 || pending > 1) continue;
      const breaks = this.mustBreak[condition] === 1 || cells[this.refuted + condition] === 1;
      if (pending === 0) {
        if (breaks) return false;
        this.trueQueue.push(condition);
      } else if (breaks) this.breakQueue.push(condition);
    }
    return true;
  }

  /** Makes the condition hold. */
  establish(condition: number): boolean {
    const { start, items } = this.conditionLiterals;
    const until = start[condition + 1] as number;
    for (let k = start[condition] as number; k < until; k++) {
      const literal = items[k] as number;
      const choice = this.compiled.table.literals[literal]?.choice as number;
      const count = this.compiled.optionCount[choice] as number;
      const base = this.literalBase[literal] as number;
      for (let option = 0; option < count; option++)
        if (this.literalHas[base + option] === 0 && !this.removeOption(choice, option)) return false;
    }
    return true;
  }

  /** Makes the condition false as soon as one literal is left that can be. */
  refute(condition: number): boolean {
    const { cells } = this;
    if ((cells[this.broken + condition] as number) > 0) return true;
    const pending = cells[this.pending + condition] as number;
    if (pending === 0) return false;
    if (cells[this.refuted + condition] === 0) this.trail.set(this.refuted + condition, 1);
    return pending > 1 || this.breakLast(condition);
  }

  private breakLast(condition: number): boolean {
    const { start, items } = this.conditionLiterals;
    const until = start[condition + 1] as number;
    for (let k = start[condition] as number; k < until; k++) {
      const literal = items[k] as number;
      if (this.cells[this.literalOut + literal] === 0) continue;
      const choice = this.compiled.table.literals[literal]?.choice as number;
      const count = this.compiled.optionCount[choice] as number;
      const base = this.literalBase[literal] as number;
      for (let option = 0; option < count; option++)
        if (this.literalHas[base + option] === 1 && !this.removeOption(choice, option)) return false;
      return true;
    }
    return false;
  }

  /** Follows up conditions that must become false and have one open literal left. */
  settleBroken(): boolean {
    while (this.breakQueue.length > 0) {
      const condition = this.breakQueue.pop() as number;
      if (this.isFalse(condition)) continue;
      if (!this.breakLast(condition)) return false;
    }
    return true;
  }

  /** Forbidden conjunctions of one literal, told once at the root. */
  settleForbidden(): boolean {
    for (const condition of this.compiled.forbidden) {
      if (this.isFalse(condition)) continue;
      const pending = this.cells[this.pending + condition] as number;
      if (pending === 0) return false;
      if (pending === 1 && !this.breakLast(condition)) return false;
    }
    return this.settleBroken();
  }

  private updateMode(task: number, choice: number): void {
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
    this.choiceQueue.length = 0;
    this.trueQueue.length = 0;
    this.falseQueue.length = 0;
    this.breakQueue.length = 0;
    while (this.slotCount > 0) this.takeSlot();
    while (this.taskCount > 0) this.takeTask();
  }
}
