/** What brings the cold water of a step to the boil, and how long that takes. */
import type { OffPart } from '../kitchen/expand.ts';
import { boilMinutesInKettle, boilMinutesOnBurner } from '../water/boil.ts';
import type { PieceReading, Reading, Use } from './reading.ts';

const covers = (use: Use, index: number): boolean =>
  use.need.during === undefined || (use.need.during.from <= index && index <= use.need.during.to);

/** Uses of a kind that a part of a step has: the step's own, or those of the holds around it. */
export function usesOfPart(
  piece: PieceReading,
  index: number,
  use: 'kettle' | 'burner' | 'pan',
  reading: Reading,
): readonly Use[] {
  const own = piece.uses.filter((each) => each.need.use === use && covers(each, index));
  if (own.length > 0) return own;
  const { start, end } = piece.spans?.[index] ?? piece.planned;
  const { component, batch, batched } = piece.instance;
  return reading.holds.flatMap(({ use: held }) =>
    held !== null &&
    held.need.use === use &&
    held.component.id === component.id &&
    !(held.batched && batched && held.batch !== batch) &&
    held.place.from <= start &&
    held.place.until >= end
      ? [held]
      : [],
  );
}

/** Minutes that a hands-off part spends bringing its water to the boil, on the kettle or burner chosen for it; 0 without water. */
export function boilMinutes(piece: PieceReading, index: number, part: OffPart, reading: Reading): number {
  if (part.boilMl === 0) return 0;
  const { kitchen } = reading.plan;
  if (usesOfPart(piece, index, 'kettle', reading).length > 0 && kitchen.kettle !== undefined)
    return boilMinutesInKettle(kitchen, kitchen.kettle, part.boilMl);
  const place = usesOfPart(piece, index, 'burner', reading)[0]?.place;
  const burner = kitchen.hob.burners.find(({ id }) => id === place?.id);
  if (burner === undefined) return 0;
  const held = usesOfPart(piece, index, 'pan', reading)[0];
  const pan = kitchen.pans.find(({ id }) => id === held?.place.id);
  const lidded = held?.need.use === 'pan' && held.need.lid === true && pan?.lid === true;
  return boilMinutesOnBurner(kitchen, burner, pan, part.boilMl, lidded);
}
