/**
 * Exclusive resource: the tasks on it never overlap, seen as sets.
 *
 * The pairs have order Booleans with arcs of their own. Three rules say more about sets. **Overload**: tasks that must all lie within a
 * window need no more minutes than it has. **Edge finding**: where Ω fits the window [a, b) but Ω ∪ {i} with i before any of Ω does not, i
 * comes after all of Ω; said as order literals. **Not first**: where i before all of Ω would not let Ω end by b, i starts no
 * earlier than the first of Ω can end. **Precedence sets**: what is ordered before i takes its minutes one after the other, from
 * the earliest start among them on. Each rule runs on time and on its mirror, where starts are negated ends. A set Ω is explained by
 * start ≥ m and end ≤ b for its members, with m as low as the work in Ω allows.
 *
 * Example: work of 3, 4 and 5 minutes that may start at 0 and must end by 10 fits in no order, 12 > 10.
 *
 * Sources: Carlier & Pinson (1989); Vilím (2004), O(n log n) filtering algorithms; Vilím (2005) for explanations. Plain O(n²) loops.
 */
import type { Explanation } from '../explanation.ts';
import type { Propagator } from '../propagator.ts';
import type { Trail } from '../trail.ts';

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

const OVERLOAD = 0;
const EDGE = 1;
const AFTER_SET = 2;
const NOT_FIRST = 3;

/** Lists shorter than this are looked at every time; longer ones at least once in so many. */
const PATIENT = 16;
const LONGEST_WAIT = 30;

export class Disjunctive implements Propagator {
  readonly priority = 2;
  id = 0;
  readonly cost: number;

  private readonly trail: Trail;
  private readonly count: number;
  private readonly length: Int32Array;
  private readonly literal: Int32Array;
  /** By direction and task: earliest = bound[low] + lowShift, latest = −(bound[high] + highShift). */
  private readonly low: readonly [Int32Array, Int32Array];
  private readonly lowShift: readonly [Int32Array, Int32Array];
  private readonly high: readonly [Int32Array, Int32Array];
  private readonly highShift: readonly [Int32Array, Int32Array];
  /** order[k * n + l]: true when k is before l; never both of a pair. */
  private readonly order: Int32Array;

  /** By direction: all tasks, in the order of the last run, so that the next has little to sort. */
  private readonly sortedByEarliest: readonly [Int32Array, Int32Array];
  private readonly sortedByLatest: readonly [Int32Array, Int32Array];
  private onCount = 0;
  private found = 0;
  private idle = 0;
  private wait = 0;
  private readonly earliest: Int32Array;
  private readonly latest: Int32Array;
  private readonly byEarliest: Int32Array;
  private readonly byLatest: Int32Array;
  private readonly suffix: Int32Array;
  private readonly members: Int32Array;

  constructor(trail: Trail, tasks: readonly DisjunctiveTask[], order: Int32Array) {
    this.trail = trail;
    const n = tasks.length;
    this.count = n;
    this.cost = n * n + 8;
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
    this.order = order;
    const identity = (): Int32Array => Int32Array.from(tasks, (_, k) => k);
    this.sortedByEarliest = [identity(), identity()];
    this.sortedByLatest = [identity(), identity()];
    this.earliest = new Int32Array(n);
    this.latest = new Int32Array(n);
    this.byEarliest = new Int32Array(n);
    this.byLatest = new Int32Array(n);
    this.suffix = new Int32Array(n + 1);
    this.members = new Int32Array(n);
  }

  watches(): (readonly [number, number])[] {
    const slots = new Set<number>();
    for (let k = 0; k < this.count; k++) {
      slots.add(this.low[0][k]!).add(this.low[1][k]!);
      if (this.literal[k] !== this.trail.alwaysTrue) slots.add(this.trail.slotOf(this.literal[k]!));
    }
    for (const literal of this.order)
      if (literal !== 0 && literal !== this.trail.alwaysTrue && literal !== this.trail.alwaysFalse)
        slots.add(this.trail.slotOf(literal));
    return [...slots].map((slot) => [slot, 0] as const);
  }

  propagate(): boolean {
    if (--this.wait > 0) return true;
    const before = this.found;
    const fine = this.run();
    // All rules only add strength, so long lists are looked at less often while nothing comes of it.
    this.idle = fine && this.found === before ? this.idle + 1 : 0;
    this.wait = this.onCount < PATIENT ? 1 : 1 + (this.onCount >> 5) + Math.min(LONGEST_WAIT, this.idle >> 3);
    return fine;
  }

  private run(): boolean {
    for (let direction = 0; direction < 2; direction++) {
      this.read(direction);
      if (this.onCount < 2) return true;
      // Groups of tasks that end before the next group starts have no windows in common.
      let from = 0;
      let end = -0x3fffffff;
      for (let j = 0; j <= this.onCount; j++) {
        const k = j < this.onCount ? this.byEarliest[j]! : -1;
        if (k >= 0 && (j === from || this.earliest[k]! < end)) {
          if (this.latest[k]! > end) end = this.latest[k]!;
          continue;
        }
        if (j - from > 1 && !this.edges(direction, from, j)) return false;
        if (j - from > 2 && !this.notFirst(direction, from, j)) return false;
        if (k < 0) break;
        from = j;
        end = this.latest[k]!;
      }
      if (!this.afterSets(direction)) return false;
    }
    return true;
  }

  /** Takes in the tasks surely on the resource, in both orders. */
  private read(direction: number): void {
    const { trail, earliest, latest } = this;
    const bound = trail.bound;
    const low = this.low[direction]!;
    const lowShift = this.lowShift[direction]!;
    const high = this.high[direction]!;
    const highShift = this.highShift[direction]!;
    for (let k = 0; k < this.count; k++) {
      earliest[k] = bound[low[k]!]! + lowShift[k]!;
      latest[k] = -(bound[high[k]!]! + highShift[k]!);
    }
    sort(this.sortedByEarliest[direction]!, earliest);
    sort(this.sortedByLatest[direction]!, latest);
    this.onCount = this.keepOn(this.sortedByEarliest[direction]!, this.byEarliest);
    this.keepOn(this.sortedByLatest[direction]!, this.byLatest);
  }

  /** Copies the tasks surely on the resource; returns how many. */
  private keepOn(from: Int32Array, to: Int32Array): number {
    const { trail, literal } = this;
    let n = 0;
    for (let i = 0; i < this.count; i++) if (trail.isTrue(literal[from[i]!]!)) to[n++] = from[i]!;
    return n;
  }

  /** Overload and edge finding over the windows of the group at places [from, until) of the order by earliest start. */
  private edges(direction: number, from: number, until: number): boolean {
    const { trail, byEarliest, byLatest, earliest, latest, length, suffix } = this;
    const first = earliest[byEarliest[from]!]!;
    for (let u = 0; u < this.onCount; u++) {
      const b = latest[byLatest[u]!]!;
      if (earliest[byLatest[u]!]! < first) continue;
      if (u + 1 < this.onCount && latest[byLatest[u + 1]!] === b) continue;
      // suffix[j]: work of the group's tasks from place j on that must end by b.
      suffix[until] = 0;
      let fullest = -0x3fffffff;
      let longest = 0;
      let outside = 0;
      for (let j = until - 1; j >= from; j--) {
        const k = byEarliest[j]!;
        const p = length[k]!;
        if (latest[k]! > b) {
          suffix[j] = suffix[j + 1]!;
          outside++;
          if (p > longest) longest = p;
          continue;
        }
        const work = suffix[j + 1]! + p;
        suffix[j] = work;
        const filled = earliest[k]! + work;
        if (filled > fullest) fullest = filled;
        if (filled > b) return trail.fail(trail.record(this.id, OVERLOAD | (direction << 2), earliest[k]!, b));
      }
      // When the longest task left outside still fits every window, edge finding has nothing to say.
      if (outside > 0 && fullest + longest > b && !this.edgesBy(direction, from, until, b)) return false;
      if (outside === 0) break;
    }
    return true;
  }

  /** Edge finding for windows that end at b, from the suffix sums made for it. */
  private edgesBy(direction: number, from: number, until: number, b: number): boolean {
    const { byEarliest, earliest, latest, length, suffix } = this;
    // Among windows that begin no later than i may start, the one where most work is left over.
    let best = -0x3fffffff;
    let bestFrom = 0;
    let reach = from;
    for (let j = from; j < until; j++) {
      const i = byEarliest[j]!;
      const e = earliest[i]!;
      // Windows beginning at the same earliest start belong to all tasks that have it.
      while (reach < until && earliest[byEarliest[reach]!]! <= e) {
        const a = earliest[byEarliest[reach]!]!;
        if (suffix[reach]! > 0 && a + suffix[reach]! > best) {
          best = a + suffix[reach]!;
          bestFrom = a;
        }
        reach++;
      }
      if (latest[i]! <= b) continue;
      const p = length[i]!;
      if (best + p > b) {
        if (!this.placeAfter(direction, i, bestFrom, b)) return false;
      } else if (reach < until && e + suffix[reach]! + p > b && suffix[reach]! > 0) {
        if (!this.placeAfter(direction, i, earliest[byEarliest[reach]!]!, b)) return false;
      }
    }
    return true;
  }

  /** i comes after every task that must lie within [a, b). */
  private placeAfter(direction: number, i: number, a: number, b: number): boolean {
    const { trail } = this;
    let reason = 0;
    for (let m = 0; m < this.onCount; m++) {
      const j = this.byEarliest[m]!;
      if (j === i || this.earliest[j]! < a || this.latest[j]! > b) continue;
      const first = direction === 0 ? this.order[i * this.count + j]! : this.order[j * this.count + i]!;
      const off = first ^ trail.negation;
      if (trail.isTrue(off)) continue;
      this.found++;
      if (reason === 0) reason = trail.record(this.id, EDGE | (direction << 2) | (i << 3), a, b);
      if (!trail.setLiteral(off, reason)) return false;
    }
    return true;
  }

  /** Tasks of the group at places [from, until) that cannot be the first of a set start once some other of the set may have ended. */
  private notFirst(direction: number, from: number, until: number): boolean {
    const { trail, byEarliest, byLatest, earliest, latest, length, members } = this;
    this.sortByEnd(from, until);
    const size = until - from;
    const first = earliest[byEarliest[from]!]!;
    for (let m = 0; m < size; m++) {
      const i = members[m]!;
      const done = earliest[i]! + length[i]!;
      let goal = earliest[i]!;
      let end = 0;
      let all = 0;
      for (let u = 0; u < this.onCount; u++) {
        const last = byLatest[u]!;
        const b = latest[last]!;
        if (last === i || earliest[last]! < first || earliest[last]! + length[last]! <= goal) continue;
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
      if (goal <= earliest[i]!) continue;
      this.found++;
      const reason = trail.record(this.id, NOT_FIRST | (direction << 2) | (i << 3), 0, end);
      if (!trail.set(this.low[direction]![i]!, goal - this.lowShift[direction]![i]!, reason)) return false;
    }
    return true;
  }

  /** Puts the group at places [from, until) into `members`, the latest earliest end first. */
  private sortByEnd(from: number, until: number): void {
    const { byEarliest, earliest, length, members } = this;
    let n = 0;
    for (let j = from; j < until; j++) {
      const k = byEarliest[j]!;
      const end = earliest[k]! + length[k]!;
      let at = n++;
      while (at > 0 && earliest[members[at - 1]!]! + length[members[at - 1]!]! < end) {
        members[at] = members[at - 1]!;
        at--;
      }
      members[at] = k;
    }
  }

  /** What is ordered before i takes its minutes before i starts. */
  private afterSets(direction: number): boolean {
    const { trail, byEarliest, earliest, length, count } = this;
    const low = this.low[direction]!;
    const shift = this.lowShift[direction]!;
    for (let m = 0; m < this.onCount; m++) {
      const i = this.byEarliest[m]!;
      let work = 0;
      let best = -0x3fffffff;
      let from = 0;
      for (let j = this.onCount - 1; j >= 0; j--) {
        const k = byEarliest[j]!;
        if (k === i) continue;
        const first = direction === 0 ? this.order[k * count + i]! : this.order[i * count + k]!;
        if (!trail.isTrue(first)) continue;
        work += length[k]!;
        if (earliest[k]! + work > best) {
          best = earliest[k]! + work;
          from = earliest[k]!;
        }
      }
      const slot = low[i]!;
      const value = best - shift[i]!;
      if (value <= trail.bound[slot]!) continue;
      this.found++;
      if (!trail.set(slot, value, trail.record(this.id, AFTER_SET | (direction << 2) | (i << 3), from, 0)))
        return false;
    }
    return true;
  }

  explain(into: Explanation, position: number, _slot: number, value: number, record: number): void {
    const { trail } = this;
    const word = trail.records[record + 1]!;
    const a = trail.records[record + 2]!;
    const b = trail.records[record + 3]!;
    const direction = (word >> 2) & 1;
    const i = word >> 3;
    switch (word & 3) {
      case OVERLOAD:
        this.explainWindow(into, position, direction, -1, a, b);
        return;
      case EDGE:
        this.explainWindow(into, position, direction, i, a, b);
        return;
      case NOT_FIRST:
        this.explainNotFirst(into, position, direction, i, value + this.lowShift[direction]![i]!, b);
        return;
      default:
        this.explainSet(into, position, direction, i, a, value + this.lowShift[direction]![i]!);
    }
  }

  private earliestBefore(direction: number, k: number, position: number): number {
    return this.trail.boundBefore(this.low[direction]![k]!, position) + this.lowShift[direction]![k]!;
  }
  private latestBefore(direction: number, k: number, position: number): number {
    return -(this.trail.boundBefore(this.high[direction]![k]!, position) + this.highShift[direction]![k]!);
  }

  /** The tasks of [a, b), with i when there is one, have too much work for [m, b) with m the highest such minute. */
  private explainWindow(into: Explanation, position: number, direction: number, i: number, a: number, b: number): void {
    const { trail, members } = this;
    let count = 0;
    let work = 0;
    for (let k = 0; k < this.count; k++) {
      if (k === i || !trail.wasTrue(this.literal[k]!, position)) continue;
      if (this.earliestBefore(direction, k, position) < a || this.latestBefore(direction, k, position) > b) continue;
      members[count++] = k;
      work += this.length[k]!;
    }
    if (i >= 0) work += this.length[i]!;
    const m = b - work + 1;
    for (let c = 0; c < count; c++) {
      this.addEarliest(into, direction, members[c]!, m);
      this.addUse(into, members[c]!);
      into.add(this.high[direction]![members[c]!]!, -b - this.highShift[direction]![members[c]!]!);
    }
    if (i >= 0) {
      this.addEarliest(into, direction, i, m);
      this.addUse(into, i);
    }
  }

  /** Tasks that cannot end before the goal but must end by b are too many to come after i: so one is before it, and i not before the goal. */
  private explainNotFirst(
    into: Explanation,
    position: number,
    direction: number,
    i: number,
    goal: number,
    b: number,
  ): void {
    const { trail } = this;
    const room = b - this.earliestBefore(direction, i, position) - this.length[i]!;
    let work = 0;
    // One is needed even where i alone does not end by b.
    for (let k = 0; k < this.count && (work === 0 || work <= room); k++) {
      if (k === i || !trail.wasTrue(this.literal[k]!, position) || this.latestBefore(direction, k, position) > b)
        continue;
      if (this.earliestBefore(direction, k, position) + this.length[k]! < goal) continue;
      work += this.length[k]!;
      this.addEarliest(into, direction, k, goal - this.length[k]!);
      this.addUse(into, k);
      into.add(this.high[direction]![k]!, -b - this.highShift[direction]![k]!);
    }
    this.addEarliest(into, direction, i, b - work - this.length[i]! + 1);
    this.addUse(into, i);
  }

  /** Tasks ordered before i, none starting before the set's first start, fill the minutes up to the goal. */
  private explainSet(into: Explanation, position: number, direction: number, i: number, a: number, goal: number): void {
    const { trail, members, count } = this;
    let found = 0;
    let work = 0;
    for (let k = 0; k < count; k++) {
      if (k === i || !trail.wasTrue(this.literal[k]!, position)) continue;
      const first = direction === 0 ? this.order[k * count + i]! : this.order[i * count + k]!;
      if (!trail.wasTrue(first, position) || this.earliestBefore(direction, k, position) < a) continue;
      members[found++] = k;
      work += this.length[k]!;
    }
    // One is needed even where the first start alone reaches the goal.
    for (let c = found - 1; c >= 0 && found > 1; c--) {
      const k = members[c]!;
      if (a + work - this.length[k]! < goal) continue;
      work -= this.length[k]!;
      members[c] = members[--found]!;
    }
    for (let c = 0; c < found; c++) {
      const k = members[c]!;
      const first = direction === 0 ? this.order[k * count + i]! : this.order[i * count + k]!;
      if (first !== trail.alwaysTrue) into.add(trail.slotOf(first), trail.valueOf(first));
      this.addUse(into, k);
      this.addEarliest(into, direction, k, goal - work);
    }
  }

  private addEarliest(into: Explanation, direction: number, k: number, minute: number): void {
    into.add(this.low[direction]![k]!, minute - this.lowShift[direction]![k]!);
  }

  private addUse(into: Explanation, k: number): void {
    const literal = this.literal[k]!;
    if (literal !== this.trail.alwaysTrue) into.add(this.trail.slotOf(literal), this.trail.valueOf(literal));
  }
}

/** Insertion sort of tasks by a key; nearly sorted lists cost one pass. */
function sort(list: Int32Array, key: Int32Array): void {
  for (let i = 1; i < list.length; i++) {
    const k = list[i]!;
    const value = key[k]!;
    let j = i;
    while (j > 0 && key[list[j - 1]!]! > value) {
      list[j] = list[j - 1]!;
      j--;
    }
    list[j] = k;
  }
}
