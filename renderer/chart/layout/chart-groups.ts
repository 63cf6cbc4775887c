/** All lanes of a plan, grouped as the kitchen is. */
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { handsGroup } from './hands-group.ts';
import { applianceGroup, hobGroup, ovenGroups } from './heat-groups.ts';
import { componentOwners } from './identity.ts';
import type { Bar, Group } from './lane-model.ts';
import { keepingGroup, shelfGroup, thingGroups } from './shelf-groups.ts';
import { waterGroup } from './water-group.ts';

/** @param everything boards, trays, pans, bowls, tools and sink too, and burners that nothing stands on */
export function chartGroups(plan: Plan, everything: boolean): readonly Group[] {
  const owners = componentOwners(plan);
  const groups = [
    handsGroup(plan, owners),
    ...ovenGroups(plan, owners, everything),
    hobGroup(plan, owners, everything),
    applianceGroup(plan, owners, everything),
    waterGroup(plan, owners),
    shelfGroup(plan, owners),
    keepingGroup(plan, owners),
    ...(everything ? thingGroups(plan, owners) : []),
  ];
  return groups.filter((group) => group.lanes.length > 0);
}

export function allBars(groups: readonly Group[]): readonly Bar[] {
  return groups.flatMap((group) => group.lanes.flatMap((lane) => lane.bars));
}
