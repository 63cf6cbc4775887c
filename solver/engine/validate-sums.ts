/**
 * What tasks take at most, whatever their modes, so that no sum that the engine forms runs over. Many tasks of a large problem share one
 * list of modes, which is looked through once.
 */
import type { Mode, Task } from './problem.ts';

type Modes = Task['modes'];

/** By resource the sum over all tasks of what each uses at most; amounts below 0 count as much as those above. */
export function sumsOfAmounts(tasks: readonly Task[]): ReadonlyMap<string, number> {
  const sharers = new Map<Modes, number>();
  for (const { modes } of tasks) sharers.set(modes, (sharers.get(modes) ?? 0) + 1);
  const sums = new Map<string, number>();
  for (const [modes, count] of sharers)
    for (const [resource, amount] of largestAmounts(modes))
      sums.set(resource, (sums.get(resource) ?? 0) + count * Math.abs(amount));
  return sums;
}

/** By task the largest of the shortest lengths of its modes, at least 0. */
export const largestLengths = (tasks: readonly Task[]): number[] =>
  tasks.map(once((modes) => Math.max(0, ...modes.map((mode) => mode?.shortest ?? 0))));

/** By task the most that one of its modes can cost within the horizon; costs below 0 count as much as those above. */
export const largestCosts = (tasks: readonly Task[], horizon: number): number[] =>
  tasks.map(once((modes) => Math.max(0, ...modes.map((mode) => largestCost(mode, horizon)))));

function largestAmounts(modes: Modes): ReadonlyMap<string, number> {
  const largest = new Map<string, number>();
  for (const mode of modes)
    for (const { resource } of mode?.uses ?? []) {
      const amount = amountOn(mode, resource);
      largest.set(resource, Math.max(largest.get(resource) ?? amount, amount));
    }
  return largest;
}

function amountOn(mode: Mode | null, resource: string): number {
  let amount = 0;
  for (const use of mode?.uses ?? []) if (use.resource === resource) amount += use.amount;
  return amount;
}

function largestCost(mode: Mode | null, horizon: number): number {
  if (mode?.cost === undefined) return 0;
  const longest = Math.min(mode.longest, horizon);
  return Math.abs(mode.cost.fixed) + Math.abs(mode.cost.perMinute) * longest;
}

/** The measure of a task's modes, taken once for each list of them. */
function once(measure: (modes: Modes) => number): (task: Task) => number {
  const known = new Map<Modes, number>();
  return ({ modes }) => {
    const value = known.get(modes) ?? measure(modes);
    known.set(modes, value);
    return value;
  };
}
