/** What each eater's boxes hold in nutrients and energy, by the session's documents alone. */
import { nutritionOfHelpings, type Nutrition } from '../food/nutrition.ts';
import type { Component } from '../kitchen/component.ts';
import type { Session } from '../kitchen/session.ts';
import { boxGroups, portionsInBox } from './box-groups.ts';

export interface BoxNutrition {
  /** null: boxes for whom it may concern. */
  readonly eater: { readonly id: string; readonly name: string } | null;
  /** How many boxes are alike. */
  readonly boxes: number;
  /** Portions of each dish in one box: 1, or what there is where fewer portions are made than boxes filled. */
  readonly helpings: readonly { readonly component: Component; readonly portions: number }[];
  /** Of one box. */
  readonly nutrition: Nutrition;
}

/**
 * Nutrients of a session's boxes, eater by eater.
 *
 * @param components at least those of the session's dishes
 * @returns empty where no boxes are packed
 */
export function boxNutrition(session: Session, components: readonly Component[]): readonly BoxNutrition[] {
  const groups = boxGroups(session, components);
  return groups.map(({ eater, boxes, dishes }) => {
    const helpings = dishes.map((component) => ({ component, portions: portionsInBox(session, component, groups) }));
    return {
      eater: eater === null ? null : { id: eater.id, name: eater.name },
      boxes,
      helpings,
      nutrition: nutritionOfHelpings(helpings),
    };
  });
}
