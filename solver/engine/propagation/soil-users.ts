/**
 * Who uses what with soil that counts: for each resource the tasks whose mode is known, with the soil of that use.
 *
 * While a plan is built most modes are open, so these lists are short beside those of all that might meet. They grow at the end only and
 * their lengths are kept on the trail, so that undoing cuts them back.
 */
import type { Compiled, CompiledMode } from '../compiled.ts';
import type { Trail } from './trail.ts';

export class SoilUsers {
  /** By resource: tasks, in the order in which their modes became known; valid up to `count`. */
  readonly tasks: readonly Int32Array[];
  /** Beside each task the soil of its use. */
  readonly soils: readonly Int32Array[];

  /** @param counts address of the first of the cells, one a resource, that keep how many there are */
  constructor(
    private readonly compiled: Compiled,
    private readonly trail: Trail,
    private readonly counts: number,
  ) {
    const most = compiled.problem.resources.map(() => 0);
    const last = compiled.problem.resources.map(() => -1);
    for (const { task, uses } of compiled.modes)
      for (const { resource, soil } of uses) {
        if (soil === 0 || last[resource] === task) continue;
        last[resource] = task;
        most[resource] = (most[resource] as number) + 1;
      }
    this.tasks = most.map((count) => new Int32Array(count));
    this.soils = most.map((count) => new Int32Array(count));
  }

  count(resource: number): number {
    return this.trail.cells[this.counts + resource] as number;
  }

  /** Notes that the task, if present, is in this mode. */
  add(task: number, mode: number): void {
    const { modes, soilMarks } = this.compiled;
    for (const { resource, soil } of (modes[mode] as CompiledMode).uses) {
      if (!soilMarks.counts(resource, soil, task)) continue;
      const count = this.count(resource);
      (this.tasks[resource] as Int32Array)[count] = task;
      (this.soils[resource] as Int32Array)[count] = soil;
      this.trail.set(this.counts + resource, count + 1);
    }
  }
}
