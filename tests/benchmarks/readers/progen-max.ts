import type { Lag, Point, Problem, Task } from '../../../solver/engine/problem.ts';
import { numbersIn } from './numbers.ts';
import { problemOf, resourcesOf, usesOf } from './parts.ts';

/**
 * Reads a project with shortest and longest gaps in the ProGen/max format (`.sch`). Gaps bind starts; activity 0 starts at
 * minute 0; the finish is the start of the last activity, which stays as a task of length 0.
 *
 * @param text number of activities without the two dummies, of resources, and two more; a row an activity: number, modes,
 *   successors and their gaps; then a row an activity: number, mode, duration, demands; capacities
 * @param name names the problem and the file in errors
 * @see source: Franck, Neumann & Schwindt (2001), OR Spektrum 23; Schwindt (1996), ProGen/max
 */
export function readProgenMax(text: string, name: string): Problem {
  const { next, take } = numbersIn(text, name);
  const count = next() + 2;
  const resources = next();
  take(2);
  const gaps = Array.from({ length: count }, (_, index) => {
    if (next() !== index || next() !== 1) throw new Error(`${name}: activity ${index} is not the next with one mode`);
    const successors = take(next());
    return successors.map((to) => ({ from: index, to, least: next() }));
  }).flat();
  const work = Array.from({ length: count }, () => {
    const [, , duration = 0, ...demands] = take(3 + resources);
    return { duration, demands };
  });
  const capacities = take(resources);
  const point = (index: number): Point => (index === 0 ? 'origin' : { task: `a${index}`, at: 'start' });
  const tasks = work.flatMap(({ duration, demands }, index): Task[] =>
    index === 0 ? [] : [{ id: `a${index}`, modes: [{ shortest: duration, longest: duration, uses: usesOf(demands) }] }],
  );
  const lags: Lag[] = gaps.map(({ from, to, least }) => ({ from: point(from), to: point(to), least }));
  // No activity waits longer than the longest gap or duration before it, so these sum to a finish that is late enough.
  const horizon = work.reduce(
    (sum, { duration }, index) =>
      sum + Math.max(duration, ...gaps.filter((gap) => gap.from === index).map(({ least }) => least)),
    1,
  );
  const last = { task: `a${count - 1}`, at: 'start' } as const;
  return problemOf(name, {
    horizon,
    tasks,
    resources: resourcesOf(capacities),
    lags,
    tiers: [{ kind: 'latest', id: 'finish', terms: [{ point: last }] }],
  });
}
