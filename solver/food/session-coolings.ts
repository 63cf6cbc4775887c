/** Every cooling that a session asks for, with its minutes, what shallower layers would gain, and the working. */
import { gainOfSplitting } from '../heat/food-cooling-stages.ts';
import type { Component } from '../kitchen/component.ts';
import type { Cools } from '../kitchen/cools.ts';
import { boxedComponents } from '../kitchen/session-components.ts';
import type { Session } from '../kitchen/session.ts';
import type { Working } from '../working.ts';
import { cooledComposition, coolingOf, withoutFood, type CooledFood } from './cooling-minutes.ts';
import { coolingWorking } from './cooling-working.ts';

export interface SessionCooling {
  /** Of the dish, or of the work of packing. */
  readonly what: string;
  /** Name of the step or of its other way; null: the boxes. */
  readonly step: string | null;
  readonly cools: Cools;
  /** As planned: guarded and rounded up. */
  readonly minutes: number;
  /** Minutes in layers half and a third as deep; null for round pieces, which do not get smaller by it. */
  readonly shallower: { readonly half: number; readonly third: number } | null;
  readonly working: Working;
}

/**
 * The coolings of a session's dishes and of its boxes; those whose minutes cannot be reckoned are left to `cooling-troubles.ts`.
 * @param components at least those of the session's dishes
 */
export function sessionCoolings(session: Session, components: readonly Component[]): readonly SessionCooling[] {
  const dishes = session.dishes.flatMap(({ component: id }) => components.find((each) => each.id === id) ?? []);
  const ofSteps = dishes.flatMap((component) =>
    component.steps.flatMap((step) =>
      [step, ...(step.alternatives ?? [])].flatMap((way) =>
        way.segments.flatMap((segment) =>
          segment.hands === 'on' || segment.cools === undefined
            ? []
            : told(component.name, way.name, segment.cools, [component]),
        ),
      ),
    ),
  );
  const cools = session.packing?.cooling?.cools;
  if (cools === undefined) return ofSteps;
  return [...ofSteps, ...told(session.packing!.name, null, cools, boxedComponents(session, dishes))];
}

function told(what: string, step: string | null, cools: Cools, food: CooledFood): readonly SessionCooling[] {
  const course = coolingOf(cools, food);
  const composition = cooledComposition(cools, food);
  if (course?.kind !== 'cools' || composition === null) return [];
  const cooling = withoutFood(cools);
  const inEach = (vessels: number): number => gainOfSplitting(cooling, vessels, composition)?.inEach ?? course.minutes;
  const shallower = cools.shape === 'sphere' ? null : { half: inEach(2), third: inEach(3) };
  return [{ what, step, cools, minutes: course.minutes, shallower, working: coolingWorking(cooling, composition)! }];
}
