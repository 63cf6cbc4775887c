/** Hands-off parts that last until water boils: as long as the burner or kettle chosen needs. */
import type { Literal } from '../engine/problem.ts';
import type { OffPart } from '../kitchen/expand.ts';
import { boilMinutesInKettle, boilMinutesOnBurner } from '../water/boil.ts';
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
  if (kettle !== undefined) lasts(boilMinutesInKettle(t.kitchen.kettle!, part.boilMl), []);
  else if (burner !== undefined) {
    const lidded = panOf(t, step, burner)?.lid ?? false;
    burner.options.forEach((option, number) => {
      const on = t.kitchen.hob.burners.find((candidate) => candidate.id === option.place.id)!;
      lasts(boilMinutesOnBurner(on, part.boilMl, lidded), picks(burner.choice, number));
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
