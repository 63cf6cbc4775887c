/** Names of a kitchen's things by their ids. */
import type { Kitchen } from '../kitchen/kitchen.ts';

/** The name of a thing; its id where there is none of that id. */
export function nameOfThing(kitchen: Kitchen, id: string): string {
  const { ovens, hob, pans, trays, boards, bowls, tools, appliances, kettle } = kitchen;
  const racks = ovens.flatMap((oven) =>
    oven.racks.map((rack) => ({ id: rack.id, name: `the ${rack.name} of ${oven.name}` })),
  );
  const things = [
    ...ovens,
    ...racks,
    ...hob.burners,
    ...pans,
    ...trays,
    ...boards,
    ...bowls,
    ...tools,
    ...appliances,
    ...(kettle === undefined ? [] : [kettle]),
  ];
  return things.find((thing) => thing.id === id)?.name ?? `the ${id}`;
}
