/** Short ways to write small problems in tests. */
import type { Lag, LatestTier, Mode, Point, Problem, Task, Use } from '../../../solver/engine/problem.ts';

/** A problem with the given parts and nothing else; the first tier is the last end of all tasks unless tiers are given. */
export function problemWith(parts: Partial<Problem>): Problem {
  const tasks = parts.tasks ?? [];
  return {
    format: 'afterheat.problem',
    version: 1,
    name: 'invented',
    horizon: 50,
    choices: [],
    tasks,
    resources: [],
    states: [],
    reservoirs: [],
    lags: [],
    forbidden: [],
    totals: [],
    tiers: [finish(tasks)],
    ...parts,
  };
}

export const finish = (tasks: readonly Task[]): LatestTier => ({
  kind: 'latest',
  id: 'finish',
  terms: tasks.map((task) => ({ point: endOf(task.id) })),
});

export const startOf = (task: string): Point & { readonly task: string } => ({ task, at: 'start' });
export const endOf = (task: string): Point & { readonly task: string } => ({ task, at: 'end' });

/** A mode of one length, or of a range. */
export function mode(
  length: number | readonly [number, number],
  uses: readonly Use[] = [],
  more: Partial<Mode> = {},
): Mode {
  const [shortest, longest] = typeof length === 'number' ? [length, length] : length;
  return { shortest, longest, uses, ...more };
}

/** A task that is always there in one mode. */
export const task = (
  id: string,
  length: number | readonly [number, number],
  uses: readonly Use[] = [],
  more: Partial<Task> = {},
): Task => ({ id, modes: [mode(length, uses)], ...more });

export const use = (resource: string, amount = 1, more: Partial<Use> = {}): Use => ({ resource, amount, ...more });

/** `to` starts at least `least` after `from` ends. */
export const after = (from: string, to: string, least = 0, more: Partial<Lag> = {}): Lag => ({
  from: endOf(from),
  to: startOf(to),
  least,
  ...more,
});

/** `to` starts at most `most` after `from` ends. */
export const within = (from: string, to: string, most: number, more: Partial<Lag> = {}): Lag => ({
  from: startOf(to),
  to: endOf(from),
  least: -most,
  ...more,
});
