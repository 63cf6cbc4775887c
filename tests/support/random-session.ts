/**
 * Random sessions with their kitchens and components, valid by the schemas and mostly feasible, for property tests: ovens at several
 * temperatures, afterheat, pools, kettle, pans on burners, soil and washes, batches, absences, pins, tables, boxes. All invented.
 */
import type { Component } from '../../solver/kitchen/component.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import type { Session } from '../../solver/kitchen/session.ts';
import { randomComponent, roast } from './random-components.ts';
import { randomKitchen } from './random-kitchen.ts';
import { seeded, type Seeded } from './seeded.ts';

export interface RandomSession {
  readonly session: Session;
  readonly kitchen: Kitchen;
  readonly components: readonly Component[];
}

function people(chance: Seeded): Session['people'] {
  const there = [
    { from: 'PT0M', until: 'PT90M' },
    ...(chance.chance(0.5) ? [{ from: 'PT120M', until: 'PT480M' }] : []),
  ];
  const first = { id: 'ada', name: 'Ada', can: ['adult'] };
  if (chance.chance(0.5)) return [first];
  return [
    first,
    {
      id: 'bo',
      name: 'Bo',
      can: chance.chance(0.6) ? ['adult'] : [],
      ...(chance.chance(0.3) ? { there } : {}),
    },
  ];
}

function packing(chance: Seeded): NonNullable<Session['packing']> {
  const cooling = chance.chance(0.6);
  return {
    name: 'fill the boxes',
    boxes: chance.int(2, 8),
    work: { fixed: 'PT2M', perPortion: 'PT30S' },
    ...(cooling ? { cooling: { shortest: 'PT15M', longest: 'PT45M', places: 2 } } : {}),
    ...(chance.chance(0.8) ? { putAway: { fixed: 'PT2M' } } : {}),
    ...(chance.chance(0.3) ? { interruptible: true } : {}),
  };
}

/** A pin that is likely to be possible: who does a step, or where it is. */
function pin(chance: Seeded, components: readonly Component[], kitchen: Kitchen): NonNullable<Session['pins']>[number] {
  const component = chance.pick(components);
  const step = chance.pick(component.steps);
  const base = { component: component.id, step: step.id };
  const board = step.needs.some(({ use }) => use === 'board');
  if (board && chance.chance(0.5)) return { ...base, place: chance.pick(kitchen.boards).id };
  if (chance.chance(0.5)) return { ...base, person: 'ada' };
  return { ...base, start: `PT${chance.int(60, 100)}M` };
}

/**
 * A random session.
 *
 * @param seed its low 32 bits choose everything
 * @param size 1: two or three dishes; each step more adds about two dishes and some equipment
 */
export function randomSession(seed: number, size = 1): RandomSession {
  const chance = seeded(seed * 7919 + size);
  const kitchen = randomKitchen(chance, size);
  const pool = chance.chance(0.5);
  const count = chance.int(1, 1 + 2 * size);
  const components: Component[] = [];
  for (let index = 0; index < count; index++) {
    const heated = components.some(({ steps }) => steps.some(({ id }) => id === 'roast'));
    const making = { chance, kitchen, pool, heated, id: `dish-${index + 1}` };
    components.push(index === 0 && chance.chance(0.5) ? roast(making) : randomComponent(making));
  }
  const table = chance.chance(0.1) ? [components[0]!.id] : [];
  const session: Session = {
    kind: 'session',
    version: 1,
    id: `random-${seed}`,
    name: 'Random session (invented)',
    start: { local: '2026-03-08T10:00', zone: 'Europe/Lisbon' },
    longest: 'PT480M',
    kitchens: [kitchen.id],
    people: people(chance),
    dishes: components.map(({ id }) => ({ component: id, portions: chance.int(2, 8) })),
    ...(pool
      ? {
          pools: [
            {
              id: 'pot-water',
              name: 'pot of water',
              waterMl: chance.pick([3000, 4000]),
              leastMl: 1500,
              boils: chance.int(1, 2),
            },
          ],
        }
      : {}),
    ...(chance.chance(0.6)
      ? {
          eaters: [
            { id: 'eve', name: 'Eve', avoids: ['gluten' as const], boxes: 2 },
            { id: 'sam', name: 'Sam', avoids: chance.chance(0.5) ? ['nuts' as const] : [], boxes: 1 },
          ],
        }
      : {}),
    ...(chance.chance(0.5) ? { packing: packing(chance) } : {}),
    ...(table.length > 0
      ? {
          table: {
            at: 'PT200M',
            dishes: table,
            othersMayRunPast: true,
            ...(chance.chance(0.5) ? { allowance: 'PT8M' } : {}),
          },
        }
      : {}),
    ...(chance.chance(0.25)
      ? {
          absences: [
            {
              what: chance.pick([
                kitchen.ovens[0]!.id,
                kitchen.hob.burners[0]!.id,
                kitchen.boards[0]!.id,
                kitchen.pans[0]!.id,
              ]),
              from: chance.pick(['PT0M', 'PT30M']),
              until: 'PT50M',
            },
          ],
        }
      : {}),
    ...(chance.chance(0.1) ? { pins: [pin(chance, components, kitchen)] } : {}),
    ...(chance.chance(0.15) ? { crews: [{ id: 'alone', name: 'Ada alone', people: ['ada'] }] } : {}),
    ...(chance.chance(0.3) ? { clearing: { work: { fixed: 'PT5M' } } } : {}),
    ...(chance.chance(0.3) ? { intent: chance.pick(['soonest', 'freshest', 'thriftiest', 'calmest'] as const) } : {}),
  };
  // An eater's wish never rules out a component by its own ingredients: only boxes without them are eaten.
  return {
    session: {
      ...session,
      ...(session.eaters === undefined
        ? {}
        : {
            eaters: session.eaters.map((eater) => ({
              ...eater,
              eats: components
                .filter(({ ingredients }) =>
                  ingredients.every(({ allergens }) => allergens.every((each) => !eater.avoids.includes(each))),
                )
                // Nobody eats everything: what is left out for no reason may carry on what others have.
                .filter(() => !chance.chance(0.25))
                .map(({ id }) => id),
            })),
          }),
    },
    kitchen,
    components,
  };
}
