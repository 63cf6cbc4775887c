/** Parts that the readers of published formats share. */
import type { Lag, Problem, Task, Tier, Use } from '../../../solver/engine/problem.ts';

/** Demands by resource number as uses of `r0`, `r1`…; zeros are left out. */
export function usesOf(demands: readonly number[]): Use[] {
  return demands.flatMap((amount, index) => (amount > 0 ? [{ resource: `r${index}`, amount }] : []));
}

export const resourcesOf = (capacities: readonly number[]): Problem['resources'] =>
  capacities.map((capacity, index) => ({ id: `r${index}`, capacity }));

/** The finish of all tasks, as the one tier. */
export function finishTier(tasks: readonly Task[]): Tier {
  return { kind: 'latest', id: 'finish', terms: tasks.map(({ id }) => ({ point: { task: id, at: 'end' } })) };
}

/** The lag "second starts when first has ended, or later". */
export function after(first: string, second: string): Lag {
  return { from: { task: first, at: 'end' }, to: { task: second, at: 'start' }, least: 0 };
}

/** A problem with the parts given and nothing else. */
export function problemOf(
  name: string,
  parts: Pick<Problem, 'horizon' | 'tasks' | 'resources' | 'lags'> & Partial<Problem>,
): Problem {
  return {
    format: 'afterheat.problem',
    version: 1,
    name,
    choices: [],
    states: [],
    reservoirs: [],
    forbidden: [],
    totals: [],
    tiers: [finishTier(parts.tasks)],
    ...parts,
  };
}
