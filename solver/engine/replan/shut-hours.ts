/**
 * Hours that a plan does not keep: who goes on by a least bad plan may have let them go, and nothing that keeps them can be read out of
 * its order.
 */
import type { Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import { modesTaken } from './changed-units.ts';
import { NOTHING, widerProblem } from './let-go.ts';

/** @returns ids of the resources of which a plan takes more at some minute than their calendars have then */
export function shutHours(problem: Problem, plan: Solution): ReadonlySet<string> {
  const shut = new Set<string>();
  const withHours = problem.resources.filter(({ calendar }) => calendar !== undefined);
  if (withHours.length === 0) return shut;
  const modes = modesTaken(problem, plan);
  for (const { id, calendar } of withHours) {
    const uses = problem.tasks.flatMap((task, index) => {
      const [at, mode] = [plan.tasks[index] ?? null, modes[index] ?? null];
      if (at === null || mode === null) return [];
      const amount = task.modes[mode]!.uses.reduce((sum, use) => sum + (use.resource === id ? use.amount : 0), 0);
      return amount === 0 ? [] : [{ ...at, amount }];
    });
    // What is taken is most where a use or the hours begin.
    const isOver = calendar!.some(({ from, until, capacity }) =>
      [from, ...uses.map(({ start }) => start)].some(
        (minute) =>
          minute >= from &&
          minute < until &&
          uses.reduce((sum, { start, end, amount }) => sum + (start <= minute && minute < end ? amount : 0), 0) >
            capacity,
      ),
    );
    if (isOver) shut.add(id);
  }
  return shut;
}

/** The problem with the hours let go that a plan does not keep. */
export function withoutShutHours(problem: Problem, plan: Solution): Problem {
  const hours = shutHours(problem, plan);
  return hours.size === 0 ? problem : widerProblem(problem, { ...NOTHING, hours });
}
