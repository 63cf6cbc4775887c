/**
 * What is left of the resources of a project, minute by minute. Several resources share a word: each has a field of bits for what is left of
 * it, and above that a bit that is always set. Taking away what a task needs clears that bit in just those fields that have not enough, so one
 * subtraction asks all of them at once.
 *
 * Example: capacities 5 and 3 have fields of 3 and 2 bits, and with their upper bits they share seven; 2 of the first and 3 of the second
 * need 2 + (3 << 4).
 */
import type { PlainProject } from './plain-project.ts';

const WORD = 32;

export class Profile {
  /** Minutes looked at. */
  looked = 0;
  private readonly words: number;
  /** By resource: its word and the lowest bit of its field. */
  private readonly wordOf: Int32Array;
  private readonly shift: Int32Array;
  private readonly most: Int32Array;
  /** By word: the bits that are always set. */
  private readonly guard: Int32Array;
  /** By word and minute: what is there, and what is left. */
  private readonly whole: Int32Array;
  private readonly left: Int32Array;
  /** By task and word: what it needs. */
  private readonly need: Int32Array;
  /** By task: 1 where it needs more than there ever is. */
  private readonly never: Uint8Array;

  constructor(private readonly project: PlainProject) {
    const { count, horizon, resources, capacity } = project;
    this.wordOf = new Int32Array(resources);
    this.shift = new Int32Array(resources);
    this.most = new Int32Array(resources);
    let word = 0;
    let bit = 0;
    for (let r = 0; r < resources; r++) {
      const own = capacity.subarray(r * horizon, (r + 1) * horizon);
      this.most[r] = own.reduce((most, minute) => Math.max(most, minute), 0);
      const bits = WORD - Math.clz32(this.most[r]!) + 1;
      if (bit + bits > WORD) {
        word++;
        bit = 0;
      }
      this.wordOf[r] = word;
      this.shift[r] = bit;
      bit += bits;
    }
    this.words = word + 1;
    this.guard = new Int32Array(this.words);
    this.whole = new Int32Array(this.words * horizon);
    for (let r = 0; r < resources; r++) this.addResource(r);
    this.left = this.whole.slice();
    this.need = new Int32Array(count * this.words);
    this.never = new Uint8Array(count);
    this.reckonNeeds();
  }

  private addResource(r: number): void {
    const { project, whole, guard, wordOf, shift, most } = this;
    const { horizon, capacity } = project;
    const word = wordOf[r]!;
    const upper = 1 << (shift[r]! + WORD - Math.clz32(most[r]!));
    guard[word] = guard[word]! | upper;
    for (let t = 0; t < horizon; t++) {
      const at = word * horizon + t;
      whole[at] = whole[at]! | upper | (capacity[r * horizon + t]! << shift[r]!);
    }
  }

  /** Call when the project's amounts have changed. */
  reckonNeeds(): void {
    const { project, words, wordOf, shift, most, need, never } = this;
    const { count, uses, amount } = project;
    need.fill(0);
    never.fill(0);
    for (let task = 0; task < count; task++)
      for (let u = uses.start[task]!; u < uses.start[task + 1]!; u++) {
        const r = uses.items[u]!;
        if (amount[u]! > most[r]!) never[task] = 1;
        else need[task * words + wordOf[r]!] = need[task * words + wordOf[r]!]! + (amount[u]! << shift[r]!);
      }
  }

  /** Gives back all that was taken. */
  clear(): void {
    this.left.set(this.whole);
  }

  /** Takes what the task needs from the first stretch from `at` on that has it. @returns its start; −1 where none ends by the horizon */
  placeEarly(task: number, at: number, length: number): number {
    if (this.never[task] !== 0 && length > 0) return -1;
    const { words } = this;
    let start = this.firstRoom(task, 0, at, length);
    for (let w = 1, agreed = 1; agreed < words && start >= 0; w = w + 1 === words ? 0 : w + 1) {
      const next = this.firstRoom(task, w, start, length);
      agreed = next === start ? agreed + 1 : 1;
      start = next;
    }
    if (start >= 0) this.take(task, start, length);
    return start;
  }

  /** Takes what the task needs from the last stretch from `at` on or before that has it. @returns its start; −1 where there is none */
  placeLate(task: number, at: number, length: number): number {
    const { words } = this;
    let start = this.lastRoom(task, 0, at, length);
    for (let w = 1, agreed = 1; agreed < words && start >= 0; w = w + 1 === words ? 0 : w + 1) {
      const next = this.lastRoom(task, w, start, length);
      agreed = next === start ? agreed + 1 : 1;
      start = next;
    }
    if (start >= 0) this.take(task, start, length);
    return start;
  }

  private take(task: number, start: number, length: number): void {
    const { words, left, need, project } = this;
    for (let w = 0; w < words; w++) {
      const own = need[task * words + w]!;
      if (own === 0) continue;
      const from = w * project.horizon + start;
      const to = from + length;
      for (let t = from; t < to; t++) left[t] = left[t]! - own;
    }
  }

  /** First start from `at` on by one word alone; −1 where none ends by the horizon. */
  private firstRoom(task: number, word: number, at: number, length: number): number {
    const { left, words, project } = this;
    const { horizon } = project;
    const need = this.need[task * words + word]!;
    const guard = this.guard[word]!;
    const base = word * horizon;
    const last = base + horizon;
    let start = base + at;
    let end = start + length;
    // What lies between the start and here is known to have room.
    let known = need === 0 ? end : start;
    for (;;) {
      if (end > last) return -1;
      let t = end - 1;
      while (t >= known && ((left[t]! - need) & guard) === guard) t--;
      this.looked += end - t;
      if (t < known) return start - base;
      known = end;
      start = t + 1;
      end = start + length;
    }
  }

  /** Last start up to `at` by one word alone; −1 where there is none. */
  private lastRoom(task: number, word: number, at: number, length: number): number {
    const { left, words, project } = this;
    const need = this.need[task * words + word]!;
    const guard = this.guard[word]!;
    const base = word * project.horizon;
    let start = base + at;
    // What lies from here on up to the end is known to have room.
    let known = need === 0 ? start : start + length;
    for (;;) {
      if (start < base) return -1;
      let t = start;
      while (t < known && ((left[t]! - need) & guard) === guard) t++;
      this.looked += t - start + 1;
      if (t >= known) return start - base;
      known = start;
      start = t - length;
    }
  }
}
