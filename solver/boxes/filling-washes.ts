/** How often hands and spoon are washed while boxes are filled, by the session's documents alone. */
import type { Component } from '../kitchen/component.ts';
import type { Session } from '../kitchen/session.ts';
import { boxGroups } from './box-groups.ts';
import { fillingOrder } from './filling-order.ts';

/** Minutes of one such wash: 20 s with soap for the hands, and the spoon. Common practice, rounded up. */
export const WASH_BETWEEN_MIN = 1;

/**
 * Washes between the boxes of one eater and of the next, in the order of filling that needs the fewest.
 * @param components at least those of the session's dishes
 */
export const fillingWashes = (session: Session, components: readonly Component[]): number =>
  fillingOrder(boxGroups(session, components)).filter(({ washBefore }) => washBefore).length;
