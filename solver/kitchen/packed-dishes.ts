/** Which dishes of a session go into its boxes. */
import type { Session } from './session.ts';

/** Ids of the dishes that go into the boxes. */
export function packedDishes(session: Session): readonly string[] {
  const without = new Set([...(session.packing?.without ?? []), ...(session.table?.dishes ?? [])]);
  return session.dishes.map((dish) => dish.component).filter((id) => !without.has(id));
}
