/**
 * A genetic algorithm over activity lists (Hartmann 1998; Alcaraz and Maroto 2001) with double justification of every child (Valls,
 * Ballestín and Quintanilla 2008). The first generation comes from biased random sampling by latest start (Kolisch and Drexl 1996).
 */
import type { Random } from '../random.ts';
import type { PlainProject } from './plain-project.ts';
import { ProjectSchedule } from './schedule.ts';

const POPULATION = 40;

export class Evolution {
  /** Least value found and its starts; Infinity before the first plan. */
  best = Infinity;
  readonly bestStart: Int32Array;
  private readonly schedule: ProjectSchedule;
  private readonly lists: Int32Array[];
  private readonly values: Float64Array;
  private readonly child: Int32Array;
  private readonly taken: Uint8Array;
  private readonly ready: Int32Array;
  private readonly open: Int32Array;
  private readonly latest: Float64Array;
  private size = 0;
  private idle = 0;

  constructor(
    private readonly project: PlainProject,
    private readonly random: Random,
  ) {
    const { count } = project;
    this.bestStart = new Int32Array(count);
    this.schedule = new ProjectSchedule(project);
    this.lists = Array.from({ length: POPULATION }, () => new Int32Array(count));
    this.values = new Float64Array(POPULATION);
    this.child = new Int32Array(count);
    this.taken = new Uint8Array(count);
    this.ready = new Int32Array(count);
    this.open = new Int32Array(count);
    this.latest = latestStarts(project);
  }

  /** Builds one more plan. @returns steps spent */
  step(): number {
    const { schedule, random } = this;
    schedule.steps = 0;
    if (this.size < POPULATION) {
      this.sample();
      const value = this.decode(Infinity);
      if (value >= 0) this.keep(this.size++, value);
      else if (random.below(50) === 0 && this.size === 0) this.idle++;
    } else {
      this.cross();
      this.mutate();
      const worst = this.worst();
      const value = this.decode(Infinity);
      if (value >= 0 && value <= (this.values[worst] as number) && !this.isKnown(value)) this.keep(worst, value);
      this.idle++;
      // A stale population starts afresh; the best is remembered apart.
      if (this.idle > 60 * POPULATION) {
        this.size = 0;
        this.idle = 0;
      }
    }
    return (schedule.steps >> 2) + this.project.count * 3;
  }

  /** Takes a plan from outside into the population, by its starts. */
  adopt(start: Int32Array, value: number): void {
    this.schedule.start.set(start);
    this.keep(this.size < POPULATION ? this.size++ : this.worst(), value);
  }

  /** Makes a plan of the child list and justifies it. */
  private decode(most: number): number {
    const { schedule } = this;
    let value = schedule.forward(this.child, most);
    if (value < 0) return value;
    for (let pass = 0; pass < 3; pass++) {
      const next = schedule.justify(value);
      if (next < 0 || next >= value) break;
      value = next;
    }
    return value;
  }

  private keep(slot: number, value: number): void {
    this.schedule.listInto(this.lists[slot] as Int32Array);
    this.values[slot] = value;
    if (value >= this.best) return;
    this.best = value;
    this.bestStart.set(this.schedule.start);
    this.idle = 0;
  }

  private worst(): number {
    let worst = 0;
    for (let k = 1; k < this.size; k++) if ((this.values[k] as number) > (this.values[worst] as number)) worst = k;
    return worst;
  }

  /** True when the population has a list of this value that is the same as the plan's. */
  private isKnown(value: number): boolean {
    const { child, schedule } = this;
    schedule.listInto(child);
    for (let k = 0; k < this.size; k++) {
      if (this.values[k] !== value) continue;
      const list = this.lists[k] as Int32Array;
      let same = true;
      for (let i = 0; same && i < list.length; i++) same = list[i] === child[i];
      if (same) return true;
    }
    return false;
  }

  /** Two-point crossover: the mother's beginning and end, the father's order between. */
  private cross(): void {
    const { random, child, taken, project } = this;
    const mother = this.lists[this.choose()] as Int32Array;
    const father = this.lists[this.choose()] as Int32Array;
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
      if (taken[task] === 1) continue;
      child[k++] = task;
      taken[task] = 1;
    }
    for (let i = 0; i < count; i++) {
      const task = mother[i] as number;
      if (taken[task] === 0) child[k++] = task;
    }
  }

  private choose(): number {
    const a = this.random.below(this.size);
    const b = this.random.below(this.size);
    return (this.values[a] as number) <= (this.values[b] as number) ? a : b;
  }

  /** Moves a few tasks to another place between their neighbours in the lags. */
  private mutate(): void {
    const { random, child, project } = this;
    const { count, after, before } = project;
    for (let k = 0; k < count; k++) {
      if (random.below(100) >= 4) continue;
      const task = child[k] as number;
      const forth = random.below(2) === 1;
      let to = k;
      const reach = 1 + random.below(12);
      while (Math.abs(to - k) < reach) {
        const next = forth ? to + 1 : to - 1;
        if (next < 0 || next >= count) break;
        const other = child[next] as number;
        if (forth ? has(after.start, after.items, task, other) : has(before.start, before.items, task, other)) break;
        child[to] = other;
        to = next;
      }
      child[to] = task;
    }
  }

  /** A list by biased random sampling: small latest starts are likelier. */
  private sample(): void {
    const { random, child, ready, open, latest, project } = this;
    const { count, before, after } = project;
    let waiting = 0;
    for (let task = 0; task < count; task++) {
      open[task] = (before.start[task + 1] as number) - (before.start[task] as number);
      if (open[task] === 0) ready[waiting++] = task;
    }
    const bias = this.size === 0 ? 0 : 3 + random.below(30);
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
      child[k] = task;
      for (let a = after.start[task] as number; a < (after.start[task + 1] as number); a++) {
        const next = after.items[a] as number;
        open[next] = (open[next] as number) - 1;
        if (open[next] === 0) ready[waiting++] = next;
      }
    }
    this.schedule.steps += count * 20;
  }
}

function has(start: Int32Array, items: Int32Array, task: number, other: number): boolean {
  for (let k = start[task] as number; k < (start[task + 1] as number); k++) if (items[k] === other) return true;
  return false;
}

/** Latest starts against the longest path, up to a constant. */
function latestStarts(project: PlainProject): Float64Array {
  const { count, topological, after, afterLag, length } = project;
  const latest = new Float64Array(count);
  for (let k = count - 1; k >= 0; k--) {
    const task = topological[k] as number;
    let at = -(length[task] as number);
    for (let a = after.start[task] as number; a < (after.start[task + 1] as number); a++)
      at = Math.min(at, (latest[after.items[a] as number] as number) - (afterLag[a] as number));
    latest[task] = at;
  }
  return latest;
}
