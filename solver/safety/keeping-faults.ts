/** Food kept hot or cold that cannot meet the rules in force. */
import { coolingMinutes } from '../food/cooling-minutes.ts';
import type { Component } from '../kitchen/component.ts';
import type { InputFault } from '../kitchen/fault.ts';
import type { SafetyRules } from '../kitchen/safety-rules.ts';
import { packedDishes } from '../kitchen/packed-dishes.ts';
import { boxedComponents } from '../kitchen/session-components.ts';
import type { Session } from '../kitchen/session.ts';
import { durationMinutes } from '../kitchen/values.ts';
import { lastHeat } from './last-heat.ts';
import { fridgeDays, fridgeDeadline, hotHolding } from './limits.ts';
import { askedBy } from './rule-words.ts';

const DAY_MIN = 24 * 60;

/**
 * Faults of what a component says of keeping it; empty: the rules can be kept.
 *
 * @param roomC temperature of the kitchen, °C
 */
export function keepingFaults(
  session: Session,
  components: readonly Component[],
  component: Component,
  rules: SafetyRules,
  roomC: number,
): readonly InputFault[] {
  return [
    ...hotFaults(component, rules),
    ...lifeFaults(component, rules),
    ...coolingFaults(session, components, component, rules, roomC),
  ];
}

function hotFaults(component: Component, rules: SafetyRules): readonly InputFault[] {
  const limit = hotHolding(rules);
  return component.steps.flatMap(({ hotHold, name }, index): readonly InputFault[] => {
    if (limit === null || hotHold === undefined || hotHold.leastC >= limit.value) return [];
    return [
      {
        document: `component ${component.id}`,
        path: `steps[${index}].hotHold.leastC`,
        found: `${name} keeps food hot at ${hotHold.leastC} °C`,
        wanted: `${limit.value} °C or more, as ${askedBy(limit.rule)} asks`,
        mend: `keep it at ${limit.value} °C, or take the hot holding out`,
      },
    ];
  });
}

/** The life that a component claims in the fridge is no longer than the rules let its class keep. */
function lifeFaults(component: Component, rules: SafetyRules): readonly InputFault[] {
  const keeping = fridgeDays(rules, component.storage);
  const claimed = durationMinutes(component.keeps.fridge) / DAY_MIN;
  if (keeping === null || claimed <= keeping.value) return [];
  const days = `${keeping.value} ${keeping.value === 1 ? 'day' : 'days'}`;
  const counted = {
    'no class': ' (it names no storage class, so it counts as cooked leftovers)',
    'unknown class': ` (the class "${component.storage ?? ''}" is unknown, so it counts as cooked leftovers)`,
  };
  return [
    {
      document: `component ${component.id}`,
      path: 'keeps.fridge',
      found: `${component.name} keeps for ${claimed} days in the fridge`,
      wanted: `${days} at most${keeping.assumed === undefined ? '' : counted[keeping.assumed]}, as ${askedBy(keeping.rule)} says`,
      mend:
        keeping.assumed === undefined
          ? `write "fridge": "P${keeping.value}D", and freeze what is eaten later`
          : `write "fridge": "P${keeping.value}D", or name its class, such as "storage": "vinaigrette"`,
    },
  ];
}

/** Cooling that alone takes longer than the rules give from the heat to the fridge. */
function coolingFaults(
  session: Session,
  components: readonly Component[],
  component: Component,
  rules: SafetyRules,
  roomC: number,
): readonly InputFault[] {
  const limit = fridgeDeadline(rules, component.storage, roomC);
  if (limit === null || lastHeat(component, hotHolding(rules)?.value ?? 0).length === 0) return [];
  const boxed = packedDishes(session).includes(component.id);
  const own = component.steps.some((step) => step.putsAway === true);
  const wanted = `the fridge within ${limit.value} min of the heat, as ${askedBy(limit.rule)} asks`;
  const mend = 'cool it faster: shallow, uncovered, split up, in cold water';
  const shelf = component.steps.flatMap(({ name, segments, needs }, index): readonly InputFault[] => {
    if (!needs.some((need) => need.use === 'place' && need.place === 'cooling')) return [];
    const minutes = segments.reduce((sum, segment) => {
      if (segment.hands === 'on') return sum;
      return sum + durationMinutes(segment.shortest ?? 'PT0M') + coolingMinutes(segment.cools, [component]);
    }, 0);
    if (minutes <= limit.value) return [];
    const found = `${name} cools ${component.name} for ${Math.ceil(minutes)} min`;
    return [{ document: `component ${component.id}`, path: `steps[${index}].segments`, found, wanted, mend }];
  });
  const { cooling, putAway } = boxed && !own ? (session.packing ?? {}) : {};
  if (cooling === undefined || putAway === undefined) return shelf;
  const minutes =
    durationMinutes(cooling.shortest) + coolingMinutes(cooling.cools, boxedComponents(session, components));
  if (minutes <= limit.value) return shelf;
  const found = `the boxes with ${component.name} cool for ${Math.ceil(minutes)} min`;
  return [...shelf, { document: `session ${session.id}`, path: 'packing.cooling.shortest', found, wanted, mend }];
}
