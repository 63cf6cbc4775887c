/** Whether a session document fits together: people, crews, dishes and pools name what is there, and its start is a time that exists. */
import type { Session } from '../../../solver/kitchen/session.ts';
import { isZone, localExists } from '../../solving/wall-offset.ts';
import { emptySpan, placed, repeatedIds, unknownIds, unknownId, type Finding } from './finding.ts';

/** Findings of a session that its schema accepted; empty: it fits together. */
export function sessionFindings(session: Session): readonly Finding[] {
  const people = session.people.map(({ id }) => id);
  const dishes = session.dishes.map(({ component }) => component);
  return [
    ...startFindings(session),
    ...repeatedIds(placed(session.people, 'people')),
    ...repeatedIds(placed(session.crews ?? [], 'crews')),
    ...repeatedIds(placed(session.pools ?? [], 'pools')),
    ...repeatedIds(placed(session.eaters ?? [], 'eaters')),
    ...repeatedDishes(dishes),
    ...session.people.flatMap((person, index) =>
      (person.there ?? []).flatMap((span, at) => emptySpan(span, ['people', index, 'there', at])),
    ),
    ...(session.crews ?? []).flatMap((crew, index) =>
      unknownIds(crew.people, people, 'a person of this session', ['crews', index, 'people']),
    ),
    ...(session.eaters ?? []).flatMap((eater, index) =>
      unknownIds(eater.eats, dishes, 'a dish of this session', ['eaters', index, 'eats']),
    ),
    ...unknownIds(session.packing?.without, dishes, 'a dish of this session', ['packing', 'without']),
    ...unknownIds(session.table?.dishes, dishes, 'a dish of this session', ['table', 'dishes']),
    ...(session.absences ?? []).flatMap((absence, index) => emptySpan(absence, ['absences', index])),
    ...(session.pins ?? []).flatMap((pin, index) =>
      unknownId(pin.person, people, 'a person of this session', ['pins', index, 'person']),
    ),
    ...(session.pools ?? []).flatMap((pool, index): Finding[] =>
      pool.leastMl <= pool.waterMl
        ? []
        : [
            {
              path: `pools[${index}].leastMl`,
              found: `${pool.leastMl} mL that must stay, of ${pool.waterMl} mL`,
              wanted: 'no more than the water in it',
              mend: 'use more water, or let less stay',
            },
          ],
    ),
  ];
}

function startFindings({ start }: Session): readonly Finding[] {
  if (!isZone(start.zone))
    return [
      {
        path: 'start.zone',
        found: JSON.stringify(start.zone),
        wanted: 'a time zone of the IANA database such as "Europe/Lisbon"',
        mend: 'correct the name of the zone',
      },
    ];
  if (localExists(start)) return [];
  return [
    {
      path: 'start.local',
      found: JSON.stringify(start.local),
      wanted: `a date and time that the clocks of ${start.zone} show`,
      mend: 'correct the day, or choose a time outside the hour that is skipped',
    },
  ];
}

function repeatedDishes(dishes: readonly string[]): readonly Finding[] {
  return dishes.flatMap((dish, index): Finding[] =>
    dishes.indexOf(dish) === index
      ? []
      : [
          {
            path: `dishes[${index}].component`,
            found: `${JSON.stringify(dish)} a second time`,
            wanted: 'each component in one dish',
            mend: 'add its portions to the first',
          },
        ],
  );
}
