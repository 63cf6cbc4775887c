/** Parts that the readers of published formats share. */
import type { Problem, Use } from '../../../solver/engine/problem.ts';

export { after, problem as problemOf } from '../../../app/solving/problem-parts.ts';

/** Demands by resource number as uses of `r0`, `r1`…; zeros are left out. */
export function usesOf(demands: readonly number[]): Use[] {
  return demands.flatMap((amount, index) => (amount > 0 ? [{ resource: `r${index}`, amount }] : []));
}

export const resourcesOf = (capacities: readonly number[]): Problem['resources'] =>
  capacities.map((capacity, index) => ({ id: `r${index}`, capacity }));
