/** What food safety asks of a component's times: the fridge, the stages of cooling, a rest; by its own document and by the rules in force. */
import type { Component } from '../kitchen/component.ts';
import { minutesDown } from '../kitchen/scaling.ts';
import { packedDishes } from '../kitchen/packed-dishes.ts';
import { durationMinutes } from '../kitchen/values.ts';
import { lastHeat } from '../safety/last-heat.ts';
import { coolingRules, coreRule, fridgeDeadline, hotHolding } from '../safety/limits.ts';
import { rulesInForce, STRICTEST_BUILT_IN } from '../safety/rules-in-force.ts';
import { coolingRuleName, fridgeName, fridgeRuleName, restName } from '../translate/requirement-names.ts';
import type { SessionInput } from '../translate/session-to-problem.ts';
import type { Requirement } from './requirement.ts';
import { minutesInWords } from './session-words.ts';
import { withoutLags } from './without-lags.ts';

type Part = Omit<Requirement, 'id' | 'document'>;

/**
 * The limits of food safety on a component. They are told where they take part in a clash; their mend changes the food or its place in
 * the session, never the rule.
 */
export function safetyRequirements(input: SessionInput, component: Component): readonly Part[] {
  const inForce = input.rules === undefined ? rulesInForce(input.session.authority) : null;
  const rules = input.rules ?? (inForce?.ok === true ? inForce.rules : STRICTEST_BUILT_IN);
  const boxed = packedDishes(input.session).includes(component.id);
  const kept = boxed || component.steps.some((step) => step.putsAway === true);
  const hot = lastHeat(component, hotHolding(rules)?.value ?? 0).length > 0;
  const written = component.fridge === undefined ? null : minutesDown(durationMinutes(component.fridge.within));
  const asked = kept && hot ? (fridgeDeadline(rules, component.storage, input.kitchen.roomC)?.value ?? null) : null;
  const limits = [written, asked].flatMap((minutes) => minutes ?? []);
  const parts: Part[] = [];
  if (limits.length > 0)
    parts.push({
      kind: 'limit',
      path: written === null ? 'fridge' : 'fridge.within',
      words: `${component.name} is in the fridge within ${minutesInWords(Math.min(...limits))} of leaving the heat`,
      mend: 'cool it faster, so that it may be put away later',
      relaxProblem: withoutLags(
        (_, name) =>
          name === fridgeRuleName(component) || (written !== null && name === fridgeName(component, written)),
      ),
    });
  // Warmest end of a stage: a cooling that stops above it is nobody's concern.
  const stageC = Math.max(
    ...coolingRules(rules, component.storage, input.kitchen.roomC).map(({ end }) =>
      end.event === 'core-at-most' ? end.celsius : -Infinity,
    ),
  );
  const boxC = boxed ? (input.session.packing?.cooling?.cools?.toC ?? Infinity) : Infinity;
  if (Math.min(boxC, coldest(component)) <= stageC)
    parts.push({
      kind: 'limit',
      path: 'steps',
      words: `${component.name} cools as fast as the safety rules ask`,
      mend: 'cool it faster: shallower, open, in cold water',
      relaxProblem: withoutLags((_, name) => name === coolingRuleName(component)),
    });
  component.steps.forEach((step, index) => {
    const seconds = step.cooksThrough === undefined ? 0 : (coreRule(rules, step.cooksThrough)?.restSeconds ?? 0);
    if (seconds > 0)
      parts.push({
        kind: 'limit',
        path: `steps[${index}].cooksThrough`,
        words: `${component.name} rests for ${minutesInWords(Math.ceil(seconds / 60))} after “${step.name}”, as the safety rules ask`,
        mend: `cook ${component.name} earlier, so that it can rest`,
        relaxProblem: withoutLags((_, name) => name === restName({ step, component })),
      });
  });
  return parts;
}

/** Coldest that a cooling in its document brings it to, °C. */
const coldest = ({ steps }: Component): number =>
  Math.min(
    ...steps.flatMap((step) =>
      [step, ...(step.alternatives ?? [])].flatMap((way) =>
        way.segments.flatMap((segment) => (segment.hands === 'off' ? (segment.cools?.toC ?? []) : [])),
      ),
    ),
  );
