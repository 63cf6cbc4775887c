/** What the kitchen limits: how many of each thing there are, one temperature in an oven, power; and how many hands there are. */
import type { Problem, Use } from '../engine/problem.ts';
import type { Kitchen } from '../kitchen/kitchen.ts';
import type { SessionInput } from '../translate/session-to-problem.ts';
import { crewOf } from './session-requirements.ts';
import type { Requirement } from './requirement.ts';
import { listed } from './session-words.ts';

/** Requirements of the kitchen document, and of how many cook. */
export function kitchenRequirements(input: SessionInput): readonly Requirement[] {
  const { kitchen } = input;
  const document = `kitchen ${kitchen.id}`;
  return [
    hands(input),
    ...equipment(kitchen).map(({ path, words, mend, prefixes }): Requirement => ({
      id: `${document} ${path}`,
      document,
      path,
      kind: 'equipment',
      words,
      mend,
      relaxProblem: plenty(prefixes),
    })),
    ...kitchen.power.map((limit, index): Requirement => ({
      id: `${document} power[${index}]`,
      document,
      path: `power[${index}]`,
      kind: 'power',
      words: `${limit.name} gives no more than ${limit.limitW} W at once`,
      mend: `get more power from ${limit.name}`,
      relaxInput: (given) => ({
        ...given,
        kitchen: { ...given.kitchen, power: given.kitchen.power.filter(({ id }) => id !== limit.id) },
      }),
    })),
  ];
}

function hands({ session, crew }: SessionInput): Requirement {
  const document = `session ${session.id}`;
  const ids = crewOf(session, crew);
  const names = session.people.filter(({ id }) => ids.includes(id)).map(({ name }) => name);
  return {
    id: `${document} people`,
    document,
    path: 'people',
    kind: 'hands',
    words: names.length === 1 ? `${names[0]} cooks alone` : `only ${listed(names)} cook`,
    mend: 'get more hands',
    relaxProblem: plenty(['hands:']),
  };
}

interface Equipment {
  readonly path: string;
  readonly words: string;
  readonly mend: string;
  /** Beginnings of the ids of its resources and states. */
  readonly prefixes: readonly string[];
}

function equipment(kitchen: Kitchen): readonly Equipment[] {
  const counted = (
    path: string,
    count: number,
    one: string,
    many: string,
    mend: string,
    prefixes: readonly string[],
  ): Equipment[] =>
    count === 0
      ? []
      : [{ path, words: count === 1 ? `there is one ${one}` : `there are ${count} ${many}`, mend, prefixes }];
  const racks = kitchen.ovens.reduce((sum, oven) => sum + oven.racks.length, 0);
  const ovens = kitchen.ovens.length;
  const rackWords = racks === 1 ? 'one rack' : `${racks} racks`;
  return [
    ...counted(
      'ovens',
      ovens,
      `oven with ${rackWords}, at one temperature at a time`,
      `ovens with ${rackWords}, each at one temperature at a time`,
      'use another oven as well',
      ['rack:', 'oven:', 'dial:', 'drips:'],
    ),
    ...counted('hob.burners', kitchen.hob.burners.length, 'burner', 'burners', 'use another burner', ['burner:']),
    ...counted('pans', kitchen.pans.length, 'pan', 'pans', 'use more pans of the same sizes', [
      'pan:',
      'insert:',
      'tiers:',
      'water:',
      'level:',
    ]),
    ...counted('trays', kitchen.trays.length, 'tray', 'trays', 'use more trays', ['tray:']),
    ...counted('boards', kitchen.boards.length, 'board', 'boards', 'use more boards', ['board:']),
    ...counted('bowls', kitchen.bowls.length, 'bowl', 'bowls', 'use more bowls of the same sizes', ['bowl:']),
    ...counted('tools', kitchen.tools.length, 'tool', 'tools of all kinds', 'use more tools of the same kinds', [
      'tool:',
    ]),
    ...counted('appliances', kitchen.appliances.length, 'appliance', 'appliances', 'use more of the same appliances', [
      'appliance:',
    ]),
    ...counted('kettle', kitchen.kettle === undefined ? 0 : 1, 'kettle', 'kettles', 'use another kettle', ['kettle:']),
    ...counted('sink', kitchen.sink.places, 'place at the sink', 'places at the sink', 'use another sink', ['sink:']),
    ...counted('resting', kitchen.resting.places, 'place to rest food', 'places to rest food', 'make room to rest', [
      'resting:',
    ]),
    ...counted('cooling', kitchen.cooling.places, 'place to cool food', 'places to cool food', 'make room to cool', [
      'cooling:',
    ]),
    ...counted('drying', kitchen.drying.places, 'place to dry things', 'places to dry things', 'make room to dry', [
      'drying:',
    ]),
  ];
}

/** As many of a thing as anybody could want: nothing waits for it, and a clean one is always at hand. */
const plenty =
  (prefixes: readonly string[]) =>
  (problem: Problem): Problem => {
    const concerns = (id: string): boolean => prefixes.some((prefix) => id.startsWith(prefix));
    const without = (use: Use): boolean => !concerns(use.resource);
    return {
      ...problem,
      tasks: problem.tasks.map((task) => ({
        ...task,
        modes: task.modes.map((mode) => {
          if (mode === null) return null;
          const uses = mode.uses.filter(without);
          if (mode.state === undefined || !concerns(mode.state.state)) return { ...mode, uses };
          const { state: _, ...stateless } = mode;
          return { ...stateless, uses };
        }),
      })),
      reservoirs: problem.reservoirs.filter(({ id }) => !concerns(id)),
    };
  };
