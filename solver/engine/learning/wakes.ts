/**
 * Who is to run next: propagators wait in three queues by priority, and are woken by the bounds that they watch.
 *
 * One that keeps something between runs is told which of its parts changed (`note`), and when levels are left (`backtrack`).
 */
import type { Propagator } from './propagator.ts';

export class Wakes {
  readonly propagators: Propagator[] = [];
  private readonly queues: readonly [number[], number[], number[]] = [[], [], []];
  private queued = new Uint8Array(0);
  /** By slot: who watches it, and what each is told; −1 where it is told nothing. */
  private start = new Int32Array(0);
  private watcher = new Int32Array(0);
  private data = new Int32Array(0);
  /** Those that keep something between runs. */
  private stateful: Propagator[] = [];

  post(propagator: Propagator): void {
    propagator.id = this.propagators.length;
    this.propagators.push(propagator);
  }

  /** Makes the lists of all that were posted. */
  seal(variables: number): void {
    const slots = 2 * variables;
    const lists: number[][] = Array.from({ length: slots }, () => []);
    for (const p of this.propagators)
      for (const [slot, data] of p.watches()) lists[slot]!.push(p.id, p.note === undefined ? -1 : data);
    this.stateful = this.propagators.filter((p) => p.backtrack !== undefined);
    const queued = new Uint8Array(this.propagators.length);
    queued.set(this.queued);
    this.queued = queued;
    this.start = new Int32Array(slots + 1);
    for (let s = 0; s < slots; s++) this.start[s + 1] = this.start[s]! + lists[s]!.length / 2;
    this.watcher = new Int32Array(this.start[slots]!);
    this.data = new Int32Array(this.start[slots]!);
    lists.forEach((list, s) => {
      for (let k = 0; k < list.length; k += 2) {
        this.watcher[this.start[s]! + k / 2] = list[k]!;
        this.data[this.start[s]! + k / 2] = list[k + 1]!;
      }
    });
  }

  /** A slot's bound rose. */
  wake(slot: number): void {
    const { start, watcher, data, propagators } = this;
    const end = start[slot + 1]!;
    for (let k = start[slot]!; k < end; k++) {
      const id = watcher[k]!;
      if (data[k]! >= 0) propagators[id]!.note!(data[k]!);
      this.enqueue(id);
    }
  }

  /** Has a propagator run, as if all that it watches had changed. */
  wakeWhole(p: Propagator): void {
    if (p.note !== undefined) for (const [, data] of p.watches()) if (data >= 0) p.note(data);
    this.enqueue(p.id);
  }

  private enqueue(id: number): void {
    if (this.queued[id] !== 0) return;
    this.queued[id] = 1;
    this.queues[this.propagators[id]!.priority].push(id);
  }

  /** Takes out the one to run next; null when none waits. */
  next(): Propagator | null {
    const [soon, later, last] = this.queues;
    const queue = soon.length > 0 ? soon : later.length > 0 ? later : last;
    const id = queue.pop();
    if (id === undefined) return null;
    this.queued[id] = 0;
    return this.propagators[id]!;
  }

  /** Levels above this one were left. */
  backtrack(level: number): void {
    for (let k = 0; k < this.stateful.length; k++) this.stateful[k]!.backtrack!(level);
  }
}
