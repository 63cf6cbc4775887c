/**
 * The tasks of an exclusive resource as windows [earliest start, latest end), in time or in its mirror, where starts are negated ends.
 *
 * So each rule is written once, and run in both directions. Only tasks surely on the resource are in the two orders.
 */
import { sortNearlySorted } from '../nearly-sorted.ts';
import type { Trail } from '../../trail.ts';

export interface DisjunctiveTask {
  readonly start: number;
  readonly startOffset: number;
  readonly end: number;
  readonly endOffset: number;
  /** Least length while on the resource, at least 1. */
  readonly length: number;
  /** True while the task is on the resource. */
  readonly literal: number;
}

export class TaskWindows {
  readonly trail: Trail;
  readonly count: number;
  readonly length: Int32Array;
  readonly literal: Int32Array;
  /** By direction and task: earliest = bound[low] + lowShift, latest = −(bound[high] + highShift). */
  readonly low: readonly [Int32Array, Int32Array];
  readonly lowShift: readonly [Int32Array, Int32Array];
  readonly high: readonly [Int32Array, Int32Array];
  readonly highShift: readonly [Int32Array, Int32Array];

  /** What `read` took in: the direction, the windows by task, and the tasks surely on the resource in two orders. */
  direction = 0;
  readonly earliest: Int32Array;
  readonly latest: Int32Array;
  readonly byEarliest: Int32Array;
  readonly byLatest: Int32Array;
  /** Place of each task in the two orders. */
  readonly placeByEarliest: Int32Array;
  readonly placeByLatest: Int32Array;
  /** How many tasks are surely on the resource. */
  on = 0;

  /** By direction: all tasks, in the order of the last run, so that the next has little to sort. */
  private readonly sortedByEarliest: readonly [Int32Array, Int32Array];
  private readonly sortedByLatest: readonly [Int32Array, Int32Array];

  constructor(trail: Trail, tasks: readonly DisjunctiveTask[]) {
    this.trail = trail;
    const n = tasks.length;
    this.count = n;
    this.length = Int32Array.from(tasks, (t) => t.length);
    this.literal = Int32Array.from(tasks, (t) => t.literal);
    const starts = Int32Array.from(tasks, (t) => 2 * t.start);
    const startShift = Int32Array.from(tasks, (t) => t.startOffset);
    const ends = Int32Array.from(tasks, (t) => 2 * t.end + 1);
    const endShift = Int32Array.from(tasks, (t) => -t.endOffset);
    this.low = [starts, ends];
    this.lowShift = [startShift, endShift];
    this.high = [ends, starts];
    this.highShift = [endShift, startShift];
    const identity = (): Int32Array => Int32Array.from(tasks, (_, k) => k);
    this.sortedByEarliest = [identity(), identity()];
    this.sortedByLatest = [identity(), identity()];
    this.earliest = new Int32Array(n);
    this.latest = new Int32Array(n);
    this.byEarliest = new Int32Array(n);
    this.byLatest = new Int32Array(n);
    this.placeByEarliest = new Int32Array(n);
    this.placeByLatest = new Int32Array(n);
  }

  /** Slots whose rise may narrow a window or put a task on the resource. */
  slots(): Set<number> {
    const slots = new Set<number>();
    for (let k = 0; k < this.count; k++) {
      slots.add(this.low[0][k]!).add(this.low[1][k]!);
      if (this.literal[k] !== this.trail.alwaysTrue) slots.add(this.trail.slotOf(this.literal[k]!));
    }
    return slots;
  }

  /**
   * Takes in the bounds now, in the time of a direction.
   * @returns a task on the resource whose own window is shorter than it is, or −1
   */
  read(direction: number): number {
    const { trail, earliest, latest, length } = this;
    const bound = trail.bound;
    const low = this.low[direction]!;
    const lowShift = this.lowShift[direction]!;
    const high = this.high[direction]!;
    const highShift = this.highShift[direction]!;
    this.direction = direction;
    let short = -1;
    for (let k = 0; k < this.count; k++) {
      const from = bound[low[k]!]! + lowShift[k]!;
      const until = -(bound[high[k]!]! + highShift[k]!);
      earliest[k] = from;
      latest[k] = until;
      if (until - from < length[k]! && trail.isTrue(this.literal[k]!)) short = k;
    }
    this.keepOn(this.sortedByEarliest[direction]!, earliest, this.byEarliest, this.placeByEarliest);
    this.on = this.keepOn(this.sortedByLatest[direction]!, latest, this.byLatest, this.placeByLatest);
    return short;
  }

  /** Sorts all tasks and copies those surely on the resource; returns how many. */
  private keepOn(sorted: Int32Array, key: Int32Array, to: Int32Array, place: Int32Array): number {
    const { trail, literal } = this;
    sortNearlySorted(sorted, key);
    let n = 0;
    for (let i = 0; i < this.count; i++) {
      const k = sorted[i]!;
      if (!trail.isTrue(literal[k]!)) continue;
      place[k] = n;
      to[n++] = k;
    }
    return n;
  }

  /** Lets task i start no earlier than a minute in the time of the direction, above what holds now; false on conflict. */
  startFrom(i: number, minute: number, reason: number): boolean {
    return this.trail.set(this.low[this.direction]![i]!, minute - this.lowShift[this.direction]![i]!, reason);
  }

  /** Earliest start of a task just before the entry at a position was made. */
  earliestBefore(direction: number, k: number, position: number): number {
    return this.trail.boundBefore(this.low[direction]![k]!, position) + this.lowShift[direction]![k]!;
  }
  /** Latest end of a task just before the entry at a position was made. */
  latestBefore(direction: number, k: number, position: number): number {
    return -(this.trail.boundBefore(this.high[direction]![k]!, position) + this.highShift[direction]![k]!);
  }
}
