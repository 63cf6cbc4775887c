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
    if (!this.updateSoil(task, index)) return false;
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

  private updateSoil(task: number, mode: number): boolean {
    const { store } = this;
    const { soils, soilsResource, soiledBy, soiledByResource, modes } = store.compiled;
    let until = soils.start[mode + 1] as number;
    store.work += (until - (soils.start[mode] as number)) >> 2;
    for (let k = soils.start[mode] as number; k < until; k++) {
      const index = soils.items[k] as number;
      const other = (modes[index] as CompiledMode).task;
      if (store.mode(other) !== index || !store.isPresent(other)) continue;
      const clean = this.shortestClean[soilsResource[k] as number] as number;
      if (!this.separate(task, other, clean, 0)) return false;
    }
    until = soiledBy.start[mode + 1] as number;
    store.work += (until - (soiledBy.start[mode] as number)) >> 2;
    for (let k = soiledBy.start[mode] as number; k < until; k++) {
      const index = soiledBy.items[k] as number;
      const other = (modes[index] as CompiledMode).task;
      if (store.mode(other) !== index || !store.isPresent(other)) continue;
      const clean = this.shortestClean[soiledByResource[k] as number] as number;
      if (!this.separate(other, task, clean, 0)) return false;
    }
    return true;
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
