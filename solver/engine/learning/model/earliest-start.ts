/**
 * Branching before anything has been learned: choices of a task and then its start, the task that can start earliest first.
 *
 * Absent before present where the task may be absent, the mode of the guide (or the shortest) first, and as early as can be.
 */
import type { Branching, Core } from '../core.ts';
import type { Model } from './model.ts';

export class EarliestStart implements Branching {
  private readonly model: Model;
  /** By task: its modes' indices, shortest first. */
  private readonly modes: number[][];

  constructor(model: Model) {
    this.model = model;
    this.modes = model.problem.tasks.map((task) =>
      task.modes
        .flatMap((mode, m) => (mode === null ? [] : [{ m, shortest: mode.shortest }]))
        .sort((a, b) => a.shortest - b.shortest || a.m - b.m)
        .map((item) => item.m),
    );
  }

  next(core: Core): number {
    const { trail } = core;
    const { points } = this.model;
    let best = -1;
    let bestTime = Infinity;
    let bestLatest = Infinity;
    for (let t = 0; t < points.starts.length; t++) {
      const { x, offset } = points.starts[t]!;
      const low = trail.bound[2 * x]!;
      const high = -trail.bound[2 * x + 1]!;
      if (low === high && !this.open(core, t)) continue;
      if (trail.isFalse(points.present[t]!)) continue;
      const time = low + offset;
      const latest = high + offset;
      if (time < bestTime || (time === bestTime && latest < bestLatest)) {
        best = t;
        bestTime = time;
        bestLatest = latest;
      }
    }
    return best < 0 ? 0 : this.decide(core, best);
  }

  /** Whether a task's presence or mode is undecided. */
  private open(core: Core, t: number): boolean {
    const { trail } = core;
    const { points } = this.model;
    const undecided = (literal: number): boolean => !trail.isTrue(literal) && !trail.isFalse(literal);
    return undecided(points.present[t]!) || points.inMode[t]!.some(undecided);
  }

  private decide(core: Core, t: number): number {
    const { trail } = core;
    const { points } = this.model;
    const undecided = (literal: number): boolean => !trail.isTrue(literal) && !trail.isFalse(literal);
    const present = points.present[t]!;
    if (undecided(present)) return core.guide.isKnown && core.guide.holds(present) ? present : present ^ trail.negation;
    const open = this.modes[t]!.map((m) => points.inMode[t]![m]!).filter(undecided);
    if (open.length > 0)
      return (core.guide.isKnown ? open.find((literal) => core.guide.holds(literal)) : undefined) ?? open[0]!;
    const { x } = points.starts[t]!;
    const low = trail.bound[2 * x]!;
    return trail.literal(2 * x + 1, -low);
  }
}
