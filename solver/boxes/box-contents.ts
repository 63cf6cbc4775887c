/** What is in each eater's boxes by a plan, and what that may have met on the way there. */
import { readPlan } from '../checker/reading.ts';
import { soilCourse, type Meeting } from '../checker/soil-course.ts';
import { doneWeight } from '../food/done-weight.ts';
import type { Component } from '../kitchen/component.ts';
import type { Plan } from '../kitchen/plan.ts';
import { BOXES, readyStep } from '../kitchen/session-components.ts';
import type { AllergenMark } from '../kitchen/values.ts';
import { boxGroups, portionsInBox, type BoxGroup } from './box-groups.ts';
import { fillingOrder } from './filling-order.ts';

/** One portion of a dish, or what there is of it for a box where it makes fewer portions than boxes. */
export interface Share {
  readonly component: Component;
  /** Weight as it goes into the box, g; null: the recipe does not say. */
  readonly massG: number | null;
  /** Minute at which the last of it is ready, from the session's start. */
  readonly readyMinute: number;
}

export interface BoxContents {
  /** null: boxes for whom it may concern. */
  readonly eater: { readonly id: string; readonly name: string } | null;
  /** How many boxes are alike. */
  readonly boxes: number;
  readonly shares: readonly Share[];
  readonly avoids: ReadonlySet<AllergenMark>;
  /** Allergens of the ingredients. */
  readonly contains: ReadonlySet<AllergenMark>;
  /** Allergens of other food that may have reached it: on shared things and hands since they were last washed, in shared water, by drips, or as the boxes were filled. */
  readonly mayHaveMet: ReadonlySet<AllergenMark>;
  /** Hands and spoon are washed before these boxes are filled. */
  readonly washBefore: boolean;
}

/**
 * The boxes of a plan in the order in which they are filled, those of eaters who avoid something first; empty without packing.
 *
 * @param plan a valid plan; of one that breaks rule 8 the contents tell what would have been met
 */
export function boxContents(plan: Plan): readonly BoxContents[] {
  const { session, components } = plan;
  const groups = boxGroups(session, components);
  if (groups.length === 0) return [];
  const course = soilCourse(readPlan(plan));
  const marks = (food: string): readonly AllergenMark[] => (course.get(food) ?? []).map(({ mark }: Meeting) => mark);
  return fillingOrder(groups).map(({ boxes: group, washBefore, met }) => {
    const mayHaveMet = [...group.dishes.flatMap(({ id }) => marks(id)), ...marks(BOXES), ...met];
    return {
      eater: group.eater === null ? null : { id: group.eater.id, name: group.eater.name },
      boxes: group.boxes,
      avoids: group.avoids,
      contains: group.contains,
      mayHaveMet: new Set(mayHaveMet.filter((mark) => !group.contains.has(mark))),
      washBefore,
      shares: group.dishes.map((component) => share(plan, component, groups)),
    };
  });
}

/** Weight done as the recipe says, or as the yields of all its ingredients give it, g; null: neither. */
function weightDone(component: Component): number | null {
  if (component.makes.massG > 0) return component.makes.massG;
  const { grams, raw, unweighed } = doneWeight(component);
  return grams > 0 && raw.length === 0 && unweighed.length === 0 ? grams : null;
}

function share(plan: Plan, component: Component, groups: readonly BoxGroup[]): Share {
  const massG = weightDone(component);
  const { portions: makes } = component.makes;
  const ready = plan.steps.filter((step) => step.component === component.id && step.step === readyStep(component));
  return {
    component,
    massG: massG === null ? null : Math.round((massG / makes) * portionsInBox(plan.session, component, groups)),
    readyMinute: Math.max(0, ...ready.map(({ end }) => end)),
  };
}
