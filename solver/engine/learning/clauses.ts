/**
 * Clauses over bound literals, propagated by two watched literals.
 *
 * A clause lies in `store` as [size, LBD, last use, literals…] and is named by the index of its size. The literals at places 0 and
 * 1 are watched; a reason's implied literal is at place 0. Watch lists are linked lists of nodes (clause, blocking literal, next),
 * one list for each bound literal, visited when that literal becomes true and the watched one (its negation) false. When a bound
 * jumps, the lists of all values in between are visited; a bitmap skips the empty ones.
 *
 * Sources: Moskewicz et al. (2001), Chaff; Eén & Sörensson (2003), An extensible SAT-solver; Audemard & Simon (2009) for LBD.
 */
import { BY_CLAUSE } from './trail.ts';
import type { Trail } from './trail.ts';

/** Words before the first literal. */
export const HEADER = 3;

export class Clauses {
  store = new Int32Array(1 << 14);
  private used = HEADER;
  /** Clauses of the problem, then learned ones. */
  private readonly given: number[] = [];
  private learned: number[] = [];
  /** Nodes by three words; node 0 is null. */
  private nodes = new Int32Array(3 << 12);
  private nodesUsed = 3;
  private heads = new Int32Array(0);
  private filled = new Int32Array(0);
  /** Watch nodes visited, for the work count. */
  visits = 0;
  private readonly trail: Trail;

  constructor(trail: Trail) {
    this.trail = trail;
  }

  get learnedCount(): number {
    return this.learned.length;
  }

  seal(): void {
    this.heads = new Int32Array(this.trail.literals);
    this.filled = new Int32Array((this.trail.literals >> 5) + 1);
  }

  /**
   * Adds a clause of at least two literals and watches the first two.
   * @returns its reference
   */
  add(literals: Int32Array | readonly number[], size: number, lbd: number, learned: boolean, stamp: number): number {
    const at = this.used;
    if (at + HEADER + size > this.store.length) {
      const wider = new Int32Array(Math.max(this.store.length * 2, at + HEADER + size));
      wider.set(this.store);
      this.store = wider;
    }
    this.store[at] = size;
    this.store[at + 1] = lbd;
    this.store[at + 2] = stamp;
    for (let i = 0; i < size; i++) this.store[at + HEADER + i] = literals[i]!;
    this.used = at + HEADER + size;
    (learned ? this.learned : this.given).push(at);
    this.watch(at);
    return at;
  }

  private watch(clause: number): void {
    const first = this.store[clause + HEADER]!;
    const second = this.store[clause + HEADER + 1]!;
    this.link(this.newNode(clause, second), first);
    this.link(this.newNode(clause, first), second);
  }

  private newNode(clause: number, blocker: number): number {
    if (this.nodesUsed + 3 > this.nodes.length) {
      const wider = new Int32Array(this.nodes.length * 2);
      wider.set(this.nodes);
      this.nodes = wider;
    }
    const node = this.nodesUsed;
    this.nodesUsed += 3;
    this.nodes[node] = clause;
    this.nodes[node + 1] = blocker;
    return node;
  }

  /** Puts a node into the list visited when `watched` becomes false. */
  private link(node: number, watched: number): void {
    const trail = this.trail;
    const trigger = watched ^ trail.negation;
    const slot = trigger >>> trail.valueBits;
    const index = trail.literalBase[slot]! + ((trigger & trail.mask) - trail.offset) - trail.initial[slot]! - 1;
    const head = this.heads[index]!;
    this.nodes[node + 2] = head;
    this.heads[index] = node;
    if (head === 0) this.filled[index >> 5]! |= 1 << (index & 31);
  }

  /**
   * Visits the clauses that the rise of a slot's bound may make unit or false.
   * @returns false on conflict, told to the trail
   */
  propagate(slot: number, old: number, now: number): boolean {
    const base = this.trail.literalBase[slot]! - this.trail.initial[slot]! - 1;
    const from = base + old + 1;
    const to = base + now;
    const firstWord = from >> 5;
    const lastWord = to >> 5;
    for (let word = firstWord; word <= lastWord; word++) {
      let bits = this.filled[word]!;
      if (bits === 0) continue;
      if (word === firstWord) bits &= -1 << (from & 31);
      if (word === lastWord) bits &= -1 >>> (31 - (to & 31));
      while (bits !== 0) {
        const low = bits & -bits;
        bits ^= low;
        const index = (word << 5) + 31 - Math.clz32(low);
        if (!this.visit(index, slot, index - base)) return false;
      }
    }
    return true;
  }

  /** Visits one list: (slot, value) has become true. */
  private visit(index: number, slot: number, value: number): boolean {
    const trail = this.trail;
    const { valueBits, mask, offset, negation, bound } = trail;
    const nodes = this.nodes;
    const store = this.store;
    const falsified = ((slot << valueBits) | (value + offset)) ^ negation;
    let before = 0;
    let node = this.heads[index]!;
    while (node !== 0) {
      this.visits++;
      const next = nodes[node + 2]!;
      const blocker = nodes[node + 1]!;
      if (bound[blocker >>> valueBits]! >= (blocker & mask) - offset) {
        before = node;
        node = next;
        continue;
      }
      const clause = nodes[node]!;
      const place = clause + HEADER;
      let first = store[place]!;
      if (first === falsified) {
        first = store[place + 1]!;
        store[place] = first;
        store[place + 1] = falsified;
      }
      if (first !== blocker && bound[first >>> valueBits]! >= (first & mask) - offset) {
        nodes[node + 1] = first;
        before = node;
        node = next;
        continue;
      }
      const end = place + store[clause]!;
      let k = place + 2;
      for (; k < end; k++) {
        const opposite = store[k]! ^ negation;
        if (bound[opposite >>> valueBits]! < (opposite & mask) - offset) break;
      }
      if (k < end) {
        const watched = store[k]!;
        store[k] = falsified;
        store[place + 1] = watched;
        if (before === 0) {
          this.heads[index] = next;
          if (next === 0) this.filled[index >> 5]! &= ~(1 << (index & 31));
        } else nodes[before + 2] = next;
        nodes[node + 1] = first;
        this.link(node, watched);
        node = next;
        continue;
      }
      const opposite = first ^ negation;
      if (bound[opposite >>> valueBits]! >= (opposite & mask) - offset) return trail.fail((clause << 2) | BY_CLAUSE);
      trail.set(first >>> valueBits, (first & mask) - offset, (clause << 2) | BY_CLAUSE);
      before = node;
      node = next;
    }
    return true;
  }

  /** Notes that a clause took part in a conflict. */
  touch(clause: number, stamp: number): void {
    this.store[clause + 2] = stamp;
  }

  /**
   * At level 0 with an empty trail: drops clauses that are facts and, when asked, the worse half of the learned ones (those of
   * high LBD, then those longest unused), and packs what is left.
   */
  tidy(dropLearned: boolean): void {
    const old = this.store;
    if (dropLearned) {
      this.learned.sort((a, b) => old[a + 1]! - old[b + 1]! || old[b + 2]! - old[a + 2]! || a - b);
      const half = this.learned.length >> 1;
      let kept = this.learned.length;
      while (kept > half && old[this.learned[kept - 1]! + 1]! > 2) kept--;
      this.learned.length = kept;
      this.learned.sort((a, b) => a - b);
    }
    this.store = new Int32Array(old.length);
    this.used = HEADER;
    this.nodesUsed = 3;
    this.heads.fill(0);
    this.filled.fill(0);
    this.pack(this.given, old);
    this.pack(this.learned, old);
  }

  private pack(list: number[], old: Int32Array): void {
    const trail = this.trail;
    let count = 0;
    for (const clause of list) {
      const size = old[clause]!;
      let satisfied = false;
      let at = this.used + HEADER;
      for (let k = clause + HEADER; k < clause + HEADER + size; k++) {
        const literal = old[k]!;
        if (trail.isTrue(literal)) {
          satisfied = true;
          break;
        }
        if (!trail.isFalse(literal)) this.store[at++] = literal;
      }
      if (satisfied) continue;
      const at0 = this.used;
      this.store[at0] = at - at0 - HEADER;
      this.store[at0 + 1] = old[clause + 1]!;
      this.store[at0 + 2] = old[clause + 2]!;
      this.used = at;
      list[count++] = at0;
      this.watch(at0);
    }
    list.length = count;
  }
}
