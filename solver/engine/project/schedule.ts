/**
 * Serial schedule generation for a plain project, forward and backward, on a profile by minutes (Kolisch 1996), and the double
 * justification that follows it (Valls, Ballestín and Quintanilla 2005): everything as late as it can be within the finish found, then
 * as early as it can be again, which never makes the plan longer.
 */
import type { PlainProject } from './plain-project.ts';

/** Passes of justification after each plan. */
const PASSES = 3;

export class ProjectSchedule {
  /** Starts of the plan built last. */
  readonly start: Int32Array;
  /** Starts when everything was as late as it could be, in the justification done last. */
  readonly late: Int32Array;
  /** Minutes looked at, for the budget. */
  steps = 0;
  private readonly left: Int32Array;
  private readonly order: Int32Array;
  private readonly buckets: Int32Array;
  private readonly span: number;

  constructor(private readonly project: PlainProject) {
    this.start = new Int32Array(project.count);
    this.late = new Int32Array(project.count);
    this.order = new Int32Array(project.count);
    this.left = new Int32Array(project.capacity.length);
    this.span = project.horizon;
    this.buckets = new Int32Array(project.horizon + 2);
  }

  /**
   * Places tasks as early as possible in the order of a list that respects the lags.
   *
   * @param most give up as soon as the value is above this
   * @returns the value of the first tier, −1 when the horizon or `most` is passed
   */
  forward(list: Int32Array, most: number): number {
    const { project, start, left } = this;
    const { before, beforeLag, release, due, length, horizon } = project;
    left.set(project.capacity);
    let value = 0;
    for (let k = 0; k < list.length; k++) {
      const task = list[k] as number;
      let at = release[task] as number;
      const until = before.start[task + 1] as number;
      for (let b = before.start[task] as number; b < until; b++) {
        const ready = (start[before.items[b] as number] as number) + (beforeLag[b] as number);
        if (ready > at) at = ready;
      }
      const end = this.firstRoom(task, at);
      if (end > horizon) return -1;
      at = end - (length[task] as number);
      start[task] = at;
      this.take(task, at, end);
      if ((due[task] as number) >= 0 && at + (due[task] as number) > value) {
        value = at + (due[task] as number);
        if (value > most) return -1;
      }
    }
    return value;
  }

  /** Makes a plan of a list and justifies it, a few times while that helps. @returns its value, −1 when the horizon is passed */
  justified(list: Int32Array): number {
    let value = this.forward(list, Infinity);
    if (value < 0) return value;
    for (let pass = 0; pass < PASSES; pass++) {
      const next = this.justify(value);
      if (next < 0 || next >= value) break;
      value = next;
    }
    return value;
  }

  /** Pushes the plan as far back as the value allows, then forward again. @returns the new value */
  justify(value: number): number {
    this.sortByEnd();
    this.backward(value);
    this.late.set(this.start);
    this.sortByStart();
    return this.forward(this.order, value);
  }

  /** Writes the tasks in order of their starts, ties in an order that respects the lags. */
  listInto(list: Int32Array): void {
    this.sortByStart();
    list.set(this.order);
  }

  /** Places tasks as late as possible, in the order prepared; always possible within the value of a plan in that order. */
  private backward(value: number): void {
    const { project, start, left, order } = this;
    const { after, afterLag, due, length } = project;
    left.set(project.capacity);
    for (let k = order.length - 1; k >= 0; k--) {
      const task = order[k] as number;
      const own = due[task] as number;
      let at = own >= 0 ? value - own : this.span - (length[task] as number);
      const until = after.start[task + 1] as number;
      for (let a = after.start[task] as number; a < until; a++) {
        const latest = (start[after.items[a] as number] as number) - (afterLag[a] as number);
        if (latest < at) at = latest;
      }
      at = this.lastRoom(task, at);
      start[task] = at;
      this.take(task, at, at + (length[task] as number));
    }
  }

  private take(task: number, from: number, to: number): void {
    const { project, left } = this;
    const { uses, amount, horizon } = project;
    const until = uses.start[task + 1] as number;
    for (let u = uses.start[task] as number; u < until; u++) {
      const base = (uses.items[u] as number) * horizon;
      const need = amount[u] as number;
      for (let t = base + from; t < base + to; t++) left[t] = (left[t] as number) - need;
    }
  }

  /** End of the first stretch from `at` on with room for the task; past the horizon when there is none. */
  private firstRoom(task: number, at: number): number {
    const { project, left } = this;
    const { uses, amount, horizon, length } = project;
    const p = length[task] as number;
    const first = uses.start[task] as number;
    const until = uses.start[task + 1] as number;
    let start = at;
    let end = at + p;
    let u = first;
    while (u < until) {
      if (end > horizon) return horizon + 1;
      const base = (uses.items[u] as number) * horizon;
      const need = amount[u] as number;
      let t = end - 1;
      while (t >= start && (left[base + t] as number) >= need) t--;
      this.steps += end - t;
      if (t >= start) {
        start = t + 1;
        end = start + p;
        u = first;
      } else u++;
    }
    return end > horizon ? horizon + 1 : end;
  }

  /** The last start up to `at` with room for the task. */
  private lastRoom(task: number, at: number): number {
    const { project, left } = this;
    const { uses, amount, horizon, length } = project;
    const p = length[task] as number;
    const first = uses.start[task] as number;
    const until = uses.start[task + 1] as number;
    let start = at;
    let u = first;
    while (u < until) {
      const base = (uses.items[u] as number) * horizon;
      const need = amount[u] as number;
      const end = start + p;
      let t = start;
      while (t < end && (left[base + t] as number) >= need) t++;
      this.steps += t - start + 1;
      if (t < end) {
        start = t - p;
        u = first;
      } else u++;
    }
    return start;
  }

  /** Order by start; tasks of one start in topological order, which the counting sort keeps. */
  private sortByStart(): void {
    this.sort(0);
  }

  private sortByEnd(): void {
    this.sort(1);
  }

  private sort(byEnd: 0 | 1): void {
    const { project, start, order, buckets } = this;
    const { topological, length, count } = project;
    buckets.fill(0);
    for (let k = 0; k < count; k++) {
      const at = (start[k] as number) + byEnd * (length[k] as number) + 1;
      buckets[at] = (buckets[at] as number) + 1;
    }
    for (let t = 1; t < buckets.length; t++) buckets[t] = (buckets[t] as number) + (buckets[t - 1] as number);
    for (let k = 0; k < count; k++) {
      const task = topological[k] as number;
      const at = (start[task] as number) + byEnd * (length[task] as number);
      order[buckets[at] as number] = task;
      buckets[at] = (buckets[at] as number) + 1;
    }
  }
}
