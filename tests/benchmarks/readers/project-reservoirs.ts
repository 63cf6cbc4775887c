import type { Problem, Reservoir, Task } from '../../../solver/engine/problem.ts';
import { numbersIn } from './numbers.ts';
import { after, problemOf, resourcesOf, usesOf } from './parts.ts';

/**
 * Reads a project whose activities draw from reservoirs when they start and fill them when they end (`ConsProd`). The dummy
 * first and last activities are left out, with their amounts.
 *
 * @param text numbers of activities, resources, reservoirs; capacities, then first levels; a row an activity: duration,
 *   demands, drawn and filled for each reservoir, successors from 1
 * @param name names the problem and the file in errors
 * @see source: Koné, Artigues, Lopez & Mongeau (2013), Flexible Services and Manufacturing Journal 25, 25–47
 */
export function readProjectReservoirs(text: string, name: string): Problem {
  const { next, take } = numbersIn(text, name);
  const count = next();
  const resourceCount = next();
  const reservoirCount = next();
  const capacities = take(resourceCount);
  const levels = take(reservoirCount);
  const rows = Array.from({ length: count }, () => ({
    duration: next(),
    demands: take(resourceCount),
    moved: Array.from({ length: reservoirCount }, () => ({ drawn: next(), filled: next() })),
    successors: take(next()),
  }));
  const inner = rows.map((row, index) => ({ ...row, index })).filter(({ index }) => index > 0 && index < count - 1);
  const tasks = inner.map(({ index, duration, demands }): Task => ({
    id: `a${index + 1}`,
    modes: [{ shortest: duration, longest: duration, uses: usesOf(demands) }],
  }));
  const reservoirs = levels.map((initial, number): Reservoir => ({
    id: `v${number}`,
    initial,
    events: inner.flatMap(({ index, moved }) => {
      const { drawn, filled } = moved[number] ?? { drawn: 0, filled: 0 };
      return [
        ...(drawn > 0 ? [{ point: { task: `a${index + 1}`, at: 'start' as const }, amount: -drawn }] : []),
        ...(filled > 0 ? [{ point: { task: `a${index + 1}`, at: 'end' as const }, amount: filled }] : []),
      ];
    }),
  }));
  const lags = inner.flatMap(({ index, successors }) =>
    successors.filter((to) => to < count).map((to) => after(`a${index + 1}`, `a${to}`)),
  );
  const horizon = rows.reduce((sum, { duration }) => sum + duration, 1);
  return problemOf(name, { horizon, tasks, resources: resourcesOf(capacities), reservoirs, lags });
}
