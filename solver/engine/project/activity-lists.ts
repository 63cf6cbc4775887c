/**
 * Activity lists of a project, in orders that its lags allow: drawn by biased random sampling (Kolisch and Drexl 1996), crossed by two points
 * (Hartmann 1998), and changed a little (Alcaraz and Maroto 2001).
 */
import type { Random } from '../random.ts';
import type { PlainProject } from './plain-project.ts';

/** Percent of the tasks that a change moves, and how many places at most. */
const MOVED = 4;
const REACH = 12;

export class ActivityLists {
  private readonly taken: Uint8Array;
  private readonly ready: Int32Array;
  private readonly open: Int32Array;
  private readonly latest: Float64Array;

  /** @param project whose lengths and lags may change between calls */
  constructor(
    private readonly project: PlainProject,
    private readonly random: Random,
  ) {
    const { count } = project;
    this.taken = new Uint8Array(count);
    this.ready = new Int32Array(count);
    this.open = new Int32Array(count);
    this.latest = new Float64Array(count);
    this.reckonLatest();
  }

  /** Latest starts against the longest path, up to a constant. Call when lengths or lags have changed. */
  reckonLatest(): void {
    const { count, topological, after, afterLag, length } = this.project;
    for (let k = count - 1; k >= 0; k--) {
      const task = topological[k] as number;
      let at = -(length[task] as number);
      for (let a = after.start[task] as number; a < (after.start[task + 1] as number); a++)
        at = Math.min(at, (this.latest[after.items[a] as number] as number) - (afterLag[a] as number));
      this.latest[task] = at;
    }
  }

  /** Draws a list where small latest starts are likelier; with no bias they decide, the larger it is the less. */
  sample(list: Int32Array, bias: number): void {
    const { random, ready, open, latest, project } = this;
    const { count, before, after } = project;
    let waiting = 0;
    for (let task = 0; task < count; task++) {
      open[task] = (before.start[task + 1] as number) - (before.start[task] as number);
      if (open[task] === 0) ready[waiting++] = task;
    }
    for (let k = 0; k < count; k++) {
      let best = 0;
      let bestKey = Infinity;
      for (let i = 0; i < waiting; i++) {
        const task = ready[i] as number;
        const key = (latest[task] as number) + (bias === 0 ? 0 : (random.below(1000) * bias) / 1000);
        if (key < bestKey || (key === bestKey && task < (ready[best] as number))) {
          best = i;
          bestKey = key;
        }
      }
      const task = ready[best] as number;
      ready[best] = ready[--waiting] as number;
      list[k] = task;
      for (let a = after.start[task] as number; a < (after.start[task + 1] as number); a++) {
        const next = after.items[a] as number;
        open[next] = (open[next] as number) - 1;
        if (open[next] === 0) ready[waiting++] = next;
      }
    }
  }

  /**
   * Two-point crossover: the mother's beginning and end, the father's order between.
   *
   * @returns by task: 1 where the mother decided, 2 where the father did; read it before the next call
   */
  cross(mother: Int32Array, father: Int32Array, child: Int32Array): Uint8Array {
    const { random, taken, project } = this;
    const { count } = project;
    let a = random.below(count);
    let b = random.below(count);
    if (a > b) {
      const swap = a;
      a = b;
      b = swap;
    }
    taken.fill(0);
    let k = 0;
    for (; k < a; k++) {
      child[k] = mother[k] as number;
      taken[child[k] as number] = 1;
    }
    for (let i = 0; k < b && i < count; i++) {
      const task = father[i] as number;
      if (taken[task] !== 0) continue;
      child[k++] = task;
      taken[task] = 2;
    }
    for (let i = 0; i < count; i++) {
      const task = mother[i] as number;
      if (taken[task] !== 0) continue;
      child[k++] = task;
      taken[task] = 1;
    }
    return taken;
  }

  /** Moves a few tasks to another place between their neighbours in the lags. */
  change(list: Int32Array): void {
    const { random, project } = this;
    const { count, after, before } = project;
    for (let k = 0; k < count; k++) {
      if (random.below(100) >= MOVED) continue;
      const task = list[k] as number;
      const forth = random.below(2) === 1;
      let to = k;
      const reach = 1 + random.below(REACH);
      while (Math.abs(to - k) < reach) {
        const next = forth ? to + 1 : to - 1;
        if (next < 0 || next >= count) break;
        const other = list[next] as number;
        if (forth ? has(after.start, after.items, task, other) : has(before.start, before.items, task, other)) break;
        list[to] = other;
        to = next;
      }
      list[to] = task;
    }
  }
}

function has(start: Int32Array, items: Int32Array, task: number, other: number): boolean {
  for (let k = start[task] as number; k < (start[task + 1] as number); k++) if (items[k] === other) return true;
  return false;
}
