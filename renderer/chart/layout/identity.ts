/**
 * How each component is told from the others in every lane: a tone, and a letter that says the same without colour. Work of
 * the kitchen itself (washing, water, heating, boxes, clearing) has a pictogram instead of a letter, and no colour of its own.
 */
import type { Plan, PlannedStep } from '../../../solver/kitchen/plan.ts';

export type Glyph = 'wash' | 'water' | 'preheat' | 'packing' | 'clearing';

export type Owner =
  | {
      readonly kind: 'component';
      readonly id: string;
      readonly name: string;
      readonly letter: string;
      readonly tone: number;
    }
  | { readonly kind: 'work'; readonly id: string; readonly name: string; readonly glyph: Glyph };

/** Tones in the theme, from 1; more components begin again at the first. */
export const TONES = 10;

/** A letter that no other has yet: an initial of the name's words, else a letter in it, else any. */
export function letterFor(name: string, taken: ReadonlySet<string>): string {
  const letters = (text: string): string[] => [...text.toUpperCase()].filter((letter) => /\p{L}/u.test(letter));
  const initials = name.split(/[\s-]+/).flatMap((word) => letters(word).slice(0, 1));
  const wanted = [...initials, ...letters(name), ...'ABCDEFGHIJKLMNOPQRSTUVWXYZ', ...'123456789'];
  return wanted.find((letter) => !taken.has(letter)) ?? '•';
}

/** Every component of a plan with its letter and tone, in the order of the session's dishes. */
export function componentOwners(plan: Plan): ReadonlyMap<string, Owner> {
  const taken = new Set<string>();
  const owners = new Map<string, Owner>();
  const order = plan.session.dishes.map((dish) => dish.component);
  for (const id of [...order, ...plan.components.map((component) => component.id)]) {
    const component = plan.components.find((candidate) => candidate.id === id);
    if (component === undefined || owners.has(id)) continue;
    const letter = letterFor(component.name, taken);
    taken.add(letter);
    owners.set(id, { kind: 'component', id, name: component.name, letter, tone: (owners.size % TONES) + 1 });
  }
  return owners;
}

const WORK: Readonly<Record<Exclude<PlannedStep['kind'], 'step'>, { readonly glyph: Glyph; readonly name: string }>> = {
  wash: { glyph: 'wash', name: 'washing' },
  water: { glyph: 'water', name: 'hot water' },
  preheat: { glyph: 'preheat', name: 'heating' },
  packing: { glyph: 'packing', name: 'boxes' },
  clearing: { glyph: 'clearing', name: 'clearing' },
};

/** Whose step it is. */
export function ownerOf(step: Pick<PlannedStep, 'kind' | 'component'>, owners: ReadonlyMap<string, Owner>): Owner {
  if (step.kind === 'step') {
    return owners.get(step.component) ?? { kind: 'work', id: step.component, name: step.component, glyph: 'clearing' };
  }
  return { kind: 'work', id: step.component, ...WORK[step.kind] };
}

export const waterOwner = (id: string): Owner => ({ kind: 'work', id, ...WORK.water });
