/** What each eater's boxes hold in nutrients and energy, by the session's documents alone. */
import { nutritionOfHelpings, type Nutrition } from '../food/nutrition.ts';
import type { Component } from '../kitchen/component.ts';
import { packedDishes } from '../kitchen/session-components.ts';
import type { Session } from '../kitchen/session.ts';

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
  const { packing, eaters = [] } = session;
  if (packing === undefined || packing.boxes === 0) return [];
  const packed = packedDishes(session).flatMap((id) => components.find((component) => component.id === id) ?? []);
  const own = eaters.filter(({ boxes }) => boxes > 0);
  const left = packing.boxes - own.reduce((sum, { boxes }) => sum + boxes, 0);
  const groups = [
    ...own.map(({ id, name, boxes, eats }) => ({
      eater: { id, name },
      boxes,
      dishes: packed.filter((dish) => eats === undefined || eats.includes(dish.id)),
    })),
    ...(left > 0 ? [{ eater: null, boxes: left, dishes: packed }] : []),
  ];
  const portionsOf = (component: Component): number => {
    const made = session.dishes.find((dish) => dish.component === component.id)?.portions ?? 0;
    const boxes = groups
      .filter(({ dishes }) => dishes.includes(component))
      .reduce((sum, group) => sum + group.boxes, 0);
    return Math.min(1, made / boxes);
  };
  return groups.map(({ eater, boxes, dishes }) => {
    const helpings = dishes.map((component) => ({ component, portions: portionsOf(component) }));
    return { eater, boxes, helpings, nutrition: nutritionOfHelpings(helpings) };
  });
}
