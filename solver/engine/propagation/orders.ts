/**
 * Pairs that may not overlap: states with transition gaps, and soil.
 *
 * Two present tasks in incompatible classes of a state run one after the other, with the gap of that order between. A task that avoids
 * what another leaves on a resource ends before the other starts, or starts after it with a cleaning between, which takes at
 * least the shortest cleaning there is. When one order is out of the question the other is drawn; when both are, the plan is
 * contradictory. Which cleaning lies between is decided by search (`obligations.ts`).
 */
import type { CompiledMode } from '../compile-problem.ts';
import type { Store } from './store.ts';

export class Orders {
  private readonly store: Store;
  /** Shortest cleaning of each resource, −1 where it cannot be cleaned. */
  readonly shortestClean: Int32Array;

  constructor(store: Store) {
    this.store = store;
    const { modes, problem } = store.compiled;
    this.shortestClean = new Int32Array(problem.resources.length).fill(-1);
    for (const mode of modes)
      for (const use of mode.uses) {
        if (!use.cleans) continue;
        const before = this.shortestClean[use.resource] as number;
        this.shortestClean[use.resource] = before < 0 ? mode.shortest : Math.min(before, mode.shortest);
      }
  }

  /** Draws the consequences for a task whose bounds, mode or presence changed. */
  update(task: number): boolean {
    const { store } = this;
    const index = store.mode(task);
    if (index < 0 || !store.isPresent(task)) return true;
    const mode = store.compiled.modes[index] as CompiledMode;
    if (mode.state >= 0 && !this.updateState(task, mode)) return false;
    for (let u = 0; u < mode.uses.length; u++) {
      const { resource, soil } = mode.uses[u] as { resource: number; soil: number };
      if (soil > 0 && !this.updateSoil(task, resource, soil)) return false;
    }
    return true;
  }

  private updateState(task: number, mode: CompiledMode): boolean {
    const { store } = this;
    const { stateTasks, gaps, classCount, modes } = store.compiled;
    const gap = gaps[mode.state] as Int32Array;
    const count = classCount[mode.state] as number;
    const until = stateTasks.start[mode.state + 1] as number;
    for (let k = stateTasks.start[mode.state] as number; k < until; k++) {
      const other = stateTasks.items[k] as number;
      if (other === task) continue;
      const index = store.mode(other);
      if (index < 0 || !store.isPresent(other)) continue;
      const { state, stateClass } = modes[index] as CompiledMode;
      if (state !== mode.state) continue;
      const after = gap[mode.stateClass * count + stateClass] as number;
      if (after < 0) continue;
      store.work++;
      if (!this.separate(task, other, after, gap[stateClass * count + mode.stateClass] as number)) return false;
    }
    return true;
  }

  private updateSoil(task: number, resource: number, soil: number): boolean {
    const { store } = this;
    const { soilTasks, soilMeets, soilCount } = store.compiled;
    const clean = this.shortestClean[resource] as number;
    const until = soilTasks.start[resource + 1] as number;
    for (let k = soilTasks.start[resource] as number; k < until; k++) {
      const other = soilTasks.items[k] as number;
      if (other === task || !store.isPresent(other)) continue;
      const mark = this.soilOn(other, resource);
      if (mark === 0) continue;
      store.work++;
      if (soilMeets[soil * soilCount + mark] === 1 && !this.separate(task, other, clean, 0)) return false;
      if (soilMeets[mark * soilCount + soil] === 1 && !this.separate(other, task, clean, 0)) return false;
    }
    return true;
  }

  /** Soil mark that the task puts on the resource in its mode; 0 when it puts none or the mode is open. */
  soilOn(task: number, resource: number): number {
    const index = this.store.mode(task);
    if (index < 0) return 0;
    const { uses } = this.store.compiled.modes[index] as CompiledMode;
    for (let u = 0; u < uses.length; u++) {
      const use = uses[u] as { resource: number; soil: number };
      if (use.resource === resource) return use.soil;
    }
    return 0;
  }

  /** Either b starts at least `forth` after a ends (never, when negative), or a starts at least `back` after b ends. */
  private separate(a: number, b: number, forth: number, back: number): boolean {
    const { store } = this;
    const aFirst = forth >= 0 && store.earliestEnd(a) + forth <= store.latestStart(b);
    const bFirst = store.earliestEnd(b) + back <= store.latestStart(a);
    if (aFirst) {
      if (bFirst) return true;
      return store.raise(4 * b, store.earliestEnd(a) + forth) && store.raise(4 * a + 3, forth - store.latestStart(b));
    }
    if (!bFirst) return false;
    return store.raise(4 * a, store.earliestEnd(b) + back) && store.raise(4 * b + 3, back - store.latestStart(a));
  }
}
