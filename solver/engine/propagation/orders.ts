/**
 * Pairs that may not overlap: states with transition gaps, and soil.
 *
 * Two present tasks in incompatible classes of a state run one after the other, with the gap of that order between. A task that avoids
 * what another leaves on a resource ends before the other starts, or starts after it with a cleaning between, which takes at
 * least the shortest cleaning there is. When one order is out of the question the other is drawn; when both are, the plan is
 * contradictory. Which cleaning lies between is decided by search (`demands.ts`).
 */
import type { CompiledMode, CompiledUse } from '../compiled.ts';
import type { Store } from './store.ts';

/** The longer of two cleanings, −1 where one of them is not to be had. */
const worse = (old: number, clean: number): number => (old < 0 || clean < 0 ? -1 : Math.max(old, clean));

export class Orders {
  private readonly store: Store;
  /** Shortest cleaning of each resource, −1 where it cannot be cleaned. */
  readonly shortestClean: Int32Array;
  // For the task at hand alone: those that it shares soil with, and the gaps to each and back.
  private readonly others: number[] = [];
  private readonly isOther: Uint8Array;
  private readonly gapForth: Int32Array;
  private readonly gapBack: Int32Array;

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
    const { taskCount } = store.compiled;
    this.isOther = new Uint8Array(taskCount);
    this.gapForth = new Int32Array(taskCount);
    this.gapBack = new Int32Array(taskCount);
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

  private updateSoil(task: number, index: number): boolean {
    const { store, others, gapForth, gapBack, isOther } = this;
    const { cells } = store;
    const { modes } = store.compiled;
    others.length = 0;
    const { uses, shortest } = modes[index] as CompiledMode;
    let longestClean = 0;
    for (let u = 0; u < uses.length; u++) {
      const { resource, soil } = uses[u] as CompiledUse;
      if (soil > 0) longestClean = worse(longestClean, this.shortestClean[resource] as number);
    }
    for (let u = 0; u < uses.length; u++) {
      const { resource, soil } = uses[u] as CompiledUse;
      if (soil > 0) this.meet(task, resource, soil, longestClean);
    }
    for (let k = 0; k < others.length; k++) isOther[others[k] as number] = 0;
    store.work += others.length >> 2;
    const at = 4 * task;
    for (let k = 0; k < others.length; k++) {
      const other = others[k] as number;
      const forth = gapForth[other] as number;
      const back = gapBack[other] as number;
      // Most pairs can still go both ways: see that first.
      if (
        forth >= 0 &&
        back >= 0 &&
        (cells[at + 2] as number) + forth <= -(cells[4 * other + 1] as number) &&
        (cells[4 * other + 2] as number) + back <= -(cells[at + 1] as number)
      )
        continue;
      if (!store.isPresent(other)) continue;
      const isInstant = shortest === 0 && (modes[store.mode(other)] as CompiledMode).shortest === 0;
      if (isInstant && forth !== 0 && back !== 0) {
        // Two tasks of no length at one minute each end before the other starts: neither needs a cleaning.
        if (!this.separate(task, other, forth, 0) || !this.separate(task, other, 0, back)) return false;
      } else if (!this.separate(task, other, forth, back)) return false;
    }
    return true;
  }

  /**
   * Notes the tasks that share soil with a use: the other may follow after a cleaning where it is soiled, at once where not; likewise back.
   * Of no consequence, and left out, are those with room for any cleaning in either order, and those that stand so far apart already.
   *
   * @param longestClean longest of the shortest cleanings of all that the task uses, −1 where some cannot be cleaned
   */
  private meet(task: number, resource: number, soil: number, longestClean: number): void {
    const { others, isOther, gapForth, gapBack } = this;
    const { soilUsers, compiled, cells } = this.store;
    const at = 4 * task;
    const ready = (cells[at] as number) - longestClean;
    const latest = -(cells[at + 1] as number) - longestClean;
    const first = (cells[at + 2] as number) + longestClean;
    const gone = longestClean - (cells[at + 3] as number);
    const { soilMarks } = compiled;
    const tasks = soilUsers.tasks[resource] as Int32Array;
    const soils = soilUsers.soils[resource] as Int32Array;
    const clean = this.shortestClean[resource] as number;
    const count = soilUsers.count(resource);
    for (let k = 0; k < count; k++) {
      const other = tasks[k] as number;
      const forth = soilMarks.meet(soil, soils[k] as number);
      const back = soilMarks.meet(soils[k] as number, soil);
      if (other === task || !(forth || back)) continue;
      if (longestClean >= 0) {
        const its = 4 * other;
        if (first <= -(cells[its + 1] as number) && (cells[its + 2] as number) <= latest) continue;
        if (gone <= (cells[its] as number) || -(cells[its + 3] as number) <= ready) continue;
      }
      if (isOther[other] === 0) {
        isOther[other] = 1;
        gapForth[other] = 0;
        gapBack[other] = 0;
        others.push(other);
      }
      if (forth) gapForth[other] = worse(gapForth[other] as number, clean);
      if (back) gapBack[other] = worse(gapBack[other] as number, clean);
    }
    this.store.work += count >> 3;
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
