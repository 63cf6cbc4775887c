/** Storage classes: how long a kind of food keeps in the fridge. */
import type { RuleOf, SafetyRules } from '../kitchen/safety-rules.ts';

/** The class of food that names none: cooked leftovers, the widest and, rice apart, the shortest-lived. */
export const UNNAMED_CLASS = 'leftovers';

/**
 * What a rule set says of a class of food: its own rule, else that of its wider class.
 *
 * @param broader the wider class, where the set does not know the class itself
 * @returns null where it says nothing
 */
export function storageRule(rules: SafetyRules, food: string, broader?: string): RuleOf<'storage'> | null {
  const of = (id: string): RuleOf<'storage'> | undefined =>
    rules.rules.find((rule): rule is RuleOf<'storage'> => rule.kind === 'storage' && rule.food === id);
  const own = of(food);
  if (own !== undefined) return own;
  const wider = broader === undefined ? undefined : of(broader);
  return wider ?? null;
}
