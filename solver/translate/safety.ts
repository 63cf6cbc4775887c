/** What the safety rules in force ask of a plan beyond what its documents say. */
import type { Point } from '../engine/problem.ts';
import type { Component } from '../kitchen/component.ts';
import type { SafetyRules } from '../kitchen/safety-rules.ts';
import type { Need, Step } from '../kitchen/step.ts';
import { lastHeat, needHeats, servingSteps, wayHeats } from '../safety/last-heat.ts';
import { coreRule, fridgeDeadline, handWash, hotHolding, leastOvenC } from '../safety/limits.ts';
import { whenWays } from './holds.ts';
import type { NeedLegend, StepLegend, Translation } from './legend.ts';
import { legendsOf, related } from './orders.ts';
import { end } from './problem-builder.ts';
import { restName } from './requirement-names.ts';

/** A component whose raw food is roasted in ovens set no lower than the rules let them be. */
export function roastedAsAsked(component: Component, rules: SafetyRules): Component {
  const least = (step: Step): number | null =>
    step.cooksThrough === undefined ? null : (leastOvenC(rules, step.cooksThrough)?.value ?? null);
  if (component.steps.every((step) => least(step) === null)) return component;
  return {
    ...component,
    steps: component.steps.map((step): Step => {
      const leastC = least(step);
      if (leastC === null) return step;
      const raised = (needs: readonly Need[]): Need[] =>
        needs.map((need) => (need.use === 'oven' ? { ...need, leastC: Math.max(need.leastC, leastC) } : need));
      return {
        ...step,
        needs: raised(step.needs),
        ...(step.alternatives === undefined
          ? {}
          : { alternatives: step.alternatives.map((way) => ({ ...way, needs: raised(way.needs) })) }),
      };
    }),
  };
}

/** Minutes that washing hands takes: as the kitchen says, and as long as the rules ask. */
export const handWashMinutes = ({ kitchen, rules }: Pick<Translation, 'kitchen' | 'rules'>): number =>
  Math.max(kitchen.washing.hands, (handWash(rules)?.value ?? 0) / 60);

export interface OffTheHeat {
  readonly step: StepLegend;
  readonly at: Point;
  readonly when: ReturnType<typeof whenWays>;
  /** Minutes to the fridge at most. */
  readonly most: number;
}

/** When the parts of a component leave their last heat, and how soon after it the rules want them in the fridge. */
export function offTheHeat(t: Translation, component: Component): readonly OffTheHeat[] {
  const limit = fridgeDeadline(t.rules, component.storage, t.kitchen.roomC);
  if (limit === null) return [];
  const holdingC = hotHolding(t.rules)?.value ?? 0;
  return lastHeat(component, holdingC).flatMap((step) =>
    legendsOf(t, component.id, step.id).flatMap((legend) =>
      heatEnds(legend, holdingC).map((at) => ({ step: legend, most: limit.value, ...at })),
    ),
  );
}

/** Where the heat of each way of a step ends: with the last of its needs that heat, or with the step where it is only kept hot. */
function heatEnds(legend: StepLegend, holdingC: number): readonly Pick<OffTheHeat, 'at' | 'when'>[] {
  const { ways, step } = legend.instance;
  const ends = new Map<NeedLegend | null, readonly number[]>();
  for (const way of legend.wayOptions) {
    const heating = legend.needs.filter((need) => need.ways.includes(way) && needHeats(need.need, holdingC));
    const until = (need: NeedLegend): number => need.need.during?.to ?? Infinity;
    const last = [...heating].sort((a, b) => until(b) - until(a))[0] ?? null;
    if (last === null && !wayHeats(step, ways[way]!, holdingC)) continue;
    ends.set(last, [...(ends.get(last) ?? []), way]);
  }
  return [...ends.keys()].map((need) =>
    need === null ? { at: legend.end, when: [] } : { at: end(need.task), when: whenWays(legend, need) },
  );
}

/** Food that the rules want rested is not served before it has. */
export function addRests(t: Translation): void {
  for (const cooking of t.steps) {
    const { component, step } = cooking.instance;
    const seconds = step.cooksThrough === undefined ? 0 : (coreRule(t.rules, step.cooksThrough)?.restSeconds ?? 0);
    if (seconds === 0) continue;
    for (const serving of servingSteps(component, step.id))
      for (const legend of legendsOf(t, component.id, serving.id))
        if (related(cooking, legend))
          t.builder.atLeast(cooking.end, legend.start, Math.ceil(seconds / 60), [], restName(step));
  }
}
