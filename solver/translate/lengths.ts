/** Shortest and longest lengths that a stretch of a step can have in this kitchen, whatever is chosen. */
import { recoveryOfNeed } from '../heat/oven-load.ts';
import { loadOfPart, type Way } from '../kitchen/expand.ts';
import { panFits, type Kitchen } from '../kitchen/kitchen.ts';
import { boilMinutesInKettle, boilMinutesOnBurner } from '../water/boil.ts';

export interface Length {
  readonly shortest: number;
  readonly longest: number;
}

/** By kitchen, which does not change, and mL: every burner with every pan is asked, and many steps boil the same. */
const boils = new WeakMap<Kitchen, Map<number, Length>>();

/** Minutes to the boil on the quickest and on the slowest heat of the kitchen. */
function boilLength(kitchen: Kitchen, ml: number): Length {
  let known = boils.get(kitchen);
  if (known === undefined) boils.set(kitchen, (known = new Map<number, Length>()));
  const before = known.get(ml);
  if (before !== undefined) return before;
  const length = reckonBoil(kitchen, ml);
  known.set(ml, length);
  return length;
}

function reckonBoil(kitchen: Kitchen, ml: number): Length {
  const minutes = [
    ...kitchen.hob.burners.flatMap((burner) =>
      kitchen.pans
        .filter((pan) => panFits(burner, pan))
        .flatMap((pan) => [true, false].map((lidded) => boilMinutesOnBurner(kitchen, burner, pan, ml, lidded))),
    ),
    ...(kitchen.kettle === undefined ? [] : [boilMinutesInKettle(kitchen, kitchen.kettle, ml)]),
  ].filter(Number.isFinite);
  return minutes.length === 0
    ? { shortest: 0, longest: 0 }
    : { shortest: Math.min(...minutes), longest: Math.max(...minutes) };
}

/** Minutes in which the quickest and the slowest oven that can serve a part make up for its cold load. */
function recoveryLength(kitchen: Kitchen, way: Way, index: number): Length {
  const need = loadOfPart(way, index);
  if (need === null) return { shortest: 0, longest: 0 };
  const minutes = kitchen.ovens
    .map((oven) => recoveryOfNeed(oven, kitchen.roomC, need))
    .filter((each) => Number.isFinite(each));
  return minutes.length === 0
    ? { shortest: 0, longest: 0 }
    : { shortest: Math.min(...minutes), longest: Math.max(...minutes) };
}

function partLength(kitchen: Kitchen, way: Way, index: number): Length {
  const part = way.parts[index]!;
  if (part.hands === 'on') return { shortest: part.minutes, longest: part.minutes };
  if (part.recovers) {
    const recovery = recoveryLength(kitchen, way, index);
    return { shortest: part.shortest + recovery.shortest, longest: part.longest + recovery.longest };
  }
  if (part.boilMl === 0) return part;
  const boil = boilLength(kitchen, part.boilMl);
  return { shortest: part.shortest + boil.shortest, longest: part.longest + boil.longest };
}

/**
 * Length of the parts `from` to `to` (both included) in any of the ways.
 *
 * @param most longer is not possible, minutes: the session's length
 */
export function stretchLength(kitchen: Kitchen, ways: readonly Way[], from: number, to: number, most: number): Length {
  const each = ways.map((way) =>
    way.parts
      .slice(from, to + 1)
      .map((_, index) => partLength(kitchen, way, from + index))
      .reduce((sum, part) => ({ shortest: sum.shortest + part.shortest, longest: sum.longest + part.longest })),
  );
  return {
    shortest: Math.min(most, ...each.map((length) => length.shortest)),
    longest: Math.min(most, Math.max(...each.map((length) => length.longest))),
  };
}
