import type { Problem, Task } from '../../../solver/engine/problem.ts';
import { numbersIn } from './numbers.ts';
import { after, problemOf, resourcesOf, usesOf } from './parts.ts';

/**
 * Reads a resource-constrained project in the Patterson format (`.rcp`). The dummy first and last activities are left out.
 *
 * @param text number of activities and of resources; capacities; a row an activity: duration, demands, successors from 1
 * @param name names the problem and the file in errors
 * @see source: Patterson (1984), Management Science 30(7); Kolisch & Sprecher (1997), EJOR 96, 205–216
 */
export function readPatterson(text: string, name: string): Problem {
  const { next, take, end } = numbersIn(text, name);
  const count = next();
  const resources = next();
  const capacities = take(resources);
  if (count < 2) throw new Error(`${name}: ${count} activities, but there is a dummy first and a dummy last`);
  const rows = Array.from({ length: count }, () => ({
    duration: next(),
    demands: take(resources),
    successors: take(next()),
  }));
  end();
  const inner = (index: number): boolean => index > 0 && index < count - 1;
  const tasks = rows.flatMap(({ duration, demands }, index): Task[] =>
    inner(index)
      ? [{ id: `a${index + 1}`, modes: [{ shortest: duration, longest: duration, uses: usesOf(demands) }] }]
      : [],
  );
  const lags = rows.flatMap(({ successors }, index) =>
    inner(index) ? successors.filter((to) => inner(to - 1)).map((to) => after(`a${index + 1}`, `a${to}`)) : [],
  );
  const horizon = Math.max(
    1,
    rows.reduce((sum, row) => sum + row.duration, 0),
  );
  return problemOf(name, { horizon, tasks, resources: resourcesOf(capacities), lags });
}
