/** Sharing an amount out by weights. */
import { times, type Amount } from './amounts.ts';

/** What one component bears of something shared. */
export interface Share {
  readonly component: string;
  readonly weight: number;
}

/**
 * Parts of an amount in proportion to the weights, which sum to the amount. Where no weight is above 0, all bear alike.
 * @returns one entry a component, in the order of the shares
 */
export function sharedOut(amount: Amount, shares: readonly Share[]): ReadonlyMap<string, Amount> {
  const weights = new Map<string, number>();
  for (const { component, weight } of shares) weights.set(component, (weights.get(component) ?? 0) + weight);
  const total = [...weights.values()].reduce((all, each) => all + each, 0);
  return new Map(
    [...weights].map(([component, weight]) => [
      component,
      times(amount, total > 0 ? weight / total : 1 / weights.size),
    ]),
  );
}
