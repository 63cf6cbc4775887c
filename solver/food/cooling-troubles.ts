/** Why the minutes of a cooling cannot be reckoned, with the mend. */
import type { Component } from '../kitchen/component.ts';
import type { Cools } from '../kitchen/cools.ts';
import type { InputFault } from '../kitchen/fault.ts';
import { LEAST_KNOWN_SHARE } from './composition.ts';
import { coolingOf, type CooledFood } from './cooling-minutes.ts';

type Trouble = Omit<InputFault, 'document'>;

/**
 * What is wrong with a cooling.
 * @param path of its fields in the document, such as `packing.cooling.cools`
 * @returns at most one trouble; empty where its minutes can be reckoned
 */
export function coolingTrouble(cools: Cools, food: CooledFood, path: string): readonly Trouble[] {
  if (cools.fromC < cools.toC)
    return [
      {
        path: `${path}.fromC`,
        found: `cooling from ${cools.fromC} to ${cools.toC} °C`,
        wanted: 'a start hotter than the end',
        mend: 'exchange the two, or correct one',
      },
    ];
  const course = coolingOf(cools, food);
  if (course === null)
    return [
      {
        path: `${path}.food`,
        found: 'food of which it is not known what it is made of',
        wanted: `ingredients with a "food" of the table, at least ${LEAST_KNOWN_SHARE * 100} % of the mass`,
        mend: 'give the ingredients their "food", or say what it is like: "food": "potato-boiled"',
      },
    ];
  if (course.kind === 'never')
    return [
      {
        path: `${path}.toC`,
        found: `${cools.toC} °C in surroundings of ${course.aroundC} °C`,
        wanted: 'an end warmer than what is around it',
        mend: 'cool it to something warmer, or in a colder place',
      },
    ];
  return [];
}

/** Troubles of all coolings that a component's steps ask for. */
export function coolingTroubles(component: Component): readonly Trouble[] {
  return component.steps.flatMap((step, index) =>
    [step, ...(step.alternatives ?? [])].flatMap((way, number) =>
      way.segments.flatMap((segment, at) => {
        if (segment.hands === 'on' || segment.cools === undefined) return [];
        const method = number === 0 ? `steps[${index}]` : `steps[${index}].alternatives[${number - 1}]`;
        return coolingTrouble(segment.cools, [component], `${method}.segments[${at}].cools`);
      }),
    ),
  );
}
