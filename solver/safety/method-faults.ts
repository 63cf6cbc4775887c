/**
 * Methods that are refused before anything is planned. What a plan guarantees is that a probe reading has its place, never that
 * a temperature was reached: a probe thermometer decides, and local rules come first.
 */
import { servedWrongly } from '../food/soil.ts';
import type { Component } from '../kitchen/component.ts';
import type { InputFault } from '../kitchen/fault.ts';
import type { SafetyRules } from '../kitchen/safety-rules.ts';
import type { Session } from '../kitchen/session.ts';
import { cookingFaults } from './cooking-faults.ts';
import { keepingFaults } from './keeping-faults.ts';
import { toxinFaults } from './toxin-faults.ts';

/**
 * Faults of safety in the session's components, by the rules in force: cooking through that cannot meet them, food kept hot too
 * cool or cold too long, toxins left in, and food served to whom it must not reach.
 *
 * @param roomC temperature of the kitchen, °C
 */
export function methodFaults(
  session: Session,
  components: readonly Component[],
  rules: SafetyRules,
  roomC: number,
): readonly InputFault[] {
  return components.flatMap((component) => [
    ...cookingFaults(component, rules),
    ...keepingFaults(session, components, component, rules, roomC),
    ...toxinFaults(component, rules),
    ...servedWrongly(session, component).map(([eater, allergen]): InputFault => ({
      document: `session ${session.id}`,
      path: 'eaters',
      found: `${component.name} contains ${allergen}, which ${eater} avoids`,
      wanted: `${eater}'s boxes without it`,
      mend: `list what ${eater} eats without ${component.id}, or change the ingredients`,
    })),
  ]);
}
