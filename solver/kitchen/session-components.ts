/** Work that the session asks for rather than a recipe: filling, cooling and putting away the boxes, and the last clearing. */
import { coolingMinutes } from '../food/cooling-minutes.ts';
import { fillingWashes, WASH_BETWEEN_MIN } from '../boxes/filling-washes.ts';
import type { Component } from './component.ts';
import { packedDishes } from './packed-dishes.ts';
import type { Session } from './session.ts';
import type { After, Step } from './step.ts';
import { durationMinutes } from './values.ts';
import type * as v from 'valibot';

type Order = v.InferOutput<typeof After>;

/** Component ids of the session's own work. */
export const BOXES = 'boxes';
export const CLEARING = 'clearing';

/** The step after which a component can be boxed: the one it names, or its last that puts nothing away. */
export function readyStep(component: Component): string {
  return (
    component.ready ?? component.steps.filter((step) => step.putsAway !== true).at(-1)?.id ?? component.steps.at(-1)!.id
  );
}

const shell = (
  id: string,
  name: string,
  portions: number,
  steps: readonly Step[],
  ingredients: Component['ingredients'] = [],
): Component => ({
  kind: 'component',
  version: 1,
  id,
  name,
  makes: { portions: Math.max(1, portions), massG: 0 },
  ingredients,
  steps: [...steps],
  packed: 'cooled',
  keeps: { fridge: 'P0D' },
});

/** What is in the boxes, as far as hands that fill them carry it on; without amounts, for work is told by portions. */
function inBoxes(session: Session, components: readonly Component[]): Component['ingredients'] {
  const packed = new Set(packedDishes(session));
  return components
    .filter(({ id }) => packed.has(id))
    .flatMap(({ id, ingredients }) =>
      ingredients.map(({ id: ingredient, name, allergens, cereals, food, becomes }) => ({
        id: `${id}-${ingredient}`,
        name,
        allergens,
        ...(cereals === undefined ? {} : { cereals }),
        ...(food === undefined ? {} : { food }),
        ...(becomes === undefined ? {} : { becomes }),
      })),
    );
}

/** The components that go into the boxes, of those that there are. */
export function boxedComponents(session: Session, components: readonly Component[]): readonly Component[] {
  const ids = packedDishes(session);
  return components.filter(({ id }) => ids.includes(id));
}

/** A duration with whole minutes on top. */
const longer = (duration: string, minutes: number): string =>
  minutes === 0 ? duration : `PT${Math.round(durationMinutes(duration) * 60) + minutes * 60}S`;

/**
 * Packing as a component `boxes` with steps `pack`, `cool`, `put-away` (the last two where asked for); null without packing.
 */
export function packingComponent(session: Session, components: readonly Component[]): Component | null {
  const packing = session.packing;
  if (packing === undefined || packing.boxes === 0) return null;
  const after: Order[] = packedDishes(session).flatMap((id) => {
    const component = components.find((candidate) => candidate.id === id);
    return component === undefined ? [] : [{ step: `${id}/${readyStep(component)}` }];
  });
  // Where no order of filling keeps what some boxes hold from those who avoid it, hands and spoon are washed in between.
  const washing = WASH_BETWEEN_MIN * fillingWashes(session, components);
  const fixed = longer(packing.work.fixed ?? 'PT0M', washing);
  const steps: Step[] = [
    {
      id: 'pack',
      name: packing.name,
      segments: [{ hands: 'on', work: { ...packing.work, ...(washing === 0 ? {} : { fixed }) } }],
      needs: [],
      after,
      readyToEat: true,
      ...(packing.interruptible === true ? { interruptible: {} } : {}),
    },
  ];
  if (packing.cooling !== undefined) {
    const minutes = coolingMinutes(packing.cooling.cools, boxedComponents(session, components));
    steps.push({
      id: 'cool',
      name: 'cool the boxes',
      segments: [
        {
          hands: 'off',
          shortest: longer(packing.cooling.shortest, minutes),
          longest: longer(packing.cooling.longest, minutes),
        },
      ],
      needs: packing.cooling.places === 0 ? [] : [{ use: 'place', place: 'cooling', places: packing.cooling.places }],
      after: [{ step: 'pack', longest: 'PT0M' }],
      touches: [],
    });
  }
  if (packing.putAway !== undefined) {
    steps.push({
      id: 'put-away',
      name: 'boxes into the fridge',
      segments: [{ hands: 'on', work: packing.putAway }],
      needs: [],
      after: [{ step: steps.at(-1)!.id, longest: 'PT0M' }],
      touches: [],
      putsAway: true,
    });
  }
  return shell(BOXES, packing.name, packing.boxes, steps, inBoxes(session, components));
}

/** The last clearing as a component `clearing` with one step `clear` after every step that puts nothing away; null where none is asked for. */
export function clearingComponent(session: Session, others: readonly Component[]): Component | null {
  if (session.clearing === undefined) return null;
  const after: Order[] = others.flatMap((component) =>
    component.steps
      .filter(
        (step) =>
          step.putsAway !== true &&
          [step, ...(step.alternatives ?? [])].some((way) => way.segments.some((segment) => segment.hands === 'on')),
      )
      .map((step) => ({ step: `${component.id}/${step.id}` })),
  );
  return shell(CLEARING, 'last clearing', 1, [
    {
      id: 'clear',
      name: 'clear the kitchen',
      segments: [{ hands: 'on', work: session.clearing.work }],
      needs: [{ use: 'sink' }],
      after,
    },
  ]);
}
