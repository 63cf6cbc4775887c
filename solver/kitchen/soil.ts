/** Soil: what a step leaves on shared things, and what it must not meet there. */
import type { Component } from './component.ts';
import type { Session } from './session.ts';
import type { Step } from './step.ts';
import { ALLERGENS, RAW_KINDS, type Allergen, type Soil } from './values.ts';

/** Allergens among a component's ingredients. */
export function allergensOf(component: Component): ReadonlySet<Allergen> {
  return new Set(component.ingredients.flatMap((ingredient) => ingredient.allergens));
}

const eats = (eater: NonNullable<Session['eaters']>[number], id: string): boolean =>
  eater.boxes > 0 && (eater.eats === undefined || eater.eats.includes(id));

/** Allergens that a component must stay free of: those avoided by some eater of it and not among its own ingredients. */
export function keptFree(session: Session, component: Component): ReadonlySet<Allergen> {
  const own = allergensOf(component);
  const avoided = (session.eaters ?? []).filter((eater) => eats(eater, component.id)).flatMap((eater) => eater.avoids);
  return new Set(avoided.filter((allergen) => !own.has(allergen)));
}

/** Eaters whose boxes would hold what they avoid: `[eater name, allergen]`. */
export function servedWrongly(session: Session, component: Component): readonly (readonly [string, Allergen])[] {
  const own = allergensOf(component);
  return (session.eaters ?? [])
    .filter((eater) => eats(eater, component.id))
    .flatMap((eater) =>
      eater.avoids.filter((allergen) => own.has(allergen)).map((allergen) => [eater.name, allergen] as const),
    );
}

const touched = (component: Component, step: Step) =>
  component.ingredients.filter((ingredient) => step.touches === undefined || step.touches.includes(ingredient.id));

/** What a step leaves on the hands, boards and water it uses. */
export function leaves(component: Component, step: Step): ReadonlySet<Soil> {
  const soil = new Set<Soil>();
  for (const ingredient of touched(component, step)) {
    for (const allergen of ingredient.allergens) soil.add(allergen);
    if (ingredient.raw !== undefined && step.cooked !== true) soil.add(`raw-${ingredient.raw}`);
  }
  return soil;
}

/**
 * What a step must not meet on the hands, boards and water it uses: the allergens its component is kept free of; for food
 * eaten as it is, raw meat, poultry, fish and egg too (its own excepted).
 */
export function avoids(session: Session, component: Component, step: Step): ReadonlySet<Soil> {
  const soil = new Set<Soil>(touchesFood(component, step) ? keptFree(session, component) : []);
  if (step.readyToEat === true) for (const raw of RAW_KINDS) soil.add(`raw-${raw}`);
  for (const own of leaves(component, step)) soil.delete(own);
  return soil;
}

/** A step whose `touches` is an empty list handles no food: it leaves and avoids no soil. */
export function touchesFood(component: Component, step: Step): boolean {
  return touched(component, step).length > 0;
}

export const ALLERGEN_SET: ReadonlySet<string> = new Set(ALLERGENS);
