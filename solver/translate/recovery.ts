/** Hands-off parts in which an oven makes up for a cold load: longer by the minutes that the oven chosen needs. */
import { recoveryOfNeed } from '../heat/oven-load.ts';
import { loadOfPart, type OffPart } from '../kitchen/expand.ts';
import type { Shape, StepLegend, Translation } from './legend.ts';
import { picks } from './problem-builder.ts';

/** Binds every such part. After all steps. */
export function bindRecovery(t: Translation): void {
  for (const step of t.steps) {
    for (const shape of step.shapes) {
      for (const way of shape.ways) {
        step.instance.ways[way]!.parts.forEach((part, index) => {
          if (part.hands === 'off' && part.recovers) bindPart(t, step, shape, way, index, part);
        });
      }
    }
  }
}

function bindPart(t: Translation, step: StepLegend, shape: Shape, way: number, index: number, part: OffPart): void {
  const wanted = loadOfPart(step.instance.ways[way]!, index)!;
  const need = step.needs.find((each) => each.ways.includes(way) && same(each.need, wanted))!;
  const byWay = step.wayOptions.length === 1 ? [] : picks(step.wayChoice, step.wayOptions.indexOf(way));
  const [from, to] = [shape.boundaries[index]!, shape.boundaries[index + 1]!];
  // Racks of one oven take the same minutes.
  for (const oven of t.kitchen.ovens) {
    const inOven = need.options.flatMap((option, number) => (option.place.oven === oven.id ? [number] : []));
    if (inOven.length === 0) continue;
    const when = [...byWay, ...(inOven.length === need.options.length ? [] : picks(need.choice, ...inOven))];
    const minutes = recoveryOfNeed(oven, t.kitchen.roomC, wanted);
    if (Number.isFinite(minutes)) {
      t.builder.atLeast(from, to, part.shortest + minutes, when);
      t.builder.atMost(from, to, part.longest + minutes, when);
    } else if (when.length > 0) t.builder.forbid([...step.when, ...when]);
    else
      t.faults.push({
        document: `component ${step.instance.component.id}`,
        path: `steps[${step.instance.component.steps.indexOf(step.instance.step)}].needs`,
        found: `a cold load for which ${oven.name} never makes up at ${wanted.mostC} °C`,
        wanted: 'an oven with power to spare at that temperature',
        mend: 'choose a lower temperature, correct the rated power of the oven, or leave the load out',
      });
  }
}

/** Needs alike are one need with several ways. */
const same = (a: object, b: object): boolean => JSON.stringify(a) === JSON.stringify(b);
