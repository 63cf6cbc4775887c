/** Whether a place is what a need asks for. */
import type { Kitchen } from '../kitchen/kitchen.ts';
import type { PlaceKind, PlannedPlace } from '../kitchen/plan.ts';
import type { Session } from '../kitchen/session.ts';
import type { Need } from '../kitchen/step.ts';

/** The kind of place that serves a need. */
export function placeKind(need: Need): PlaceKind {
  switch (need.use) {
    case 'oven':
      return 'rack';
    case 'place':
      return need.place;
    default:
      return need.use;
  }
}

/** How much of a place a need takes: % of a rack, mL, tiers, places, or 1. */
export function amountOf(need: Need): number {
  switch (need.use) {
    case 'oven':
      return need.share;
    case 'place':
      return need.places;
    case 'pool':
      return need.how === 'steam' ? (need.tiers ?? 1) : (need.ml ?? 0);
    default:
      return 1;
  }
}

const byId = <T extends { readonly id: string }>(things: readonly T[], id: string): T | undefined =>
  things.find((thing) => thing.id === id);

/**
 * What is wrong with a place for a need, as endings of a sentence that begins with the step; empty: it suits. Times are not looked at.
 */
export function mismatches(kitchen: Kitchen, session: Session, need: Need, place: PlannedPlace): readonly string[] {
  const wrong: string[] = [];
  if (place.kind !== placeKind(need)) return [`needs a ${placeKind(need)} and has ${place.id}`];
  const missing = [`names ${place.id}, which is no ${place.kind} of this kitchen`];
  if (place.amount !== amountOf(need)) wrong.push(`takes ${place.amount} of ${place.id} and needs ${amountOf(need)}`);
  switch (need.use) {
    case 'oven': {
      const oven = byId(kitchen.ovens, place.oven ?? '');
      if (oven === undefined || byId(oven.racks, place.id) === undefined) return missing;
      if (!oven.functions.includes(need.function)) wrong.push(`needs ${need.function} heat, which ${oven.name} lacks`);
      if ((place.function ?? need.function) !== need.function)
        wrong.push(`needs ${need.function} heat and is planned with ${place.function}`);
      if ((place.afterheat ?? false) !== (need.afterheat ?? false))
        wrong.push(
          need.afterheat === true ? 'is for the afterheat and is planned in a heated oven' : 'is not for the afterheat',
        );
      return wrong;
    }
    case 'burner':
      return byId(kitchen.hob.burners, place.id) === undefined ? missing : wrong;
    case 'pan': {
      const pan = byId(kitchen.pans, place.id);
      if (pan === undefined) return missing;
      if (pan.volumeMl < need.leastMl)
        wrong.push(`needs a pan of ${need.leastMl} mL, and ${pan.name} holds ${pan.volumeMl} mL`);
      if (need.lid === true && !pan.lid) wrong.push(`needs a lid, and ${pan.name} has none`);
      return wrong;
    }
    case 'bowl': {
      const bowl = byId(kitchen.bowls, place.id);
      if (bowl === undefined) return missing;
      if (bowl.volumeMl < need.leastMl)
        wrong.push(`needs a bowl of ${need.leastMl} mL, and ${bowl.name} holds ${bowl.volumeMl} mL`);
      return wrong;
    }
    case 'tray':
      return byId(kitchen.trays, place.id) === undefined ? missing : wrong;
    case 'board':
      return byId(kitchen.boards, place.id) === undefined ? missing : wrong;
    case 'tool': {
      const tool = byId(kitchen.tools, place.id);
      if (tool === undefined) return missing;
      if (tool.kind !== need.kind) wrong.push(`needs a ${need.kind}, and ${tool.name} is a ${tool.kind}`);
      return wrong;
    }
    case 'kettle':
      return kitchen.kettle?.id === place.id ? wrong : missing;
    case 'pool':
      if (byId(session.pools ?? [], place.id) === undefined)
        return [`names ${place.id}, which is no pool of the session`];
      if (place.how !== need.how) wrong.push(`is to ${need.how} in ${place.id} and is planned to ${place.how}`);
      return wrong;
    case 'appliance': {
      const appliance = byId(kitchen.appliances, place.id);
      if (appliance === undefined) return missing;
      if (appliance.does !== need.does) wrong.push(`needs something to ${need.does}, and ${appliance.name} does not`);
      return wrong;
    }
    case 'sink':
    case 'place':
      return wrong;
  }
}
