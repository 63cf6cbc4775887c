/** Boxes that are alike: those of each eater, and those that nobody in particular eats. */
import { markAvoided, marksOfIngredient } from '../food/allergens.ts';
import type { Component } from '../kitchen/component.ts';
import { packedDishes } from '../kitchen/packed-dishes.ts';
import type { Eater, Session } from '../kitchen/session.ts';
import type { AllergenMark } from '../kitchen/values.ts';

export interface BoxGroup {
  /** null: boxes for whom it may concern. */
  readonly eater: Eater | null;
  /** How many boxes are alike. */
  readonly boxes: number;
  /** What goes into each of them. */
  readonly dishes: readonly Component[];
  readonly avoids: ReadonlySet<AllergenMark>;
  /** Allergens of the ingredients. */
  readonly contains: ReadonlySet<AllergenMark>;
}

/**
 * The boxes of a session in groups.
 *
 * @param components at least those of the session's dishes
 * @returns empty where no boxes are packed
 */
export function boxGroups(session: Session, components: readonly Component[]): readonly BoxGroup[] {
  const { packing, eaters = [] } = session;
  if (packing === undefined || packing.boxes === 0) return [];
  const packed = packedDishes(session).flatMap((id) => components.find((component) => component.id === id) ?? []);
  const own = eaters.filter(({ boxes }) => boxes > 0);
  const left = packing.boxes - own.reduce((sum, { boxes }) => sum + boxes, 0);
  const groups = [
    ...own.map((eater) => ({
      eater,
      boxes: eater.boxes,
      dishes: packed.filter(({ id }) => eater.eats === undefined || eater.eats.includes(id)),
    })),
    ...(left > 0 ? [{ eater: null, boxes: left, dishes: packed }] : []),
  ];
  return groups.map((group) => ({
    ...group,
    avoids: new Set(group.eater?.avoids.map(markAvoided)),
    contains: new Set(
      group.dishes.flatMap(({ ingredients }) => ingredients.flatMap((each) => [...marksOfIngredient(each)])),
    ),
  }));
}

/**
 * Portions of a dish in one box: 1, or what there is where fewer portions are made than boxes filled.
 * @param groups of the session
 */
export function portionsInBox(session: Session, component: Component, groups: readonly BoxGroup[]): number {
  const made = session.dishes.find((dish) => dish.component === component.id)?.portions ?? 0;
  const boxes = groups.filter(({ dishes }) => dishes.includes(component)).reduce((sum, group) => sum + group.boxes, 0);
  return Math.min(1, made / boxes);
}
