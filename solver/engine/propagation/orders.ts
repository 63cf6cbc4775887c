/**
 * Pairs that may not overlap: states with transition gaps, and soil.
 *
 * Two present tasks in incompatible classes of a state run one after the other, with the gap of that order between. A task that avoids
 * what another leaves on a resource ends before the other starts, or starts after it with a cleaning between, which takes at
 * least the shortest cleaning there is. When one order is out of the question the other is drawn; when both are, the plan is
 * contradictory. Which cleaning lies between is decided by search (`demands.ts`).
 */
import type { CompiledMode } from '../compiled.ts';
import type { Store } from './store.ts';

export class Orders {
  private readonly store: Store;
  /** Shortest cleaning of each resource, −1 where it cannot be cleaned. */
  readonly shortestClean: Int32Array;
  private readonly pairStart: Int32Array;
  private readonly pairTask: Int32Array;
  private readonly pairMode: Int32Array;
  private readonly pairForth: Int32Array;
  private readonly pairBack: Int32Array;

  constructor(store: Store) {
    this.store = store;
    const { modes, problem, soils, soilsResource, soiledBy, soiledByResource } = store.compiled;
    this.shortestClean = new Int32Array(problem.resources.length).fill(-1);
    for (const mode of modes)
      for (const use of mode.uses) {
        if (!use.cleans) continue;
        const before = this.shortestClean[use.resource] as number;
        this.shortestClean[use.resource] = before < 0 ? mode.shortest : Math.min(before, mode.shortest);
      }
    // For each mode its pairs: the other may follow after a cleaning where it is soiled, at once where not; likewise back.
    const pairs = soils.items.length + soiledBy.items.length;
    const task = new Int32Array(2 * pairs);
    const mode = new Int32Array(2 * pairs);
    const forth = new Int32Array(2 * pairs);
    const back = new Int32Array(2 * pairs);
    let count = 0;
    const push = (other: number, after: number, before: number): void => {
      task[count] = modes[other]?.task ?? -1;
      mode[count] = other;
      forth[count] = after;
      back[count] = before;
      count++;
    };
    const worse = (old: number, clean: number): number => (old < 0 || clean < 0 ? -1 : Math.max(old, clean));
    // Gaps to each other mode, for the mode at hand alone.
    const others = new Int32Array(modes.length);
    const isOther = new Uint8Array(modes.length);
    const gapForth = new Int32Array(modes.length);
    const gapBack = new Int32Array(modes.length);
    this.pairStart = new Int32Array(modes.length + 1);
    for (let index = 0; index < modes.length; index++) {
      let known = 0;
      const meet = (other: number): void => {
        if (isOther[other] === 1) return;
        isOther[other] = 1;
        gapForth[other] = 0;
        gapBack[other] = 0;
        others[known++] = other;
      };
      for (let k = soils.start[index] as number; k < (soils.start[index + 1] as number); k++) {
        const other = soils.items[k] as number;
        meet(other);
        gapForth[other] = worse(gapForth[other] as number, this.shortestClean[soilsResource[k] as number] as number);
      }
      for (let k = soiledBy.start[index] as number; k < (soiledBy.start[index + 1] as number); k++) {
        const other = soiledBy.items[k] as number;
        meet(other);
        gapBack[other] = worse(gapBack[other] as number, this.shortestClean[soiledByResource[k] as number] as number);
      }
      for (let k = 0; k < known; k++) {
        const other = others[k] as number;
        const after = gapForth[other] as number;
        const before = gapBack[other] as number;
        isOther[other] = 0;
        const isInstant = modes[index]?.shortest === 0 && modes[other]?.shortest === 0;
        if (isInstant && after !== 0 && before !== 0) {
          // Two tasks of no length at one minute each end before the other starts: neither needs a cleaning.
          push(other, after, 0);
          push(other, 0, before);
        } else push(other, after, before);
      }
      this.pairStart[index + 1] = count;
    }
    this.pairTask = task.slice(0, count);
    this.pairMode = mode.slice(0, count);
    this.pairForth = forth.slice(0, count);
    this.pairBack = back.slice(0, count);
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
    const { store, pairStart, pairTask, pairMode, pairForth, pairBack } = this;
    const { cells } = store;
    const until = pairStart[mode + 1] as number;
    const at = 4 * task;
    let steps = 0;
    for (let k = pairStart[mode] as number; k < until; k++) {
      const other = pairTask[k] as number;
      steps++;
      if (store.mode(other) !== pairMode[k]) continue;
      const forth = pairForth[k] as number;
      const back = pairBack[k] as number;
      // Most pairs can still go both ways: see that first.
      if (
        forth >= 0 &&
        back >= 0 &&
        (cells[at + 2] as number) + forth <= -(cells[4 * other + 1] as number) &&
        (cells[4 * other + 2] as number) + back <= -(cells[at + 1] as number)
      )
        continue;
      if (!store.isPresent(other)) continue;
      if (!this.separate(task, other, forth, back)) return false;
    }
    store.work += steps >> 2;
    return true;
  }

  /** Either b starts at least `forth` after a ends, or a at least `back` after b ends; a negative number rules that order out. */
  private separate(a: number, b: number, forth: number, back: number): boolean {
    const { store } = this;
    const aFirst = forth >= 0 && store.earliestEnd(a) + forth <= store.latestStart(b);
    const bFirst = back >= 0 && store.earliestEnd(b) + back <= store.latestStart(a);
    if (aFirst) {
      if (bFirst) return true;
      return store.raise(4 * b, store.earliestEnd(a) + forth) && store.raise(4 * a + 3, forth - store.latestStart(b));
    }
    if (!bFirst) return false;
    return store.raise(4 * a, store.earliestEnd(b) + back) && store.raise(4 * b + 3, back - store.latestStart(a));
  }
}
