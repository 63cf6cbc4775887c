/** Allergens that dishes have really met by now, though somebody who eats them must not have them. */
import { readPlan } from '../../checker/reading.ts';
import { soilCourse } from '../../checker/soil-course.ts';
import type { WallOffset } from '../../checker/clock.ts';
import { avoidedBy, eats, keptFree } from '../../food/soil.ts';
import { BOXES } from '../../kitchen/session-components.ts';
import type { Lived, Plan } from '../../kitchen/plan.ts';
import type { AllergenMark } from '../../kitchen/values.ts';
import type { Met } from '../../translate/legend.ts';
import { isPast } from './past-faults.ts';

/**
 * @param plan past and rest together
 * @param lived what was told, and by when
 * @returns by component id; empty: none has met what it must stay free of
 */
export function metByNow(plan: Plan, lived: Lived, wallOffset: WallOffset | undefined): Met {
  const reading = readPlan(plan, wallOffset);
  const course = soilCourse(reading);
  const isOver = isPast(plan, lived);
  const met = new Map<string, ReadonlySet<AllergenMark>>();
  for (const { component } of reading.dishes) {
    if (component.id === BOXES) continue;
    const free = keptFree(plan.session, component);
    const marks = (course.get(component.id) ?? []).filter(
      ({ mark, minute, steps }) => free.has(mark) && isOver({ minute, steps, rule: 8 }),
    );
    if (marks.length > 0) met.set(component.id, new Set(marks.map(({ mark }) => mark)));
  }
  return met;
}

/** Who must not have which dish any more, as sentences. */
export function metCautions({ session, components }: Plan, met: Met): readonly string[] {
  return components.flatMap(({ id, name }) =>
    (session.eaters ?? []).flatMap((eater) => {
      const marks = [...(met.get(id) ?? [])].filter((mark) => avoidedBy(eater).has(mark));
      return marks.length === 0 || !eats(session, eater, id)
        ? []
        : [
            `${name} may have met ${marks.join(', ')}: leave it out of what ${eater.name} is given, boxes too, and keep it from other food.`,
          ];
    }),
  );
}
