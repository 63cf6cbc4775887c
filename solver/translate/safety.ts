/** What the safety rules in force ask of a plan beyond what its documents say. */
import type { Point } from '../engine/problem.ts';
import type { Component } from '../kitchen/component.ts';
import type { SafetyRules } from '../kitchen/safety-rules.ts';
import { packedDishes } from '../kitchen/packed-dishes.ts';
import { BOXES } from '../kitchen/session-components.ts';
import type { Need, Step } from '../kitchen/step.ts';
import { coolsTo, lastHeat, needHeats, servingSteps, wayHeats } from '../safety/last-heat.ts';
import { coolingRules, coreRule, fridgeDeadline, handWash, hotHolding, leastOvenC } from '../safety/limits.ts';
import { whenWays } from './holds.ts';
import type { NeedLegend, StepLegend, Translation } from './legend.ts';
import { legendsOf, related } from './orders.ts';
import { end } from './problem-builder.ts';
import { coolingRuleName, restName } from './requirement-names.ts';

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
          t.builder.atLeast(cooking.end, legend.start, Math.ceil(seconds / 60), [], restName({ step, component }));
  }
}

/** A point of a plan, and when it is there at all. */
type At = Pick<OffTheHeat, 'at' | 'when' | 'step'>;

/** When a component's food begins to cool, by the event that a rule names. */
function coolingBegins(t: Translation, component: Component, event: string): readonly At[] {
  const holdingC = hotHolding(t.rules)?.value ?? 0;
  const last = lastHeat(component, holdingC);
  if (event === 'made')
    return last.length > 0
      ? []
      : component.steps.flatMap(({ id }) =>
          legendsOf(t, component.id, id).map((step) => ({ step, at: step.start, when: [] })),
        );
  return last.flatMap(({ id }) =>
    legendsOf(t, component.id, id).flatMap((step) => heatEnds(step, holdingC).map((at) => ({ step, ...at }))),
  );
}

/** The end of the first cooling in a component's document, else of the boxes, that brings its core to a temperature, °C. */
function coldEnough(t: Translation, component: Component, celsius: number): readonly At[] {
  for (const { id } of component.steps) {
    const ends = legendsOf(t, component.id, id).flatMap((step) =>
      step.shapes.flatMap((shape): readonly At[] =>
        shape.boundaries.slice(1).flatMap((at, index): readonly At[] => {
          const cold = shape.ways.every((way) => (coolsTo(step.instance.step, way, index) ?? Infinity) <= celsius);
          return cold ? [{ step, at, when: whenWays(step, shape) }] : [];
        }),
      ),
    );
    if (ends.length > 0) return ends;
  }
  const { cooling } = packedDishes(t.session).includes(component.id) ? (t.session.packing ?? {}) : {};
  if ((cooling?.cools?.toC ?? Infinity) > celsius) return [];
  return legendsOf(t, BOXES, 'cool').map((step) => ({ step, at: step.end, when: [] }));
}

/** Where a document says how cold food is after a cooling, it is so within the time that the rules give. */
export function addCoolingStages(t: Translation): void {
  for (const component of new Set(t.steps.map((step) => step.instance.component))) {
    for (const rule of coolingRules(t.rules, component.storage, t.kitchen.roomC)) {
      if (rule.end.event !== 'core-at-most') continue;
      const cold = coldEnough(t, component, rule.end.celsius);
      for (const from of coolingBegins(t, component, rule.start.event))
        for (const to of cold)
          if (related(from.step, to.step))
            t.builder.atMost(from.at, to.at, rule.mostMinutes, [...from.when, ...to.when], coolingRuleName(component));
    }
  }
}
