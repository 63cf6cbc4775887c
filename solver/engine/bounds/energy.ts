/**
 * Energetic reasoning: in no stretch of time can tasks need more of a set of resources than is there.
 * Besides single resources, sets that stand in for
 * each other in the modes of some task (the people who may do it) are looked at together.
 */
import type { Compiled, CompiledMode } from '../compiled.ts';
import type { Store } from '../propagation/store.ts';
import type { Timetable } from '../propagation/timetable.ts';
import { Claims } from './claims.ts';

export class Energy {
  private readonly compiled: Compiled;
  /** Sets of resources looked at together. */
  readonly pools: readonly (readonly number[])[];
  /** Capacity of each pool summed from minute 0: entry `t` is what there is before minute `t`. */
  private readonly supply: readonly Float64Array[];
  private readonly claims: Claims;

  constructor(
    private readonly store: Store,
    private readonly timetable: Timetable,
    private readonly isOver: () => boolean = () => false,
  ) {
    this.compiled = store.compiled;
    this.pools = findPools(this.compiled);
    const { horizon, capacity } = this.compiled;
    this.supply = this.pools.map((pool) => {
      const sum = new Float64Array(horizon + 1);
      for (let t = 0; t < horizon; t++) {
        let there = 0;
        for (const resource of pool) there += capacity[resource * horizon + t] as number;
        sum[t + 1] = (sum[t] as number) + there;
      }
      return sum;
    });
    this.claims = new Claims(store);
  }

  /** Index of a pool that is overloaded under the store's bounds, −1 when none is seen to be or there is no time to look. */
  overloaded(): number {
    for (let p = 0; p < this.pools.length && !this.isOver(); p++) {
      this.collect(this.pools[p] as readonly number[]);
      if (this.claims.exceed(this.supply[p] as Float64Array)) return p;
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
    const { store, claims } = this;
    claims.clear();
    for (let task = 0; task < this.compiled.taskCount; task++) {
      if (!store.isPresent(task)) continue;
      const amount = this.least(task, pool);
      if (amount > 0) claims.add(task, amount);
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
