/**
 * Soil that a plan meets: who goes on by a plan that was made before a food picked something up may meet it, and no order that keeps that
 * apart can be read out of such a plan.
 */
import type { Solution } from '../outcome.ts';
import type { Problem, Task, Use } from '../problem.ts';
import { modesTaken } from './changed-units.ts';

interface SoilUse {
  readonly task: number;
  readonly start: number;
  readonly end: number;
  readonly use: Use;
}

/** @returns the problem with tasks that avoid, in the modes that the plan takes, only what the plan keeps them from */
export function withoutMeetings(problem: Problem, plan: Solution): Problem {
  const modes = modesTaken(problem, plan);
  const on = new Map<string, SoilUse[]>();
  problem.tasks.forEach((task, index) => {
    const [at, mode] = [plan.tasks[index] ?? null, modes[index] ?? null];
    if (at === null || mode === null) return;
    for (const use of task.modes[mode]!.uses) {
      if (use.leaves === undefined && use.avoids === undefined && use.cleans !== true) continue;
      const list = on.get(use.resource);
      const own = { task: index, start: at.start, end: at.end, use };
      if (list === undefined) on.set(use.resource, [own]);
      else list.push(own);
    }
  });
  const met = new Map<number, Map<Use, readonly string[]>>();
  for (const uses of on.values()) {
    const soiling = uses.filter(({ use }) => use.leaves !== undefined);
    const cleaning = uses.filter(({ use }) => use.cleans === true);
    for (const { task, start, end, use } of uses) {
      if (use.avoids === undefined) continue;
      const before = soiling.filter(
        (dirty) =>
          dirty.task !== task &&
          end > dirty.start &&
          !cleaning.some((wash) => wash.start >= dirty.end && wash.end <= start),
      );
      const meets = use.avoids.filter((mark) => before.some((dirty) => dirty.use.leaves!.includes(mark)));
      if (meets.length > 0) met.set(task, (met.get(task) ?? new Map<Use, readonly string[]>()).set(use, meets));
    }
  }
  if (met.size === 0) return problem;
  const freed = (task: Task, index: number): Task => {
    const own = met.get(index);
    if (own === undefined) return task;
    const free = (use: Use): Use => {
      const { avoids, ...rest } = use;
      const meets = own.get(use);
      if (meets === undefined) return use;
      const left = avoids!.filter((mark) => !meets.includes(mark));
      return left.length === 0 ? rest : { ...rest, avoids: left };
    };
    return { ...task, modes: task.modes.map((mode) => mode && { ...mode, uses: mode.uses.map(free) }) };
  };
  return { ...problem, tasks: problem.tasks.map(freed) };
}
