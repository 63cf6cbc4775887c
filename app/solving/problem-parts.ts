/** Short words for the parts of scheduling problems that are not made from a session. */
import type { Lag, Mode, Point, Problem, Task, Tier, Use } from '../../solver/engine/problem.ts';

export const start = (task: string): Point & { readonly task: string } => ({ task, at: 'start' });
export const end = (task: string): Point & { readonly task: string } => ({ task, at: 'end' });
/** The second starts when the first has ended, `least` minutes later or more. */
export const after = (first: string, second: string, least = 0): Lag => ({
  from: end(first),
  to: start(second),
  least,
});
/** The second starts at most `most` minutes after the first starts. */
export const within = (first: string, second: string, most: number): Lag => ({
  from: start(second),
  to: start(first),
  least: -most,
});
export const fixed = (minutes: number, ...uses: readonly Use[]): Mode => ({
  shortest: minutes,
  longest: minutes,
  uses,
});
export const use = (resource: string, amount = 1, soil: Partial<Use> = {}): Use => ({ resource, amount, ...soil });
/** The finish of all tasks, as the one tier. */
export const finish = (tasks: readonly Pick<Task, 'id'>[]): Tier => ({
  kind: 'latest',
  id: 'finish',
  terms: tasks.map(({ id }) => ({ point: end(id) })),
});

type Parts = Partial<Problem> & Pick<Problem, 'tasks' | 'resources' | 'lags' | 'horizon'>;
/** A problem with the parts given and nothing else. */
export const problem = (name: string, parts: Parts): Problem => ({
  format: 'afterheat.problem',
  version: 1,
  name,
  choices: [],
  states: [],
  reservoirs: [],
  forbidden: [],
  totals: [],
  tiers: [finish(parts.tasks)],
  ...parts,
});
