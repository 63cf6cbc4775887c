/**
 * A set of tasks as a chain on the trail: it grows at its front, is gone through from there, and loses what is met on the way, all of
 * which undoing takes back. Example: 3 and then 7 put in are met as 7, 3; without the 7 as 3; and with it again once that is undone.
 */
import type { Trail } from './trail.ts';

/** In the cell of a task: it is not in the chain. */
const OUT = 0;
/** It is the last one; larger numbers are the next task and this. */
const LAST = 1;
const TASK = 2;

export class Chain {
  private readonly cells: Int32Array;
  private readonly front: number;

  /**
   * @param base address of the first of `cellsOf(size)` cells, all 0 at first
   * @param size tasks run from 0 to `size − 1`
   */
  constructor(
    private readonly trail: Trail,
    private readonly base: number,
    size: number,
  ) {
    this.cells = trail.cells;
    this.front = base + size;
  }

  static cellsOf(size: number): number {
    return size + 1;
  }

  has(task: number): boolean {
    return this.cells[this.base + task] !== OUT;
  }

  /** The task put in last of those that are left, −1 where there is none. */
  first(): number {
    const value = this.cells[this.front] as number;
    return value < TASK ? -1 : value - TASK;
  }

  /** The task put in before this one of those that are left, −1 where there is none. */
  next(task: number): number {
    const value = this.cells[this.base + task] as number;
    return value < TASK ? -1 : value - TASK;
  }

  /** Puts a task in front that is not in the chain. */
  add(task: number): void {
    const value = this.cells[this.front] as number;
    this.trail.set(this.base + task, value === OUT ? LAST : value);
    this.trail.set(this.front, task + TASK);
  }

  /** Takes a task out that `before` leads to; −1 where it is the first. */
  remove(task: number, before: number): void {
    this.trail.set(before < 0 ? this.front : this.base + before, this.cells[this.base + task] as number);
    this.trail.set(this.base + task, OUT);
  }
}
