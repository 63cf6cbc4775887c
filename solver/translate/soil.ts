/**
 * Soil of steps, of holds and of the things that they use, as the lists of marks that uses of a problem carry. Lists alike are one, so
 * that the problem's builder looks at each once.
 */
import type { Use } from '../engine/problem.ts';
import { avoids, leaves, mayCarry, touchesFood } from '../food/soil.ts';
import type { Component } from '../kitchen/component.ts';
import type { StepInstance } from '../kitchen/expand.ts';
import { onceFor, onceForBoth, onceOn } from '../kitchen/once.ts';
import type { Session } from '../kitchen/session.ts';
import type { Step } from '../kitchen/step.ts';
import { BOXES } from '../kitchen/session-components.ts';
import type { AllergenMark, Soil } from '../kitchen/values.ts';
import type { HandSoil } from './hands.ts';
import type { Met, Translation } from './legend.ts';
import { SOILED, VESSELS } from './places.ts';

/** By session: one list for all that are alike. */
const lists = onceFor((_: Session) => new Map<string, readonly string[]>());

function listed(session: Session, marks: Iterable<string>): readonly string[] {
  const list = [...new Set(marks)];
  const name = list.join('\n');
  const known = lists(session).get(name);
  if (known === undefined) lists(session).set(name, list);
  return known ?? list;
}

type Documents = Pick<Translation, 'session' | 'components' | 'met'>;

const soils = onceForBoth((session: Session, components: readonly Component[]) =>
  onceFor((instance: StepInstance) => soilOfStep({ session, components }, instance)),
);

/** Soil of a step, as lists; empty for a step that touches no food. */
export const soilOf = (t: Translation, instance: StepInstance): HandSoil =>
  t.met === undefined ? soils(t.session, t.components)(instance) : soilOfStep(t, instance);

function soilOfStep(t: Documents, { component, step }: StepInstance): HandSoil {
  if (!touchesFood(component, step) && step.readyToEat !== true) return { leaves: [], avoids: [] };
  return { leaves: left(t, component, [step]), avoids: avoidedIn(t, component, [step]) };
}

/**
 * What steps of a component leave on the things they use. What it may have picked up elsewhere counts as carried on by every step
 * that touches its food: a margin on the side of care, which spares the planner following each crumb. What it has met counts so too, in the
 * steps before that as well.
 */
export function left(
  { session, components, met }: Documents,
  component: Component,
  steps: readonly Step[],
): readonly string[] {
  const own = steps.flatMap((step): readonly Soil[] => [...leaves(component, step)]);
  const carried = steps.some((step) => touchesFood(component, step))
    ? [...mayCarry(session, component, components), ...metBy(met, component.id)]
    : [];
  return listed(session, [...own, ...carried]);
}

/** What steps of a component must not meet on a thing that all of them use. From what it has met already nothing keeps it any more. */
export function avoidedIn(
  { session, met }: Documents,
  component: Component,
  steps: readonly Step[],
): readonly string[] {
  const carried: ReadonlySet<string> = new Set(component.id === BOXES ? [] : metBy(met, component.id));
  return listed(
    session,
    steps.flatMap((step) => [...avoids(session, component, step)].filter((mark) => !carried.has(mark))),
  );
}

/** What a dish has met; the boxes: what any has, for hands fill them with it. */
const metBy = (met: Met | undefined, id: string): readonly AllergenMark[] =>
  met === undefined ? [] : id === BOXES ? [...met.values()].flatMap((marks) => [...marks]) : [...(met.get(id) ?? [])];

/** Marks that a thing gets from and must not give to the food of a component. */
export function thingSoil(
  { session }: Translation,
  kind: string,
  owner: string,
  soil: HandSoil,
): Pick<Use, 'leaves' | 'avoids'> {
  if (!SOILED.has(kind)) return {};
  return VESSELS.has(kind) ? vesselSoils(session)(soil, owner) : soil;
}

const vesselSoils = onceFor((session: Session) =>
  onceOn((soil: HandSoil, owner: string): HandSoil => {
    const others = [...session.dishes.map((dish) => dish.component), ...(session.pools ?? []).map((pool) => pool.id)];
    return {
      leaves: listed(session, [`used:${owner}`, ...soil.leaves]),
      avoids: listed(session, [...others.filter((id) => id !== owner).map((id) => `used:${id}`), ...soil.avoids]),
    };
  }),
);
