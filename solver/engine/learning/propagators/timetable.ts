/**
 * Cumulative resource, by its time-table: at every minute the amounts surely in use do not exceed the capacity then.
 *
 * A task surely covers [LST, ECT). Its amount comes in layers, each under a literal that holds when the mode taken uses that much, so
 * that with several modes open the least amount of them counts. The profile is one number a minute, raised as the covered parts
 * grow and lowered exactly as they shrink. Reasons are pointwise: at minute t each profile task i gives ⟦start_i ≤ t⟧ ∧ ⟦end_i ≥ t + 1⟧ and
 * its layers; a push of j adds ⟦end_j ≥ t + 1⟧ and yields ⟦start_j ≥ t + 1⟧. They are written when analysis asks, from the bounds that
 * held then, with as few tasks as exceed the capacity, those of the lowest levels first.
 *
 * Sources: Lahrichi (1982) and Le Pape (1994) for the time-table; Schutt, Feydy, Stuckey, Wallace (2011), Explaining the
 * cumulative propagator.
 */
import { widened } from '../widened.ts';
import type { Explanation } from '../explanation.ts';
import type { Propagator } from '../propagator.ts';
import type { Trail } from '../trail.ts';

/** One task on the resource. `start` and `end` are variables with offsets added; they are the same variable for work of fixed length. */
export interface TimetableTask {
  readonly start: number;
  readonly startOffset: number;
  readonly end: number;
  readonly endOffset: number;
  /** Amounts that add up; each literal implies the one before it. */
  readonly layers: readonly { readonly amount: number; readonly literal: number }[];
}

const OVERLOAD = 0;
const PUSH_START = 1;
const PUSH_END = 2;
const DROP_LAYER = 3;

export class Timetable implements Propagator {
  readonly priority = 1;
  id = 0;
  readonly cost: number;

  private readonly trail: Trail;
  private readonly capacity: Int32Array;
  private readonly horizon: number;
  private readonly count: number;

  private readonly startSlot: Int32Array;
  private readonly startOffset: Int32Array;
  private readonly endSlot: Int32Array;
  private readonly endOffset: Int32Array;
  private readonly layerStart: Int32Array;
  private readonly layerAmount: Int32Array;
  private readonly layerLiteral: Int32Array;
  /** By task: its whole amount, where that is always used; −1 where some of it hangs on a literal. */
  private readonly sure: Int32Array;

  private readonly usage: Int32Array;
  private readonly partFrom: Int32Array;
  private readonly partUntil: Int32Array;
  private readonly partAmount: Int32Array;
  private readonly dirty: Uint8Array;
  private readonly dirtyList: Int32Array;
  private dirtyCount = 0;
  /** Changes of parts by five words: task, from, until, amount, level. */
  private changes = new Int32Array(5 << 8);
  private changesUsed = 0;
  /** Minutes whose usage rose in this run. */
  private risenFrom = 0;
  private risenUntil = 0;

  private readonly chosen: Int32Array;
  private readonly chosenAmount: Int32Array;
  private readonly chosenKey: Int32Array;

  /** @param capacity by minute, from 0 to the horizon exclusive */
  constructor(trail: Trail, capacity: Int32Array, tasks: readonly TimetableTask[]) {
    this.trail = trail;
    this.capacity = capacity;
    this.horizon = capacity.length;
    const n = tasks.length;
    this.count = n;
    this.cost = 2 * n + 4;
    this.startSlot = Int32Array.from(tasks, (t) => 2 * t.start);
    this.startOffset = Int32Array.from(tasks, (t) => t.startOffset);
    this.endSlot = Int32Array.from(tasks, (t) => 2 * t.end);
    this.endOffset = Int32Array.from(tasks, (t) => t.endOffset);
    this.layerStart = new Int32Array(n + 1);
    tasks.forEach((t, k) => (this.layerStart[k + 1] = this.layerStart[k]! + t.layers.length));
    this.layerAmount = Int32Array.from(tasks.flatMap((t) => t.layers.map((l) => l.amount)));
    this.layerLiteral = Int32Array.from(tasks.flatMap((t) => t.layers.map((l) => l.literal)));
    this.sure = Int32Array.from(tasks, ({ layers }) =>
      layers.every(({ literal }) => literal === trail.alwaysTrue) ? layers.reduce((sum, l) => sum + l.amount, 0) : -1,
    );
    this.usage = new Int32Array(this.horizon + 1);
    this.partFrom = new Int32Array(n);
    this.partUntil = new Int32Array(n);
    this.partAmount = new Int32Array(n);
    this.dirty = new Uint8Array(n);
    this.dirtyList = new Int32Array(n);
    this.chosen = new Int32Array(n);
    this.chosenAmount = new Int32Array(n);
    this.chosenKey = new Int32Array(n);
  }

  watches(): (readonly [number, number])[] {
    const pairs: [number, number][] = [];
    for (let k = 0; k < this.count; k++) {
      const slots = new Set([this.startSlot[k]!, this.startSlot[k]! + 1, this.endSlot[k]!, this.endSlot[k]! + 1]);
      for (let l = this.layerStart[k]!; l < this.layerStart[k + 1]!; l++)
        if (this.layerLiteral[l] !== this.trail.alwaysTrue) slots.add(this.trail.slotOf(this.layerLiteral[l]!));
      for (const slot of slots) pairs.push([slot, k]);
    }
    return pairs;
  }

  note(k: number): void {
    if (this.dirty[k] !== 0) return;
    this.dirty[k] = 1;
    this.dirtyList[this.dirtyCount++] = k;
  }

  /** Amount of the layers that are true. */
  private amount(k: number): number {
    if (this.sure[k]! >= 0) return this.sure[k]!;
    let sum = 0;
    for (let l = this.layerStart[k]!; l < this.layerStart[k + 1]!; l++) {
      if (!this.trail.isTrue(this.layerLiteral[l]!)) break;
      sum += this.layerAmount[l]!;
    }
    return sum;
  }

  propagate(): boolean {
    this.risenFrom = this.horizon;
    this.risenUntil = 0;
    for (let d = 0; d < this.dirtyCount; d++) if (!this.grow(this.dirtyList[d]!)) return false;
    if (this.risenFrom < this.risenUntil) {
      for (let k = 0; k < this.count; k++) if (!this.filter(k)) return false;
    } else for (let d = 0; d < this.dirtyCount; d++) if (!this.filter(this.dirtyList[d]!)) return false;
    for (let d = 0; d < this.dirtyCount; d++) this.dirty[this.dirtyList[d]!] = 0;
    this.dirtyCount = 0;
    return true;
  }

  /** Brings the profile up to a task's part now; false on overload. */
  private grow(k: number): boolean {
    const bound = this.trail.bound;
    const from = -bound[this.startSlot[k]! + 1]! + this.startOffset[k]!;
    const until = bound[this.endSlot[k]!]! + this.endOffset[k]!;
    if (from >= until) return true;
    const amount = this.amount(k);
    const oldFrom = this.partFrom[k]!;
    const oldUntil = this.partUntil[k]!;
    const oldAmount = this.partAmount[k]!;
    if (amount === 0 || (amount === oldAmount && from === oldFrom && until === oldUntil)) return true;
    this.remember(k, oldFrom, oldUntil, oldAmount);
    this.partFrom[k] = from;
    this.partUntil[k] = until;
    this.partAmount[k] = amount;
    if (oldAmount === 0) return this.raise(from, until, amount);
    let fine = this.raise(from, oldFrom, amount);
    fine = this.raise(oldUntil, until, amount) && fine;
    if (amount > oldAmount) fine = this.raise(oldFrom, oldUntil, amount - oldAmount) && fine;
    return fine;
  }

  private remember(k: number, from: number, until: number, amount: number): void {
    if (this.changesUsed + 5 > this.changes.length) {
      this.changes = widened(this.changes, this.changes.length * 2);
    }
    const at = this.changesUsed;
    this.changes[at] = k;
    this.changes[at + 1] = from;
    this.changes[at + 2] = until;
    this.changes[at + 3] = amount;
    this.changes[at + 4] = this.trail.level;
    this.changesUsed = at + 5;
  }

  /** Adds an amount over [from, until); false (with the conflict told) when a minute is overloaded. */
  private raise(from: number, until: number, amount: number): boolean {
    if (from >= until) return true;
    const { usage, capacity } = this;
    let worst = -1;
    for (let t = from; t < until; t++) {
      const now = usage[t]! + amount;
      usage[t] = now;
      if (now > capacity[t]!) worst = t;
    }
    if (from < this.risenFrom) this.risenFrom = from;
    if (until > this.risenUntil) this.risenUntil = until;
    if (worst < 0) return true;
    return this.trail.fail(this.trail.record(this.id, OVERLOAD, -1, worst));
  }

  backtrack(level: number): void {
    const { changes, usage } = this;
    while (this.changesUsed > 0 && changes[this.changesUsed - 1]! > level) {
      const at = this.changesUsed - 5;
      this.changesUsed = at;
      const k = changes[at]!;
      const from = this.partFrom[k]!;
      const until = this.partUntil[k]!;
      const amount = this.partAmount[k]!;
      const oldFrom = changes[at + 1]!;
      const oldUntil = changes[at + 2]!;
      const oldAmount = changes[at + 3]!;
      for (let t = from; t < until; t++) usage[t]! -= amount;
      for (let t = oldFrom; t < oldUntil; t++) usage[t]! += oldAmount;
      this.partFrom[k] = oldFrom;
      this.partUntil[k] = oldUntil;
      this.partAmount[k] = oldAmount;
    }
  }

  /** Pushes one task out of minutes where it cannot be. */
  private filter(k: number): boolean {
    const { trail } = this;
    const bound = trail.bound;
    const own = this.dirty[k] !== 0;
    const earliest = bound[this.startSlot[k]!]! + this.startOffset[k]!;
    const latest = -bound[this.endSlot[k]! + 1]! + this.endOffset[k]!;
    if (!own && (this.risenFrom >= latest || this.risenUntil <= earliest)) return true;
    const amount = this.amount(k);
    // What has not changed itself fits wherever the usage has not risen.
    const low = own ? 0 : this.risenFrom;
    const high = own ? this.horizon : this.risenUntil;
    if (amount > 0 && !(this.pushStart(k, amount, low, high) && this.pushEnd(k, amount, low, high))) return false;
    return this.sure[k]! >= 0 || this.dropLayer(k, amount);
  }

  /** Pushes a task's start behind the last minute of [low, high) where it would overload; then behind others. */
  private pushStart(k: number, amount: number, low: number, high: number): boolean {
    const { trail, usage, capacity } = this;
    const slot = this.startSlot[k]!;
    for (let least = low, most = high; ; least = 0, most = this.horizon) {
      const from = trail.bound[slot]! + this.startOffset[k]!;
      const until = trail.bound[this.endSlot[k]!]! + this.endOffset[k]!;
      // Within its own part the usage holds its own amount and is known to fit.
      const partFrom = this.partAmount[k] === 0 ? until : this.partFrom[k]!;
      const first = from > least ? from : least;
      let t = (until < partFrom ? until : partFrom) - 1;
      if (t >= most) t = most - 1;
      while (t >= first && usage[t]! + amount <= capacity[t]!) t--;
      if (t < first) return true;
      if (!trail.set(slot, t + 1 - this.startOffset[k]!, trail.record(this.id, PUSH_START, k, t))) return false;
    }
  }

  /** The mirror image of `pushStart`. */
  private pushEnd(k: number, amount: number, low: number, high: number): boolean {
    const { trail, usage, capacity } = this;
    const slot = this.endSlot[k]! + 1;
    for (let least = low, most = high; ; least = 0, most = this.horizon) {
      const until = -trail.bound[slot]! + this.endOffset[k]!;
      const from = -trail.bound[this.startSlot[k]! + 1]! + this.startOffset[k]!;
      const partUntil = this.partAmount[k] === 0 ? from : this.partUntil[k]!;
      const end = until < most ? until : most;
      let t = from > partUntil ? from : partUntil;
      if (t < least) t = least;
      while (t < end && usage[t]! + amount <= capacity[t]!) t++;
      if (t >= end) return true;
      if (!trail.set(slot, this.endOffset[k]! - t, trail.record(this.id, PUSH_END, k, t))) return false;
    }
  }

  /** The first layer not yet true is false when it would overload a minute that the task surely covers. */
  private dropLayer(k: number, amount: number): boolean {
    const { trail, usage, capacity } = this;
    let l = this.layerStart[k]!;
    const end = this.layerStart[k + 1]!;
    while (l < end && trail.isTrue(this.layerLiteral[l]!)) l++;
    if (l === end || trail.isFalse(this.layerLiteral[l]!)) return true;
    const from = -trail.bound[this.startSlot[k]! + 1]! + this.startOffset[k]!;
    const until = trail.bound[this.endSlot[k]!]! + this.endOffset[k]!;
    const more = this.layerAmount[l]!;
    for (let t = from; t < until; t++) {
      const inPart = this.partAmount[k]! > 0 && t >= this.partFrom[k]! && t < this.partUntil[k]!;
      if (usage[t]! + (inPart ? 0 : amount) + more <= capacity[t]!) continue;
      return trail.setLiteral(this.layerLiteral[l]! ^ trail.negation, trail.record(this.id, DROP_LAYER, k, t));
    }
    return true;
  }

  explain(into: Explanation, position: number, _slot: number, value: number, record: number): void {
    const { trail } = this;
    const kind = trail.records[record + 1]!;
    const k = trail.records[record + 2]!;
    let t = trail.records[record + 3]!;
    // A push further than asked for is explained at the minute asked for, where the profile is as high there.
    if (kind === PUSH_START) t = this.nearer(position, t, value - 1 + this.startOffset[k]!, k);
    else if (kind === PUSH_END) t = this.nearer(position, t, this.endOffset[k]! - value, k);
    let over = this.capacity[t]! + 1;
    if (kind !== OVERLOAD) {
      // The pushed task's own layers, all that were true; a dropped layer counts on top.
      for (let l = this.layerStart[k]!; l < this.layerStart[k + 1]!; l++) {
        const literal = this.layerLiteral[l]!;
        if (!trail.wasTrue(literal, position)) {
          if (kind === DROP_LAYER) over -= this.layerAmount[l]!;
          break;
        }
        over -= this.layerAmount[l]!;
        if (literal !== trail.alwaysTrue) into.add(trail.slotOf(literal), trail.valueOf(literal));
      }
      if (kind !== PUSH_START) into.add(this.startSlot[k]! + 1, this.startOffset[k]! - t);
      if (kind !== PUSH_END) into.add(this.endSlot[k]!, t + 1 - this.endOffset[k]!);
    }
    if (over > 0) this.coverWith(into, position, t, over, kind === OVERLOAD ? -1 : k);
  }

  /** `asked` when a task with k's amount does not fit there either, otherwise t. */
  private nearer(position: number, t: number, asked: number, k: number): number {
    const { trail } = this;
    if (t === asked) return t;
    let level = 0;
    for (let i = 0; i < this.count; i++) {
      const covered =
        i === k ||
        (trail.boundBefore(this.startSlot[i]! + 1, position) >= this.startOffset[i]! - asked &&
          trail.boundBefore(this.endSlot[i]!, position) >= asked + 1 - this.endOffset[i]!);
      if (!covered) continue;
      for (let l = this.layerStart[i]!; l < this.layerStart[i + 1]!; l++) {
        if (!trail.wasTrue(this.layerLiteral[l]!, position)) break;
        level += this.layerAmount[l]!;
      }
    }
    return level > this.capacity[asked]! ? asked : t;
  }

  /** Adds profile tasks at minute t whose amounts reach `over`: old ones first, then without those that the slack allows. */
  private coverWith(into: Explanation, position: number, t: number, over: number, except: number): void {
    const { trail, chosen, chosenAmount, chosenKey } = this;
    let count = 0;
    for (let k = 0; k < this.count; k++) {
      if (k === except) continue;
      const startNeed = this.startOffset[k]! - t;
      const endNeed = t + 1 - this.endOffset[k]!;
      const startSlot = this.startSlot[k]! + 1;
      const endSlot = this.endSlot[k]!;
      if (trail.bound[startSlot]! < startNeed || trail.bound[endSlot]! < endNeed) continue;
      let key = trail.entryOf(startSlot, startNeed);
      if (key >= position) continue;
      const endEntry = trail.entryOf(endSlot, endNeed);
      if (endEntry >= position) continue;
      if (endEntry > key) key = endEntry;
      let amount = 0;
      for (let l = this.layerStart[k]!; l < this.layerStart[k + 1]!; l++) {
        const literal = this.layerLiteral[l]!;
        if (!trail.isTrue(literal)) break;
        const entry = trail.entryOf(trail.slotOf(literal), trail.valueOf(literal));
        if (entry >= position) break;
        if (entry > key) key = entry;
        amount += this.layerAmount[l]!;
      }
      if (amount === 0) continue;
      let at = count++;
      while (at > 0 && chosenKey[at - 1]! > key) {
        chosen[at] = chosen[at - 1]!;
        chosenAmount[at] = chosenAmount[at - 1]!;
        chosenKey[at] = chosenKey[at - 1]!;
        at--;
      }
      chosen[at] = k;
      chosenAmount[at] = amount;
      chosenKey[at] = key;
    }
    let sum = 0;
    let taken = 0;
    while (taken < count && sum < over) sum += chosenAmount[taken++]!;
    // Newest first, leave out what is not needed (facts cost nothing and stay).
    for (let c = taken - 1; c >= 0; c--) {
      if (chosenKey[c]! >= 0 && sum - chosenAmount[c]! >= over) {
        sum -= chosenAmount[c]!;
        continue;
      }
      this.cover(into, chosen[c]!, t, chosenAmount[c]!);
    }
  }

  private cover(into: Explanation, k: number, t: number, amount: number): void {
    const { trail } = this;
    into.add(this.startSlot[k]! + 1, this.startOffset[k]! - t);
    into.add(this.endSlot[k]!, t + 1 - this.endOffset[k]!);
    let sum = 0;
    for (let l = this.layerStart[k]!; sum < amount; l++) {
      sum += this.layerAmount[l]!;
      const literal = this.layerLiteral[l]!;
      if (literal !== trail.alwaysTrue) into.add(trail.slotOf(literal), trail.valueOf(literal));
    }
  }
}
