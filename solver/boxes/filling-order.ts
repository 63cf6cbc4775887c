/**
 * In which order boxes are filled, so that what some hold comes last and does not reach those who avoid it; and where no order
 * does, between which of them hands and spoon are washed.
 */
import type { AllergenMark } from '../kitchen/values.ts';

/** The boxes of one eater. */
export interface Filling {
  readonly avoids: ReadonlySet<AllergenMark>;
  readonly contains: ReadonlySet<AllergenMark>;
}

export interface Turn<T> {
  readonly boxes: T;
  /** Hands and spoon are washed before these. */
  readonly washBefore: boolean;
  /** What boxes filled since the last wash hold, which these may meet. */
  readonly met: ReadonlySet<AllergenMark>;
}

/** Up to so many eaters every order is tried. */
const TRIED = 7;

/** @returns the order with the fewest washes, then with the least met, ties in the order given; washed between wherever something avoided would come along */
export function fillingOrder<T extends Filling>(all: readonly T[]): readonly Turn<T>[] {
  // Who avoids more comes first, whose boxes hold more comes last: of many eaters a good order, if not the best.
  const start = [...all].sort((a, b) => b.avoids.size - a.avoids.size || a.contains.size - b.contains.size);
  let best: readonly Turn<T>[] = turnsOf(start);
  let least = cost(best);
  if (all.length > TRIED || least === 0) return best;
  for (const order of permutations(start)) {
    const turns = turnsOf(order);
    const own = cost(turns);
    if (own >= least) continue;
    [best, least] = [turns, own];
    if (least === 0) break;
  }
  return best;
}

const cost = (turns: readonly Turn<Filling>[]): number =>
  turns.reduce(
    (sum, { boxes, washBefore, met }) =>
      sum + (washBefore ? 1000 : 0) + [...met].filter((mark) => !boxes.contains.has(mark)).length,
    0,
  );

function turnsOf<T extends Filling>(order: readonly T[]): readonly Turn<T>[] {
  let onHands = new Set<AllergenMark>();
  return order.map((boxes): Turn<T> => {
    const washBefore = [...boxes.avoids].some((mark) => onHands.has(mark));
    const met = washBefore ? new Set<AllergenMark>() : onHands;
    onHands = new Set([...met, ...boxes.contains]);
    return { boxes, washBefore, met };
  });
}

/** Every order, the one given first. */
function* permutations<T>(items: readonly T[]): Generator<readonly T[]> {
  if (items.length <= 1) yield items;
  else
    for (const [index, first] of items.entries())
      for (const rest of permutations(items.filter((_, other) => other !== index))) yield [first, ...rest];
}
