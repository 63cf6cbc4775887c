/**
 * Methods that are refused before anything is planned. What a plan guarantees is that a probe reading has its place, never that
 * a temperature was reached: a probe thermometer decides, and local rules come first.
 */
import type { Component } from '../kitchen/component.ts';
import type { InputFault } from '../kitchen/fault.ts';
import type { Session } from '../kitchen/session.ts';
import { servedWrongly } from '../food/soil.ts';
import type { Step } from '../kitchen/step.ts';

/** Faults of safety in the session's components: cooking through without a reading, or in afterheat; food served to whom it must not reach. */
export function methodFaults(session: Session, components: readonly Component[]): readonly InputFault[] {
  return components.flatMap((component) => [
    ...component.steps.flatMap((step, index) => stepFaults(component, step, index)),
    ...servedWrongly(session, component).map(([eater, allergen]): InputFault => ({
      document: `session ${session.id}`,
      path: 'eaters',
      found: `${component.name} contains ${allergen}, which ${eater} avoids`,
      wanted: `${eater}'s boxes without it`,
      mend: `list what ${eater} eats without ${component.id}, or change the ingredients`,
    })),
  ]);
}

function stepFaults(component: Component, step: Step, index: number): readonly InputFault[] {
  if (step.cooksThrough === undefined) return [];
  return [step, ...(step.alternatives ?? [])].flatMap((way): InputFault[] => {
    const document = `component ${component.id}`;
    const path = `steps[${index}]`;
    const lastOff = way.segments.map((segment) => segment.hands).lastIndexOf('off');
    const read = way.segments.some((segment, at) => at > lastOff && segment.hands === 'on' && segment.probe === true);
    const faults: InputFault[] = [];
    if (!read) {
      faults.push({
        document,
        path: `${path}.segments`,
        found: `${way.name} cooks raw ${step.cooksThrough!.raw} through with no probe reading at its end`,
        wanted: `a hands-on segment with "probe": true after the heat, to read ${step.cooksThrough!.coreC} °C`,
        mend: 'add a minute for the probe thermometer before the step ends',
      });
    }
    if (way.needs.some((need) => need.use === 'oven' && need.afterheat === true)) {
      faults.push({
        document,
        path: `${path}.needs`,
        found: `${way.name} cooks raw ${step.cooksThrough!.raw} through in afterheat`,
        wanted: 'an oven that is switched on',
        mend: 'give the need a window with the heat on, and take "afterheat" out',
      });
    }
    return faults;
  });
}
