/** Holds: equipment that a component keeps from the start of one step to the end of another; and pans on burners their size. */
import type { Literal } from '../engine/problem.ts';
import type { Dish, HoldInstance } from '../kitchen/expand.ts';
import type { Component, Hold } from '../kitchen/component.ts';
import { panFits } from '../kitchen/kitchen.ts';
import type { HandSoil } from './hands.ts';
import type { HoldLegend, NeedLegend, PlaceOption, StepLegend, Translation } from './legend.ts';
import { needModes, optionsOf } from './needs.ts';
import { avoidedIn, left } from './soil.ts';
import { labelOf } from './steps.ts';
import { end, picks, start } from './problem-builder.ts';

/** Ids of the steps from a hold's first to its last, in the order of the component. */
export function stepsWithin(component: Component, hold: Hold): readonly string[] {
  const ids = component.steps.map((step) => step.id);
  return ids.slice(ids.indexOf(hold.from), ids.indexOf(hold.to) + 1);
}

function holdSoil(t: Translation, instance: HoldInstance): HandSoil {
  const within = new Set(stepsWithin(instance.component, instance.hold));
  const steps = instance.component.steps.filter((step) => within.has(step.id));
  return {
    leaves: left(t, instance.component, steps),
    // What is eaten as it is at the end must not meet the raw soil of an earlier batch, though its own was cooked on it.
    avoids: avoidedIn(t, instance.component, steps),
  };
}

const holdFault = (t: Translation, instance: HoldInstance, found: string, mend: string): void => {
  t.faults.push({
    document: `component ${instance.component.id}`,
    path: `holds[${(instance.component.holds ?? []).indexOf(instance.hold)}]`,
    found,
    wanted: 'a thing kept from one step of this component to another',
    mend,
  });
};

/** Adds a hold of one batch under one split. After the steps of its dish. */
export function addHold(
  t: Translation,
  dish: Dish,
  instance: HoldInstance,
  split: { readonly choice: string | null; readonly option: number },
): void {
  const { builder } = t;
  const when: readonly Literal[] = instance.batched ? picks(split.choice, split.option) : [];
  const find = (id: string): StepLegend | undefined =>
    t.steps.find(
      (step) =>
        step.dish === dish &&
        step.instance.step.id === id &&
        step.instance.batch === instance.batch &&
        JSON.stringify(step.when) === JSON.stringify(when),
    );
  const from = find(instance.hold.from);
  const to = find(instance.hold.to);
  if (from === undefined || to === undefined) {
    holdFault(
      t,
      instance,
      `from "${instance.hold.from}" to "${instance.hold.to}"`,
      'name steps that exist, both done batch by batch or both not',
    );
    return;
  }
  const options = optionsOf(t, instance.need);
  if (options.length === 0) {
    holdFault(
      t,
      instance,
      `no ${instance.need.use} of kitchen ${t.kitchen.id} is large enough`,
      'add one to the kitchen, or make smaller batches',
    );
    return;
  }
  const task = `${instance.component.id}/hold-${instance.hold.id}.${instance.batch}${when.length === 0 ? '' : `@${split.option + 1}`}`;
  const choice = builder.choice(`place:${task}`, options.map(labelOf));
  builder.task(
    task,
    needModes(t, instance, instance.need, options, holdSoil(t, instance), { shortest: 0, longest: builder.horizon }),
    choice,
    when,
  );
  builder.exactly(from.start, start(task), 0);
  builder.exactly(to.end, end(task), 0);
  t.holds.push({ instance, when, task, choice, options });
}

export interface PanHolder {
  readonly choice: string | null;
  readonly options: readonly PlaceOption[];
  /** The lid is on. */
  readonly lid: boolean;
}

/** The pan that stands on a step's burner in some of its ways: the step's own, or that of a hold around it; null: none. */
export function panOf(t: Translation, step: StepLegend, need: NeedLegend): PanHolder | null {
  const own = step.needs.find((other) => other.need.use === 'pan' && other.ways.some((way) => need.ways.includes(way)));
  if (own !== undefined && own.need.use === 'pan')
    return { choice: own.choice, options: own.options, lid: own.need.lid === true };
  const hold = holdAround(t.holds, step, 'pan');
  return hold !== undefined && hold.instance.need.use === 'pan'
    ? { choice: hold.choice, options: hold.options, lid: hold.instance.need.lid === true }
    : null;
}

function holdAround(holds: readonly HoldLegend[], step: StepLegend, use: string): HoldLegend | undefined {
  return holds.find(
    (hold) =>
      hold.instance.component.id === step.instance.component.id &&
      hold.instance.need.use === use &&
      (!hold.instance.batched || hold.instance.batch === step.instance.batch) &&
      JSON.stringify(hold.when) === JSON.stringify(hold.instance.batched ? step.when : []) &&
      stepsWithin(hold.instance.component, hold.instance.hold).includes(step.instance.step.id),
  );
}

/** A pan stands only on a burner its size. After all steps and holds. */
export function fitPansToBurners(t: Translation): void {
  for (const step of t.steps) {
    for (const need of step.needs) {
      if (need.need.use !== 'burner') continue;
      const pan = panOf(t, step, need);
      if (pan === null) {
        t.faults.push({
          document: `component ${step.instance.component.id}`,
          path: `steps[${step.instance.component.steps.indexOf(step.instance.step)}].needs`,
          found: 'a burner without a pan',
          wanted: 'a pan among the needs of the step, or a hold of a pan around it',
          mend: 'add a need {"use": "pan", …} to the step or a hold to the component',
        });
        continue;
      }
      need.options.forEach((burnerOption, burnerIndex) => {
        const burner = t.kitchen.hob.burners.find((candidate) => candidate.id === burnerOption.place.id)!;
        pan.options.forEach((panOption, panIndex) => {
          if (
            !panFits(
              burner,
              t.kitchen.pans.find((candidate) => candidate.id === panOption.place.id)!,
            )
          ) {
            t.builder.forbid([
              ...whenWays(step, need),
              ...picks(need.choice, burnerIndex),
              ...picks(pan.choice, panIndex),
            ]);
          }
        });
      });
    }
  }
}

/** Conditions under which a step has a need: its split, and its way where only some have it. */
export function whenWays(step: StepLegend, need: Pick<NeedLegend, 'ways'>): readonly Literal[] {
  const ways =
    need.ways.length === step.wayOptions.length
      ? []
      : picks(step.wayChoice, ...need.ways.map((way) => step.wayOptions.indexOf(way)));
  return [...step.when, ...ways];
}
