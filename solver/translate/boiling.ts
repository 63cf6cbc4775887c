/** Hands-off parts that last until water boils: as long as the burner or kettle chosen needs. */
import type { Literal } from '../engine/problem.ts';
import type { OffPart } from '../kitchen/expand.ts';
import { panFits, type Pan } from '../kitchen/kitchen.ts';
import { boilMinutesInKettle, boilMinutesOnBurner } from '../water/boil.ts';
import { alike } from './alike.ts';
import { panOf } from './holds.ts';
import type { Shape, StepLegend, Translation } from './legend.ts';
import { picks } from './problem-builder.ts';

/** Binds every such part. After all steps and holds. */
export function bindBoiling(t: Translation): void {
  for (const step of t.steps) {
    for (const shape of step.shapes) {
      for (const way of shape.ways) {
        step.instance.ways[way]!.parts.forEach((part, index) => {
          if (part.hands === 'off' && part.boilMl > 0) bindPart(t, step, shape, way, index, part);
        });
      }
    }
  }
}

function bindPart(t: Translation, step: StepLegend, shape: Shape, way: number, index: number, part: OffPart): void {
  const byWay = step.wayOptions.length === 1 ? [] : picks(step.wayChoice, step.wayOptions.indexOf(way));
  const lasts = (minutes: number, when: readonly Literal[]): void => {
    t.builder.atLeast(shape.boundaries[index]!, shape.boundaries[index + 1]!, part.shortest + minutes, [
      ...byWay,
      ...when,
    ]);
    t.builder.atMost(shape.boundaries[index]!, shape.boundaries[index + 1]!, part.longest + minutes, [
      ...byWay,
      ...when,
    ]);
  };
  const own = step.needs.filter((need) => need.ways.includes(way));
  const kettle = own.find((need) => need.need.use === 'kettle');
  const burner = own.find((need) => need.need.use === 'burner');
  if (kettle !== undefined) lasts(boilMinutesInKettle(t.kitchen, t.kitchen.kettle!, part.boilMl), []);
  else if (burner !== undefined) {
    const holder = panOf(t, step, burner);
    const pans = (holder?.options ?? []).map(({ place }) => t.kitchen.pans.find(({ id }) => id === place.id));
    burner.options.forEach((option, number) => {
      const on = t.kitchen.hob.burners.find((candidate) => candidate.id === option.place.id)!;
      const minutes = (pan: Pan | undefined): number =>
        boilMinutesOnBurner(t.kitchen, on, pan, part.boilMl, holder?.lid ?? false);
      for (const { value, literals } of alike(pans, holder?.choice ?? null, (pan) => panFits(on, pan), minutes)) {
        const when = [...picks(burner.choice, number), ...literals];
        if (Number.isFinite(value)) lasts(value, when);
        else never(t, step, way, index, [...step.when, ...byWay, ...when]);
      }
    });
  } else {
    t.faults.push({
      document: `component ${step.instance.component.id}`,
      path: `steps[${step.instance.component.steps.indexOf(step.instance.step)}].segments[${index}].boilMl`,
      found: 'water brought to the boil on nothing',
      wanted: 'a burner or the kettle among the needs of the step',
      mend: 'add a need {"use": "kettle", …} or {"use": "burner", …}',
    });
  }
}

/** A burner that never brings the water to the boil is not taken; where it is the only one, the documents do not fit. */
function never(t: Translation, step: StepLegend, way: number, index: number, when: readonly Literal[]): void {
  if (when.length > 0) return t.builder.forbid(when);
  t.faults.push({
    document: `component ${step.instance.component.id}`,
    path: `steps[${step.instance.component.steps.indexOf(step.instance.step)}].segments[${index}].boilMl`,
    found: `water that no burner of kitchen ${t.kitchen.id} brings to the boil${way === 0 ? '' : ' in this way'}`,
    wanted: 'more heat than the pan loses at the boil',
    mend: 'put the lid on (need of the pan, "lid": true), or choose a stronger burner or a smaller pan',
  });
}
