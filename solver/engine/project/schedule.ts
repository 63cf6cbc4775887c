/**
 * Serial schedule generation for a plain project, forward and backward, on a profile by minutes (Kolisch 1996), and the double
 * justification that follows it (Valls, Ballestín and Quintanilla 2005): everything as late as it can be within the finish found, then
 * as early as it can be again, which never makes the plan longer.
 */
import type { PlainProject } from './plain-project.ts';
import { Profile } from './profile.ts';

/** Passes of justification after each plan. */
const PASSES = 3;

export class ProjectSchedule {
  /** Starts of the plan built last. */
  readonly start: Int32Array;
  /** Starts when everything was as late as it could be, in the justification done last. */
  readonly late: Int32Array;
  private readonly profile: Profile;
  private readonly order: Int32Array;
  private readonly buckets: Int32Array;
  private readonly span: number;

  constructor(private readonly project: PlainProject) {
    this.start = new Int32Array(project.count);
    this.late = new Int32Array(project.count);
    this.order = new Int32Array(project.count);
    this.profile = new Profile(project);
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
    const { project, start, profile } = this;
    const { before, beforeLag, release, due, length } = project;
    profile.clear();
    let value = 0;
    for (let k = 0; k < list.length; k++) {
      const task = list[k] as number;
      let at = release[task] as number;
      const until = before.start[task + 1] as number;
      for (let b = before.start[task] as number; b < until; b++) {
        const ready = (start[before.items[b] as number] as number) + (beforeLag[b] as number);
        if (ready > at) at = ready;
      }
      at = profile.placeEarly(task, at, length[task] as number);
      if (at < 0) return -1;
      start[task] = at;
      if ((due[task] as number) >= 0 && at + (due[task] as number) > value) {
        value = at + (due[task] as number);
        if (value > most) return -1;
      }
    }
    return value;
  }

  /** Minutes looked at since this was last asked, for the budget. */
  steps(): number {
    const { looked } = this.profile;
    this.profile.looked = 0;
    return looked;
  }

  /** Call when the project's amounts have changed. */
  reckonNeeds(): void {
    this.profile.reckonNeeds();
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
    const { project, start, profile, order } = this;
    const { after, afterLag, due, length } = project;
    profile.clear();
    for (let k = order.length - 1; k >= 0; k--) {
      const task = order[k] as number;
      const own = due[task] as number;
      let at = own >= 0 ? value - own : this.span - (length[task] as number);
      const until = after.start[task + 1] as number;
      for (let a = after.start[task] as number; a < until; a++) {
        const latest = (start[after.items[a] as number] as number) - (afterLag[a] as number);
        if (latest < at) at = latest;
      }
      at = profile.placeLate(task, at, length[task] as number);
      start[task] = at;
    }
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
    let least = this.span;
    let most = 0;
    for (let k = 0; k < count; k++) {
      const at = start[k]! + (byEnd === 1 ? length[k]! : 0);
      if (at < least) least = at;
      if (at > most) most = at;
    }
    buckets.fill(0, least, most + 2);
    for (let k = 0; k < count; k++) {
      const at = start[k]! + (byEnd === 1 ? length[k]! : 0) + 1;
      buckets[at] = buckets[at]! + 1;
    }
    let sum = 0;
    for (let t = least + 1; t <= most; t++) {
      sum += buckets[t]!;
      buckets[t] = sum;
    }
    for (let k = 0; k < count; k++) {
      const task = topological[k]!;
      const at = start[task]! + (byEnd === 1 ? length[task]! : 0);
      const place = buckets[at]!;
      buckets[at] = place + 1;
      order[place] = task;
    }
  }
}
