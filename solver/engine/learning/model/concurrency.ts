/**
 * The resource that all tasks share by what can be in progress together (see `concurrency-weights.ts`), as windows of energy.
 */
import { CAPACITY, concurrencyWeights } from '../../bounds/concurrency-weights.ts';
import { EnergyWindows } from '../propagators/energy-windows.ts';
import type { Problem, Task } from '../../problem.ts';
import type { Core } from '../core.ts';
import type { Differences } from './differences.ts';
import type { Points } from './points.ts';

/** How much more it must say of all work than the busiest resource alone (measured on 30-task projects: below that it costs what it saves). */
const WORTH = 1.05;
/** Most tasks whose linear program is worth its time. */
const MOST_TASKS = 100;

/** @returns null where it says little, or there are too many tasks or sets of them, or when told to stop */
export function energyWindows(
  problem: Problem,
  core: Core,
  points: Points,
  differences: Differences,
  shouldStop?: () => boolean,
): EnergyWindows | null {
  const { alwaysTrue } = core.trail;
  const sure = problem.tasks.flatMap((task, t) => {
    const start = points.starts[t]!;
    const end = points.ends[t]!;
    const length = start.x === end.x ? end.offset - start.offset : 0;
    return points.present[t] === alwaysTrue && length > 0 ? [{ task, start, end, length }] : [];
  });
  if (sure.length < 3 || sure.length > MOST_TASKS || problem.horizon > 2 ** 30 / CAPACITY) return null;
  const capacities = problem.resources.map(({ capacity, calendar = [] }) =>
    Math.max(capacity, ...calendar.map((entry) => entry.capacity)),
  );
  // Exclusive resources alone, as in a shop, are orders of pairs, and those are known.
  if (capacities.every((capacity) => capacity <= 1)) return null;
  const amounts = sure.map(({ task }) => problem.resources.map(({ id }) => leastAmount(task, id)));
  const lengths = sure.map(({ length }) => length);
  const apart = (a: number, b: number): boolean =>
    differences.holds(sure[a]!.end, sure[b]!.start, 0) || differences.holds(sure[b]!.end, sure[a]!.start, 0);
  const weights = concurrencyWeights(lengths, { amounts, capacities, apart }, shouldStop);
  if (weights === null) return null;
  const total = (of: (k: number) => number): number => lengths.reduce((sum, length, k) => sum + length * of(k), 0);
  const busiest = capacities.reduce(
    (most, capacity, r) => (capacity > 0 ? Math.max(most, total((k) => amounts[k]![r]!) / capacity) : most),
    0,
  );
  if (total((k) => weights[k]!) / CAPACITY < WORTH * busiest) return null;
  const tasks = sure.flatMap(({ start, length }, k) =>
    weights[k]! > 0 ? [{ start: start.x, startOffset: start.offset, length, weight: weights[k]! }] : [],
  );
  return new EnergyWindows(core.trail, CAPACITY, problem.horizon, tasks);
}

/** What a task uses of a resource in any of its modes. */
function leastAmount(task: Task, resource: string): number {
  const amounts = task.modes.map((mode) =>
    (mode?.uses ?? []).reduce((sum, use) => (use.resource === resource ? sum + use.amount : sum), 0),
  );
  return Math.min(...amounts);
}
