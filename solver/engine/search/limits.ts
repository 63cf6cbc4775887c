/** Tells a store that tiers must be no worse than given values, as far as bounds can say it. */
import type { Compiled } from '../compiled.ts';
import type { Store } from '../propagation/store.ts';

/**
 * Asks that a tier of kind `latest` be at most `value`; other kinds say nothing here.
 *
 * @returns false when that is contradictory at once; otherwise propagation is still to be run
 */
export function limitTier(store: Store, tier: number, value: number): boolean {
  const rule = store.compiled.tiers[tier];
  if (rule?.kind !== 'latest') return true;
  if (value < 0) return false;
  for (const { node, plus, minus } of rule.terms) {
    const slot = minus ? 2 * node : 2 * node + 1;
    if (!store.raise(slot, plus - value)) return false;
  }
  return true;
}

/** True when the tier can be limited by bounds. */
export function isBoundable(compiled: Compiled, tier: number): boolean {
  return compiled.tiers[tier]?.kind === 'latest';
}
