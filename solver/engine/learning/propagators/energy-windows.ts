/**
 * Overload check of a cumulative resource over windows of time, for tasks of fixed length: what must lie within [a, b) may not ask for more
 * than the capacity gives there.
 *
 * The windows run from an earliest start to a latest end. Tasks whose own window lies inside count in full, others by the minutes they surely
 * cover (time-table edge finding). A reason takes the least minutes m that each task spends in the window: ⟦start ≥ a + m − length⟧ ∧ ⟦start ≤ b − m⟧;
 * as far as the overload has slack, tasks are left out, those of the highest levels first, and others count for fewer minutes.
 *
 * It only refutes; what follows from that is the learner's. It runs last, since a run takes the square of the tasks, and no more where
 * it has refuted too seldom to be worth that.
 *
 * Sources: Vilím (2011), Timetable edge finding filtering algorithm for discrete cumulative resources; Schutt, Feydy, Stuckey (2013),
 * Explaining time-table-edge-finding propagation for the cumulative resource constraint.
 */
import { sortNearlySorted } from './nearly-sorted.ts';
import type { Explanation } from '../explanation.ts';
import type { Propagator } from '../propagator.ts';
import type { Trail } from '../trail.ts';

/** A task of fixed length ≥ 1 and weight ≥ 1; `start` is a variable with an offset added. */
export interface WindowTask {
  readonly start: number;
  readonly startOffset: number;
  readonly length: number;
  readonly weight: number;
}

/** Runs before it is judged, and runs for each refutation that it is worth (measured on 30-task projects). */
const TRIAL = 4000;
const WORTH = 100;

export class EnergyWindows implements Propagator {
  readonly priority = 2;
  id = 0;
  cost: number;

  private runs = 0;
  private refutations = 0;
  private readonly trail: Trail;
  private readonly capacity: number;
  private readonly count: number;
  private readonly slot: Int32Array;
  private readonly offset: Int32Array;
  private readonly length: Int32Array;
  private readonly weight: Int32Array;

  private readonly earliest: Int32Array;
  /** Latest ends, and the tasks in their order, kept between runs so that there is little to sort. */
  private readonly latest: Int32Array;
  private readonly byLatest: Int32Array;
  /** By task: what it weighs outside of the minutes that it surely covers. */
  private readonly loose: Int32Array;
  /** Σ weight of what is surely covered before each minute. */
  private readonly sureBefore: Int32Array;
  /** For a reason: each task's minutes in the window, and the entry that made them sure. */
  private readonly minutes: Int32Array;
  private readonly entry: Int32Array;
  private readonly byEntry: Int32Array;

  /** @param horizon no task ends after it */
  constructor(trail: Trail, capacity: number, horizon: number, tasks: readonly WindowTask[]) {
    this.trail = trail;
    this.capacity = capacity;
    const n = tasks.length;
    this.count = n;
    this.cost = n + ((n * n) >> 4);
    this.slot = Int32Array.from(tasks, (task) => 2 * task.start);
    this.offset = Int32Array.from(tasks, (task) => task.startOffset);
    this.length = Int32Array.from(tasks, (task) => task.length);
    this.weight = Int32Array.from(tasks, (task) => task.weight);
    this.earliest = new Int32Array(n);
    this.latest = new Int32Array(n);
    this.byLatest = Int32Array.from(tasks, (_, k) => k);
    this.loose = new Int32Array(n);
    this.sureBefore = new Int32Array(horizon + 2);
    this.minutes = new Int32Array(n);
    this.entry = new Int32Array(n);
    this.byEntry = new Int32Array(n);
  }

  watches(): (readonly [number, number])[] {
    return [...new Set(this.slot)].flatMap((slot) => [[slot, -1] as const, [slot + 1, -1] as const]);
  }

  propagate(): boolean {
    if (this.runs >= TRIAL && this.runs > WORTH * this.refutations) {
      this.cost = 1;
      return true;
    }
    this.runs++;
    this.read();
    const { count, capacity, earliest, latest, byLatest, loose, sureBefore } = this;
    for (let first = 0; first < count; first++) {
      const a = earliest[first]!;
      // Energy within [a, b), less what there is between a and b.
      let inside = 0;
      const ground = sureBefore[a]! - capacity * a;
      for (let i = 0; i < count; i++) {
        const k = byLatest[i]!;
        if (earliest[k]! < a) continue;
        inside += loose[k]!;
        const b = latest[k]!;
        if (inside + sureBefore[b]! - capacity * b <= ground) continue;
        this.refutations++;
        return this.trail.fail(this.trail.record(this.id, a, b, 0));
      }
    }
    return true;
  }

  /** Takes in the bounds now. */
  private read(): void {
    const { count, slot, offset, length, weight, earliest, latest, byLatest, loose, sureBefore } = this;
    const { bound } = this.trail;
    let end = 0;
    for (let k = 0; k < count; k++) {
      earliest[k] = bound[slot[k]!]! + offset[k]!;
      latest[k] = offset[k]! + length[k]! - bound[slot[k]! + 1]!;
      if (latest[k]! > end) end = latest[k]!;
    }
    sureBefore.fill(0, 0, end + 2);
    for (let k = 0; k < count; k++) {
      const from = latest[k]! - length[k]!;
      const until = earliest[k]! + length[k]!;
      const sure = from < until ? until - from : 0;
      loose[k] = weight[k]! * (length[k]! - sure);
      if (sure === 0) continue;
      sureBefore[from + 1]! += weight[k]!;
      sureBefore[until + 1]! -= weight[k]!;
    }
    let level = 0;
    for (let t = 1; t <= end; t++) {
      level += sureBefore[t]!;
      sureBefore[t] = sureBefore[t - 1]! + level;
    }
    sortNearlySorted(byLatest, latest, count);
  }

  explain(into: Explanation, position: number, _slot: number, _value: number, record: number): void {
    const { trail, slot, offset, length, weight, minutes, entry, byEntry } = this;
    const a = trail.records[record + 1]!;
    const b = trail.records[record + 2]!;
    let slack = -this.capacity * (b - a) - 1;
    let count = 0;
    for (let k = 0; k < this.count; k++) {
      const earliest = trail.boundBefore(slot[k]!, position) + offset[k]!;
      const latest = offset[k]! - trail.boundBefore(slot[k]! + 1, position);
      const within = Math.min(length[k]!, b - a, earliest + length[k]! - a, b - latest);
      if (within <= 0) continue;
      minutes[k] = within;
      slack += within * weight[k]!;
      const low = trail.entryOf(slot[k]!, this.low(k, a));
      const high = trail.entryOf(slot[k]! + 1, this.high(k, b));
      entry[k] = low > high ? low : high;
      byEntry[count++] = k;
    }
    sortNearlySorted(byEntry, entry, count);
    for (let i = count - 1; i >= 0; i--) {
      const k = byEntry[i]!;
      const energy = minutes[k]! * weight[k]!;
      // Facts cost nothing and stay.
      if (entry[k]! < 0 || energy > slack) continue;
      slack -= energy;
      minutes[k] = 0;
    }
    for (let i = count - 1; i >= 0; i--) {
      const k = byEntry[i]!;
      if (minutes[k] === 0) continue;
      if (entry[k]! >= 0) {
        const fewer = Math.min(minutes[k]! - 1, Math.floor(slack / weight[k]!));
        minutes[k]! -= fewer;
        slack -= fewer * weight[k]!;
      }
      into.add(slot[k]!, this.low(k, a));
      into.add(slot[k]! + 1, this.high(k, b));
    }
  }

  /** The bounds under which a task spends its `minutes` in the window, by its two slots. */
  private low(k: number, a: number): number {
    return a + this.minutes[k]! - this.length[k]! - this.offset[k]!;
  }
  private high(k: number, b: number): number {
    return this.minutes[k]! - b + this.offset[k]!;
  }
}
