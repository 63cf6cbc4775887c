/** One lane per pool: its level, when it boils, what boils in it and steams over it, what was ladled out and where that went. */
import type { Plan, PoolCourse } from '../../../solver/kitchen/plan.ts';
import { ownerOf, type Owner } from './identity.ts';
import { poolName, volumeWords } from './kitchen-names.ts';
import { inRows, type Draw, type Group, type Lane } from './lane-model.ts';
import { placeBars } from './place-bars.ts';
import { clockAt } from './wall-clock.ts';

function draws(plan: Plan, owners: ReadonlyMap<string, Owner>, pool: string): readonly Draw[] {
  return plan.steps.flatMap((step) =>
    step.places
      .filter((place) => place.kind === 'pool' && place.id === pool && place.how === 'draw')
      .map((place): Draw => {
        const owner = ownerOf(step, owners);
        return {
          minute: place.from,
          ml: place.amount,
          stepId: step.id,
          owner,
          words: `${volumeWords(place.amount)} ladled out at ${clockAt(plan.start, place.from)} for ${owner.name}`,
        };
      }),
  );
}

function waterLane(plan: Plan, owners: ReadonlyMap<string, Owner>, course: PoolCourse): Lane {
  const pool = plan.session.pools?.find((candidate) => candidate.id === course.pool);
  const used = (how: string) =>
    placeBars(plan, owners, 'pool', (place) => place.id === course.pool && place.how === how);
  const steamed = used('steam');
  const steam = steamed.length === 0 ? { bars: [], rows: 0 } : inRows(steamed);
  const boiled = inRows(used('boil'));
  const fullMl = Math.max(pool?.waterMl ?? 0, 1, ...course.level.map((change) => change.ml));
  return {
    kind: 'water',
    id: `pool/${course.pool}`,
    name: `${poolName(plan, course.pool)}, ${volumeWords(fullMl).replace(' ', '\u00a0')}`,
    course,
    fullMl,
    leastMl: pool?.leastMl ?? 0,
    draws: draws(plan, owners, course.pool),
    steamRows: steam.rows,
    rows: steam.rows + boiled.rows,
    bars: [...steam.bars, ...boiled.bars.map((bar) => ({ ...bar, row: bar.row + steam.rows }))],
  };
}

export function waterGroup(plan: Plan, owners: ReadonlyMap<string, Owner>): Group {
  return {
    id: 'water',
    kind: 'water',
    name: 'Water',
    lanes: plan.pools.map((course) => waterLane(plan, owners, course)),
    hill: null,
  };
}
