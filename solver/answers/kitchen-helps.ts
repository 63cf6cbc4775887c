/** Helps that are things: one more of each kind that the kitchen has, like one that is there; and one more pair of hands. */
import type { Kitchen } from '../kitchen/kitchen.ts';
import type { Person, Session } from '../kitchen/session.ts';
import type { SessionInput } from '../translate/session-to-problem.ts';
import type { Help } from './help.ts';
import { crewOf } from './session-requirements.ts';
import { the } from './the.ts';

/** Ending of the ids of things that are not there. */
export const MORE = '-more';

/** One more of every kind of thing, and the hands that could be had. */
export function kitchenHelps(input: SessionInput): readonly Help[] {
  const { kitchen } = input;
  return [...hands(input), ...things(kitchen), ...heat(kitchen), ...places(kitchen)];
}

const inKitchen =
  (change: (kitchen: Kitchen) => Kitchen) =>
  (input: SessionInput): SessionInput => ({ ...input, kitchen: change(input.kitchen) });

/** Those of the session who do not cook yet; and somebody new who can do what the ablest can, there all the time. */
function hands({ session, crew }: SessionInput): readonly Help[] {
  const ids = crewOf(session, crew);
  const cooks = session.people.filter(({ id }) => ids.includes(id));
  const ablest = cooks.reduce<Person | null>(
    (best, person) => (best === null || person.can.length > best.can.length ? person : best),
    null,
  );
  const free = session.people.filter(({ id }) => !ids.includes(id));
  const someone: Person = { id: `hands${MORE}`, name: 'one more', can: ablest?.can ?? [] };
  return [
    ...free.map((person): Help => ({
      id: `hands ${person.id}`,
      kind: 'hands',
      words: `${person.name} cooks as well`,
      caution: '',
      relaxInput: (input) => ({ ...input, session: withCook(input, person) }),
    })),
    {
      id: 'hands more',
      kind: 'hands',
      words: 'one more pair of hands',
      caution: '',
      relaxInput: (input) => ({ ...input, session: withCook(input, someone) }),
    },
  ];
}

function withCook({ session, crew }: SessionInput, person: Person): Session {
  const people = session.people.some(({ id }) => id === person.id) ? session.people : [...session.people, person];
  if (session.crews === undefined) return { ...session, people };
  const chosen = crew ?? session.crews[0]?.id;
  const crews = session.crews.map((each) =>
    each.id === chosen && !each.people.includes(person.id) ? { ...each, people: [...each.people, person.id] } : each,
  );
  return { ...session, people, crews };
}

interface Thing {
  readonly id: string;
  readonly name: string;
}

/** The first of each sort among things, where things of one sort differ only in id and name. */
function sorts<T extends Thing>(list: readonly T[]): readonly T[] {
  const seen = new Set<string>();
  return list.filter(({ id: _, name: __, ...rest }) => {
    const sort = JSON.stringify(rest);
    return !seen.has(sort) && seen.add(sort);
  });
}

/** What is like another thing hangs on the same power limits. */
const onSameLimits = (kitchen: Kitchen, id: string): Kitchen => ({
  ...kitchen,
  power: kitchen.power.map((limit) =>
    limit.members?.includes(id) === true ? { ...limit, members: [...limit.members, `${id}${MORE}`] } : limit,
  ),
});

const another = <T extends Thing>(thing: T): T => ({
  ...thing,
  id: `${thing.id}${MORE}`,
  name: `another ${thing.name}`,
});

function things(kitchen: Kitchen): readonly Help[] {
  const of = <K extends 'boards' | 'bowls' | 'tools' | 'trays' | 'pans' | 'appliances'>(
    list: K,
    kind: Help['kind'],
  ): Help[] =>
    sorts<Thing>(kitchen[list]).map((thing) => ({
      id: `${kind} ${thing.id}`,
      kind,
      words: `another ${thing.name}`,
      caution: '',
      relaxInput: inKitchen((given) => ({
        ...onSameLimits(given, thing.id),
        [list]: [...given[list], another(thing)],
      })),
    }));
  return [
    ...of('boards', 'board'),
    ...of('bowls', 'bowl'),
    ...of('tools', 'tool'),
    ...of('trays', 'tray'),
    ...of('pans', 'pan'),
    ...of('appliances', 'appliance'),
  ];
}

function heat(kitchen: Kitchen): readonly Help[] {
  // The biggest: most power, then widest.
  const biggest = kitchen.hob.burners.reduce<Kitchen['hob']['burners'][number] | null>((best, burner) => {
    if (best === null || burner.powerW > best.powerW) return burner;
    return burner.powerW === best.powerW && burner.mostPanCm > best.mostPanCm ? burner : best;
  }, null);
  return [
    ...(biggest === null
      ? []
      : [
          {
            id: `burner ${biggest.id}`,
            kind: 'burner' as const,
            words: `another burner like ${the(biggest.name)}`,
            caution: '',
            relaxInput: inKitchen((given) => ({
              ...onSameLimits(given, biggest.id),
              hob: { ...given.hob, burners: [...given.hob.burners, another(biggest)] },
            })),
          },
        ]),
    ...kitchen.ovens.flatMap((oven): Help[] => [
      {
        id: `rack ${oven.id}`,
        kind: 'rack',
        words: `one more rack in ${the(oven.name)}`,
        caution: '',
        // Below the others, where nothing drips on them from it.
        relaxInput: inKitchen((given) => ({
          ...given,
          ovens: given.ovens.map((each) =>
            each.id === oven.id
              ? { ...each, racks: [...each.racks, { id: `${oven.id}-rack${MORE}`, name: 'one more rack' }] }
              : each,
          ),
        })),
      },
      {
        id: `oven ${oven.id}`,
        kind: 'oven',
        words:
          kitchen.ovens.length === 1 ? 'a second oven, like the one there is' : `another oven like ${the(oven.name)}`,
        caution: '',
        relaxInput: inKitchen((given) => ({
          ...onSameLimits(given, oven.id),
          ovens: [
            ...given.ovens,
            { ...another(oven), racks: oven.racks.map((rack) => ({ ...rack, id: `${rack.id}${MORE}` })) },
          ],
        })),
      },
    ]),
  ];
}

function places(kitchen: Kitchen): readonly Help[] {
  const words = {
    sink: 'one more place at the sink',
    resting: 'one more place to rest food',
    cooling: 'one more place to cool food',
    drying: 'one more place to dry things',
  } as const;
  return (['sink', 'resting', 'cooling', 'drying'] as const).map((what) => ({
    id: `place ${what}`,
    kind: 'place',
    words: words[what],
    caution: '',
    relaxInput: inKitchen((given) => ({ ...given, [what]: { places: kitchen[what].places + 1 } })),
  }));
}
