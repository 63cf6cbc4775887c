/** Which steps of a component heat its food, and which of them are the last: from their end on it cools. */
import type { Component } from '../kitchen/component.ts';
import { onceOn } from '../kitchen/once.ts';
import type { Need, Step } from '../kitchen/step.ts';
import type { RawKind } from '../kitchen/values.ts';

type Way = { readonly needs: readonly Need[] };

/** Whether a need heats food to where nothing grows, at `holdingC` °C or hotter. */
export function needHeats(need: Need, holdingC: number): boolean {
  switch (need.use) {
    case 'oven':
      return need.leastC >= holdingC;
    case 'burner':
    case 'kettle':
    case 'pool':
      return true;
    case 'appliance':
      // A mixer is an appliance, too: without a word it is not counted, so the time begins at the heat before it.
      return need.heats === true;
    default:
      return false;
  }
}

/** Whether a way of doing a step heats the food. A pan that stays on its burner through other steps is those steps' own need. */
export const wayHeats = (step: Step, way: Way, holdingC: number): boolean =>
  way.needs.some((need) => needHeats(need, holdingC)) ||
  (step.hotHold !== undefined && step.hotHold.leastC >= holdingC);

const ways = (step: Step): readonly Way[] => [step, ...(step.alternatives ?? [])];

/** Ids of the steps that come before a step in its own component's order. */
export const stepsBefore = onceOn((component: Component, id: string): ReadonlySet<string> => {
  const before = new Set<string>();
  const visit = (from: string): void => {
    for (const { step } of component.steps.find((each) => each.id === from)?.after ?? []) {
      const own = step.startsWith(`${component.id}/`) ? step.slice(component.id.length + 1) : step;
      if (own.includes('/') || before.has(own)) continue;
      before.add(own);
      visit(own);
    }
  };
  visit(id);
  return before;
});

/**
 * The steps that may be the last heat of some part of the food: they heat it in some way, and no step after them surely heats it
 * again. Parts that are cooked apart have each their own.
 *
 * @param holdingC temperature from which on food counts as hot, °C
 */
export const lastHeat = onceOn((component: Component, holdingC: number): readonly Step[] => {
  const heating = component.steps.filter((step) => ways(step).some((way) => wayHeats(step, way, holdingC)));
  const sure = heating.filter((step) => ways(step).every((way) => wayHeats(step, way, holdingC)));
  const heatedAgain = new Set(sure.flatMap((step) => [...stepsBefore(component, step.id)]));
  return heating.filter(({ id }) => !heatedAgain.has(id));
});

/** Steps after one in the component's order that make its food ready to eat. */
export const servingSteps = (component: Component, id: string): readonly Step[] =>
  component.steps.filter((step) => step.readyToEat === true && stepsBefore(component, step.id).has(id));

/**
 * How cold the core is once a segment of a step is over, °C, where the document says how it cools.
 *
 * @param alternative 0: the step as written; n: its n-th alternative
 * @returns null where it does not say
 */
export function coolsTo(step: Step, alternative: number, segment: number): number | null {
  const method = alternative === 0 ? step : step.alternatives?.[alternative - 1];
  const given = method?.segments[segment];
  return given?.hands === 'off' ? (given.cools?.toC ?? null) : null;
}

/** Raw ingredients that a step counts as cooked, though no step of the component cooks their kind through. */
export function saidCooked(component: Component): readonly { index: number; name: string; raw: RawKind }[] {
  const through = new Set(component.steps.flatMap(({ cooksThrough }) => cooksThrough?.raw ?? []));
  return component.ingredients.flatMap(({ id, name, raw }, index) => {
    if (raw === undefined || through.has(raw)) return [];
    const cooked = component.steps.some((step) => step.cooked === true && (step.touches?.includes(id) ?? true));
    return cooked ? [{ index, name, raw }] : [];
  });
}
