/** Soil: what a step leaves on shared things, and what it must not meet there. */
import type { Component } from '../kitchen/component.ts';
import { onceFor, onceForBoth } from '../kitchen/once.ts';
import { BOXES } from '../kitchen/session-components.ts';
import type { Eater, Session } from '../kitchen/session.ts';
import type { Step } from '../kitchen/step.ts';
import { ALLERGENS, GLUTEN_CEREALS, RAW_KINDS, type AllergenMark, type Soil } from '../kitchen/values.ts';
import { markAvoided, marksOfIngredient } from './allergens.ts';

/** Allergens among a component's ingredients, with the cereals of its gluten. */
export const allergensOf = onceFor(
  (component: Component): ReadonlySet<AllergenMark> =>
    new Set(component.ingredients.flatMap((ingredient) => [...marksOfIngredient(ingredient)])),
);

const MARKS: ReadonlySet<string> = new Set([...ALLERGENS, ...GLUTEN_CEREALS]);
/** An allergen, not raw food or leavings. */
export const isMark = (soil: Soil): soil is AllergenMark => MARKS.has(soil);

/** What an eater avoids. */
export const avoidedBy = (eater: Eater): ReadonlySet<AllergenMark> => new Set(eater.avoids.map(markAvoided));

/** Whether a dish comes to an eater: in the boxes, or, who has none too, at the table. */
export function eats(session: Session, eater: Eater, dish: string): boolean {
  const served = eater.boxes > 0 || session.table?.dishes.includes(dish) === true;
  return served && (eater.eats === undefined || eater.eats.includes(dish));
}

/** Allergens that a component must stay free of: those avoided by some eater of it and not among its own ingredients. */
export const keptFree = onceForBoth((session: Session, component: Component): ReadonlySet<AllergenMark> => {
  const own = allergensOf(component);
  const avoided = (session.eaters ?? [])
    .filter((eater) => eats(session, eater, component.id))
    .flatMap((eater) => [...avoidedBy(eater)]);
  return new Set(avoided.filter((mark) => !own.has(mark)));
});

/** Eaters who would be served what they avoid: `[eater name, allergen]`. */
export function servedWrongly(session: Session, component: Component): readonly (readonly [string, AllergenMark])[] {
  if (component.id === BOXES) return [];
  const own = allergensOf(component);
  return (session.eaters ?? [])
    .filter((eater) => eats(session, eater, component.id))
    .flatMap((eater) =>
      [...avoidedBy(eater)].filter((mark) => own.has(mark)).map((mark) => [eater.name, mark] as const),
    );
}

const touched = (component: Component, step: Step) =>
  component.ingredients.filter((ingredient) => step.touches === undefined || step.touches.includes(ingredient.id));

/** What a step leaves on the hands, boards and water it uses. */
export function leaves(component: Component, step: Step): ReadonlySet<Soil> {
  const soil = new Set<Soil>();
  for (const ingredient of touched(component, step)) {
    for (const mark of marksOfIngredient(ingredient)) soil.add(mark);
    if (ingredient.raw !== undefined && step.cooked !== true) soil.add(`raw-${ingredient.raw}`);
  }
  return soil;
}

/**
 * What a step must not meet on the hands, boards and water it uses: the allergens its component is kept free of; for food
 * eaten as it is, raw meat, poultry, fish and egg too (its own excepted).
 *
 * Filling boxes begins with the boxes of those who avoid something, so it begins, and goes on after a break, with hands free of
 * all that any of them avoids, though other boxes hold it.
 */
export function avoids(session: Session, component: Component, step: Step): ReadonlySet<Soil> {
  if (component.id === BOXES && touchesFood(component, step))
    return new Set<Soil>([...avoidedInBoxes(session), ...RAW_KINDS.map((raw) => `raw-${raw}` as const)]);
  const soil = new Set<Soil>(touchesFood(component, step) ? keptFree(session, component) : []);
  if (step.readyToEat === true) for (const raw of RAW_KINDS) soil.add(`raw-${raw}`);
  for (const own of leaves(component, step)) soil.delete(own);
  return soil;
}

const avoidedInBoxes = (session: Session): ReadonlySet<AllergenMark> =>
  new Set((session.eaters ?? []).filter(({ boxes }) => boxes > 0).flatMap((eater) => [...avoidedBy(eater)]));

/** A step whose `touches` is an empty list handles no food: it leaves and avoids no soil. */
export function touchesFood(component: Component, step: Step): boolean {
  return touched(component, step).length > 0;
}

/**
 * Allergens that any step of a component may carry on, whatever of it the step touches: somebody avoids them, nobody keeps the
 * component free of them, and it or another has them. Its own count too: who drains wheat and then chops the parsley that goes
 * with it carries flour to the board.
 */
export function mayCarry(
  session: Session,
  component: Component,
  components: readonly Component[],
): ReadonlySet<AllergenMark> {
  if (component.id === BOXES) return new Set();
  const free = keptFree(session, component);
  const avoided = new Set((session.eaters ?? []).flatMap((eater) => [...avoidedBy(eater)]));
  const foods = [component, ...components.filter(({ id }) => id !== BOXES)];
  return new Set([...avoided].filter((mark) => !free.has(mark) && foods.some((food) => allergensOf(food).has(mark))));
}
