/**
 * Options still open, and what follows for literals and conditions.
 *
 * Each literal counts its open options inside and outside: none inside, it is false; none outside, true. Each condition counts its
 * literals not yet true, and those false. Forbidden and refuted conditions are broken at their last open literal.
 */
import type { Compiled } from '../compiled.ts';
import { emptyLists, packLists, type SparseLists } from '../sparse-lists.ts';
import { Trail } from './trail.ts';

export abstract class ChoiceStore {
  readonly compiled: Compiled;
  readonly trail: Trail;
  readonly cells: Int32Array;
  /** Steps of work since the start; about one a slot raised or a task looked at. */
  work = 0;

  readonly optionBase: Int32Array;
  private readonly alive: number;
  private readonly aliveCount: number;
  private readonly literalIn: number;
  private readonly literalOut: number;
  private readonly pending: number;
  protected readonly broken: number;
  private readonly refuted: number;

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

  /** @param before cells that the heir wants in front of these */
  constructor(compiled: Compiled, before: number) {
    this.compiled = compiled;
    const { optionCount, table } = compiled;
    this.optionBase = new Int32Array(optionCount.length + 1);
    optionCount.forEach((count, c) => (this.optionBase[c + 1] = (this.optionBase[c] ?? 0) + count));
    const options = this.optionBase[optionCount.length] ?? 0;
    let size = before;
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
    this.openAll();
  }

  /** The state before anything is known, written without a trail. */
  private openAll(): void {
    const { compiled, cells } = this;
    const { optionCount, table } = compiled;
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
  }

  /** The choice of the task's mode lost an option. */
  protected abstract updateMode(task: number, choice: number): void;

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
  /** Takes the option and drops all others. */
  assign(choice: number, option: number): boolean {
    if (!this.isAlive(choice, option)) return false;
    const count = this.compiled.optionCount[choice] as number;
    let dropped = false;
    for (let other = 0; other < count; other++) {
      if (other === option || !this.isAlive(choice, other)) continue;
      dropped = true;
      if (!this.drop(choice, other)) return false;
    }
    // What is left is looked at once, not after each option.
    if (dropped) this.updateModes(choice);
    return true;
  }

  removeOption(choice: number, option: number): boolean {
    if (!this.isAlive(choice, option)) return true;
    if (!this.drop(choice, option)) return false;
    this.updateModes(choice);
    return true;
  }

  /** Drops an open option, without a look at the modes of the choice's tasks. */
  private drop(choice: number, option: number): boolean {
    const { cells, trail } = this;
    const at = this.alive + (this.optionBase[choice] as number) + option;
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
    return true;
  }

  private updateModes(choice: number): void {
    const { start, items } = this.choiceTasks;
    const until = start[choice + 1] as number;
    for (let k = start[choice] as number; k < until; k++) this.updateMode(items[k] as number, choice);
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

  /** Forgets what is queued, after a contradiction. */
  protected clearConditions(): void {
    this.choiceQueue.length = 0;
    this.trueQueue.length = 0;
    this.falseQueue.length = 0;
    this.breakQueue.length = 0;
  }
}
