/** Names of people and things of a plan, for labels and sentences. */
import type { PlaceKind, Plan, PlannedPlace } from '../../../solver/kitchen/plan.ts';

export function personName(plan: Plan, id: string): string {
  return plan.session.people.find((person) => person.id === id)?.name ?? id;
}

export function poolName(plan: Plan, id: string): string {
  return plan.session.pools?.find((pool) => pool.id === id)?.name ?? id;
}

export function componentName(plan: Plan, id: string): string {
  return plan.components.find((component) => component.id === id)?.name ?? id;
}

/** The name of the thing at a place; shelves have none of their own. */
export function thingName(plan: Plan, kind: PlaceKind, id: string): string {
  const { kitchen } = plan;
  const named = (things: readonly { readonly id: string; readonly name: string }[]): string =>
    things.find((thing) => thing.id === id)?.name ?? id;
  switch (kind) {
    case 'rack':
      return named(kitchen.ovens.flatMap((oven) => oven.racks));
    case 'burner':
      return named(kitchen.hob.burners);
    case 'pan':
      return named(kitchen.pans);
    case 'tray':
      return named(kitchen.trays);
    case 'board':
      return named(kitchen.boards);
    case 'bowl':
      return named(kitchen.bowls);
    case 'tool':
      return named(kitchen.tools);
    case 'kettle':
      return kitchen.kettle?.name ?? id;
    case 'appliance':
      return named(kitchen.appliances);
    case 'pool':
      return poolName(plan, id);
    case 'sink':
      return 'sink';
    case 'resting':
      return 'resting shelf';
    case 'cooling':
      return 'cooling rack';
    case 'drying':
      return 'drying rack';
  }
}

const litres = (ml: number): string =>
  ml < 1000 ? `${Math.round(ml)} mL` : `${(ml / 1000).toFixed(1).replace(/\.0$/, '')} L`;
export { litres as volumeWords };

/** A temperature window: `190–200°`. */
export function windowWords(place: Pick<PlannedPlace, 'leastC' | 'mostC'>): string {
  const { leastC, mostC } = place;
  if (leastC === undefined || mostC === undefined) return '';
  return leastC === mostC ? `${leastC}°` : `${leastC}–${mostC}°`;
}

/** Where something is, in words: `oven, upper rack, fan at 190–200°, 50 % of it`. */
export function placeWords(plan: Plan, place: PlannedPlace): string {
  const name = thingName(plan, place.kind, place.id);
  switch (place.kind) {
    case 'rack': {
      const oven = plan.kitchen.ovens.find((candidate) => candidate.id === place.oven);
      const heat =
        place.afterheat === true
          ? `in its afterheat, within ${windowWords(place).replace('°', ' °C')}`
          : `${place.function ?? ''} at ${windowWords(place).replace('°', ' °C')}`;
      return `${oven?.name ?? 'oven'}, ${name}, ${heat.trim()}${place.amount < 100 ? `, ${place.amount} % of the rack` : ''}`;
    }
    case 'burner':
      return `burner ${name}`;
    case 'pool':
      switch (place.how) {
        case 'draw':
          return `${litres(place.amount)} out of ${name}`;
        case 'steam':
          return `steamed over ${name}, ${place.amount} ${place.amount === 1 ? 'tier' : 'tiers'}`;
        default:
          return `in ${name}, ${litres(place.amount)} of its net`;
      }
    case 'resting':
    case 'cooling':
    case 'drying':
      return `${name}, ${place.amount} ${place.amount === 1 ? 'place' : 'places'}`;
    default:
      return name;
  }
}
