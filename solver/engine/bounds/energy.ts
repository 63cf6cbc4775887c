/**
 * Energetic reasoning: in no stretch of time can tasks need more of a set of resources than is there.
 *
 * A present task surely spends `min(b − a, p, ECT − a, b − LST)` of its minutes in `[a, b)`, whether it is placed as far left or right as it
 * can be (Lopez, Erschler and Esquirol 1992; Baptiste, Le Pape and Nuijten 1999). Besides single resources, sets that stand in for
 * each other in the modes of some task (the people who may do it) are looked at together.
 */
import type { Compiled, CompiledMode } from '../compiled.ts';
import type { Store } from '../propagation/store.ts';
import type { Timetable } from '../propagation/timetable.ts';

/** Most pairs of a stretch and a task to look at in one pool; beyond, only some of the stretches are tried. */
const STRETCHES = 1_000_000;

export class Energy {
  private readonly compiled: Compiled;
  /** Sets of resources looked at together. */
  readonly pools: readonly (readonly number[])[];
  /** Capacity of each pool summed from minute 0: entry `t` is what there is before minute `t`. */
  private readonly supply: readonly Float64Array[];
  private readonly earliest: Int32Array;
  private readonly latest: Int32Array;
  private readonly length: Int32Array;
  private readonly amount: Float64Array;
  private count = 0;

  constructor(
    private readonly store: Store,
    private readonly timetable: Timetable,
    private readonly isOver: () => boolean = () => false,
  ) {
    this.compiled = store.compiled;
    this.pools = findPools(this.compiled);
    const { horizon, capacity, taskCount } = this.compiled;
    this.supply = this.pools.map((pool) => {
      const sum = new Float64Array(horizon + 1);
      for (let t = 0; t < horizon; t++) {
        let there = 0;
        for (const resource of pool) there += capacity[resource * horizon + t] as number;
        sum[t + 1] = (sum[t] as number) + there;
      }
      return sum;
    });
    this.earliest = new Int32Array(taskCount);
    this.latest = new Int32Array(taskCount);
    this.length = new Int32Array(taskCount);
    this.amount = new Float64Array(taskCount);
  }

  /** Index of a pool that is overloaded under the store's bounds, −1 when none is seen to be or there is no time to look. */
  overloaded(): number {
    for (let p = 0; p < this.pools.length && !this.isOver(); p++) {
      this.collect(this.pools[p] as readonly number[]);
      if (this.count > 1 && this.isOverloaded(this.supply[p] as Float64Array)) return p;
    }
    return -1;
  }

  /** Tasks that surely need something of the pool, after `overloaded` named it. */
  tasksOf(pool: number): number[] {
    const tasks: number[] = [];
    for (let task = 0; task < this.compiled.taskCount; task++)
      if (this.store.isPresent(task) && this.least(task, this.pools[pool] as readonly number[]) > 0) tasks.push(task);
    return tasks;
  }

  private collect(pool: readonly number[]): void {
    const { store } = this;
    this.count = 0;
    for (let task = 0; task < this.compiled.taskCount; task++) {
      if (!store.isPresent(task)) continue;
      const amount = this.least(task, pool);
      if (amount === 0) continue;
      this.earliest[this.count] = store.earliestStart(task);
      this.latest[this.count] = store.latestEnd(task);
      this.length[this.count] = Math.max(store.shortest(task), store.earliestEnd(task) - store.latestStart(task));
      this.amount[this.count] = amount;
      this.count++;
    }
    store.work += this.compiled.taskCount >> 2;
  }

  /** Least amount of the pool that the task needs in any mode still open. */
  private least(task: number, pool: readonly number[]): number {
    const { taskModes, modes } = this.compiled;
    let least = Infinity;
    for (let k = taskModes.start[task] as number; k < (taskModes.start[task + 1] as number); k++) {
      const index = taskModes.items[k] as number;
      if (!this.timetable.isOpen(task, index)) continue;
      let amount = 0;
      for (const use of (modes[index] as CompiledMode).uses) if (pool.includes(use.resource)) amount += use.amount;
      least = Math.min(least, amount);
    }
    return least === Infinity ? 0 : least;
  }

  private isOverloaded(supply: Float64Array): boolean {
    const { count, earliest, latest, length, amount, store } = this;
    // Stretches begin where some task can first start and end where some task must have ended.
    const stride = Math.max(1, Math.ceil(count ** 3 / STRETCHES));
    for (let i = 0; i < count; i++) {
      const a = earliest[i] as number;
      for (let j = i % stride; j < count; j += stride) {
        const b = latest[j] as number;
        if (b <= a) continue;
        let need = 0;
        const room = (supply[b] as number) - (supply[a] as number);
        for (let k = 0; k < count; k++) {
          const p = length[k] as number;
          let inside = b - a < p ? b - a : p;
          const left = (earliest[k] as number) + p - a;
          if (left < inside) inside = left;
          const right = b - (latest[k] as number) + p;
          if (right < inside) inside = right;
          if (inside > 0) need += inside * (amount[k] as number);
        }
        if (need > room) return true;
      }
    }
    store.work += Math.ceil(count ** 3 / (stride * 10));
    return false;
  }
}

function findPools(compiled: Compiled): number[][] {
  const { problem, taskModes, modes, taskCount } = compiled;
  const pools = new Map<string, number[]>();
  problem.resources.forEach((_, resource) => pools.set(String(resource), [resource]));
  for (let task = 0; task < taskCount; task++) {
    const lists: number[][] = [];
    for (let k = taskModes.start[task] as number; k < (taskModes.start[task + 1] as number); k++)
      lists.push(
        (modes[taskModes.items[k] as number] as CompiledMode).uses.filter((u) => u.amount > 0).map((u) => u.resource),
      );
    if (lists.length < 2) continue;
    const common = (lists[0] ?? []).filter((resource) => lists.every((list) => list.includes(resource)));
    const differing = [...new Set(lists.flat())].filter((resource) => !common.includes(resource)).sort((a, b) => a - b);
    if (differing.length > 1 && differing.length <= 12) pools.set(differing.join(' '), differing);
  }
  return [...pools.values()].slice(0, 200);
}
