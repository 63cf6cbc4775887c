/**
 * Not first on an exclusive resource: where i before all of Ω would not let Ω end by b, i starts no earlier than the first of Ω can end.
 *
 * Example: of 5 minutes from 0 on, 4 from 3 on and 3 from 4 on, the last two to end by 11, the first cannot come before both:
 * 0 + 5 + 4 + 3 > 11. So it does not start before minute 7, where the earlier of the two can have ended.
 *
 * A Θ-tree in mirrored time holds the tasks that cannot end before i may start, and tells by when they must have begun. Only for the tasks
 * i that come out as not first is the best Ω looked for. Source: Vilím (2004).
 */
import { NOT_FIRST, type Reasons } from './reasons.ts';
import { ThetaTree } from './theta-tree.ts';
import type { TaskWindows } from './task-windows.ts';

export class NotFirst {
  private readonly windows: TaskWindows;
  private readonly reasons: Reasons;
  private readonly tree: ThetaTree;
  /** The group, the latest earliest end first. */
  private readonly members: Int32Array;
  /** By task: 1 where it is not first. */
  private readonly late: Uint8Array;

  constructor(windows: TaskWindows, reasons: Reasons) {
    this.windows = windows;
    this.reasons = reasons;
    this.tree = new ThetaTree(windows.count);
    this.members = new Int32Array(windows.count);
    this.late = new Uint8Array(windows.count);
  }

  /** The rule over the group at places [from, until) of both orders; false on conflict. */
  propagate(from: number, until: number): boolean {
    this.sortByEnd(from, until);
    if (!this.detect(from, until)) return true;
    const { members, late } = this;
    const size = until - from;
    for (let m = 0; m < size; m++) {
      const i = members[m]!;
      if (late[i] !== 0 && !this.push(i, from, until)) return false;
    }
    return true;
  }

  /** Marks the tasks that are not first; whether there is one. */
  private detect(from: number, until: number): boolean {
    const { members, late, tree } = this;
    const { byEarliest, placeByLatest, earliest, latest, length } = this.windows;
    const size = until - from;
    tree.clear(size);
    let any = false;
    let next = 0;
    for (let j = until - 1; j >= from; j--) {
      const i = byEarliest[j]!;
      const e = earliest[i]!;
      for (; next < size; next++) {
        const k = members[next]!;
        if (earliest[k]! + length[k]! <= e) break;
        tree.insert(until - 1 - placeByLatest[k]!, -latest[k]!, length[k]!);
      }
      // The tasks must have begun by minute −ECT, and i itself is among them.
      const done = e + length[i]!;
      const not = done + tree.ect > 0 && done + tree.ectWithout(until - 1 - placeByLatest[i]!) > 0;
      late[i] = not ? 1 : 0;
      if (not) any = true;
    }
    return any;
  }

  /** Pushes a task that is not first as far as any set does. */
  private push(i: number, from: number, until: number): boolean {
    const { members } = this;
    const { byLatest, earliest, latest, length, direction } = this.windows;
    const size = until - from;
    const done = earliest[i]! + length[i]!;
    let goal = earliest[i]!;
    let end = 0;
    let all = 0;
    for (let u = from; u < until; u++) {
      const last = byLatest[u]!;
      const b = latest[last]!;
      if (last === i || earliest[last]! + length[last]! <= goal) continue;
      all += length[last]!;
      if (done + all <= b) continue;
      // Ω is taken in from the latest end on: the fewer it needs, the later the earliest end in it.
      let work = 0;
      for (let c = 0; c < size; c++) {
        const k = members[c]!;
        if (earliest[k]! + length[k]! <= goal) break;
        if (k === i || latest[k]! > b) continue;
        work += length[k]!;
        if (done + work <= b) continue;
        goal = earliest[k]! + length[k]!;
        end = b;
        break;
      }
    }
    if (goal <= earliest[i]!) return true;
    return this.windows.startFrom(i, goal, this.reasons.record(NOT_FIRST, direction, i, 0, end));
  }

  private sortByEnd(from: number, until: number): void {
    const { members } = this;
    const { byEarliest, earliest, length } = this.windows;
    let n = 0;
    // From the last start on, so that little is moved.
    for (let j = until - 1; j >= from; j--) {
      const k = byEarliest[j]!;
      const end = earliest[k]! + length[k]!;
      let at = n++;
      while (at > 0 && earliest[members[at - 1]!]! + length[members[at - 1]!]! <= end) {
        members[at] = members[at - 1]!;
        at--;
      }
      members[at] = k;
    }
  }
}
