/** Random components, one maker for each kind of cooking; all invented. */
import type { Component, Ingredient } from '../../solver/kitchen/component.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import type { Need, Segment, Step } from '../../solver/kitchen/step.ts';
import type { Allergen, RawKind } from '../../solver/kitchen/values.ts';
import type { Seeded } from './seeded.ts';

export interface Making {
  readonly chance: Seeded;
  readonly kitchen: Kitchen;
  readonly id: string;
  /** Whether the session has a pool, and another component that heats an oven. */
  readonly pool: boolean;
  readonly heated: boolean;
}

const minutes = (count: number): string => `PT${count}M`;
const ALLERGENS: readonly Allergen[] = ['gluten', 'milk', 'nuts', 'sesame', 'eggs'];

function ingredient(chance: Seeded, id: string, raw?: RawKind): Ingredient {
  return {
    id,
    name: id,
    massG: chance.int(2, 12) * 100,
    ...(chance.chance(0.4) ? { count: chance.int(1, 8) } : {}),
    allergens: chance.chance(0.3) ? [chance.pick(ALLERGENS)] : [],
    ...(raw === undefined ? {} : { raw }),
  };
}

/** Hands-on for some minutes, sometimes growing with the amount. */
function on(chance: Seeded, most: number, extra: Partial<Extract<Segment, { hands: 'on' }>> = {}): Segment {
  const fixed = chance.chance(0.2) ? `PT${chance.int(1, Math.max(1, most - 1))}M30S` : minutes(chance.int(1, most));
  const grow = chance.chance(0.3) ? { perPortion: `PT${chance.int(5, 30)}S` } : {};
  const perKg = chance.chance(0.15) ? { perKg: 'PT1M' } : {};
  const handles = chance.chance(0.2) ? { handles: 'things' as const } : {};
  return { hands: 'on', work: { fixed, ...grow, ...perKg }, ...handles, ...extra };
}

function off(chance: Seeded, least: number, most: number, loose = 0.4): Extract<Segment, { hands: 'off' }> {
  const shortest = chance.int(least, most);
  return {
    hands: 'off',
    shortest: minutes(shortest),
    ...(chance.chance(loose) ? { longest: minutes(shortest + chance.int(1, 12)) } : {}),
  };
}

const adult = (chance: Seeded): { who?: string } => (chance.chance(0.25) ? { who: 'adult' } : {});

const component = (
  making: Making,
  parts: Partial<Component> & Pick<Component, 'steps' | 'ingredients'>,
): Component => ({
  kind: 'component',
  version: 1,
  id: making.id,
  name: `Dish ${making.id}`,
  makes: { portions: 4, massG: 1200 },
  packed: making.chance.pick(['hot', 'cooled']),
  keeps: { fridge: 'P2D' },
  ...parts,
});

/** Work at a board before cooking. */
function prepare({ chance }: Making, id: string, extra: Partial<Step> = {}): Step {
  const tool: readonly Need[] = chance.chance(0.5) ? [{ use: 'tool', kind: 'knife' }] : [];
  return {
    id,
    name: id,
    segments: [on(chance, 8)],
    needs: [{ use: 'board' }, ...tool],
    ...(chance.chance(0.35) ? { interruptible: chance.chance(0.5) ? {} : { pieces: 2, least: 'PT2M' } } : {}),
    ...extra,
  };
}

function window(chance: Seeded, least: number): { leastC: number; mostC: number } {
  const leastC = least + chance.int(0, 5) * 10;
  return { leastC, mostC: leastC + chance.pick([25, 30, 40]) };
}

function roast(making: Making): Component {
  const { chance, kitchen, id } = making;
  const raw = chance.chance(0.4) ? chance.pick(['meat', 'poultry', 'fish'] as const) : undefined;
  const fan = kitchen.ovens.every(({ functions }) => functions.includes('fan')) && chance.chance(0.4);
  const inOven = (least: number): Need => ({
    use: 'oven',
    function: fan ? 'fan' : 'conventional',
    ...window(chance, least),
    share: chance.pick([50, 50, 100]),
    ...(chance.chance(0.2) ? { coldStart: true } : {}),
    ...(chance.chance(0.3) ? { drips: true } : {}),
  });
  const bake = (): Segment => {
    const segment = off(chance, 15, 40);
    if (chance.chance(0.4))
      segment.checks = [
        { name: 'turn', at: 'PT8M', within: minutes(chance.int(1, 3)), work: { fixed: 'PT1M' }, ...adult(chance) },
      ];
    return segment;
  };
  // Raw food's own window may begin below the least setting that the safety rules ask for, and ends above it.
  const least = raw === undefined ? 140 : 150;
  const out = on(chance, 2, { ...(raw === undefined ? {} : { probe: true }), ...adult(chance) });
  const method = (): { segments: Segment[]; needs: Need[] } => ({
    segments: [on(chance, 2), bake(), out],
    needs: [inOven(least), { use: 'tray' }],
  });
  const first = method();
  const batched = chance.chance(0.3);
  const steps: Step[] = [
    prepare(making, 'cut'),
    {
      id: 'roast',
      name: 'roast',
      ...first,
      ...(chance.chance(0.3) ? { alternatives: [{ name: 'roast otherwise', ...method() }] } : {}),
      after: [{ step: 'cut', ...(chance.chance(0.2) ? { longest: 'PT60M' } : {}) }],
      cooked: true,
      ...(raw === undefined ? {} : { cooksThrough: { raw, coreC: 75, holdSeconds: 30 } }),
    },
  ];
  if (chance.chance(0.5))
    steps.push({
      id: 'rest',
      name: 'rest',
      segments: [off(chance, 5, 10), on(chance, 2)],
      needs: [{ use: 'place', place: 'resting', places: 1 }],
      after: [{ step: 'roast', longest: 'PT5M', ...(chance.chance(0.5) ? { best: 'PT0M', weight: 2 } : {}) }],
      cooked: true,
      readyToEat: true,
    });
  return component(making, {
    ingredients: [ingredient(chance, 'main', raw)],
    steps,
    ...(batched ? { batches: { steps: chance.chance(0.5) ? ['cut', 'roast'] : ['roast'], mostPortions: 4 } } : {}),
    ...(chance.chance(0.3) ? { fridge: { from: 'roast', within: 'PT240M' } } : {}),
    id,
  });
}

function simmer(making: Making): Component {
  const { chance } = making;
  const boils: Segment = { ...off(chance, 8, 25), boilMl: chance.int(3, 8) * 100 };
  const lid = chance.chance(0.5) ? { lid: true } : {};
  const panNeed: Need = { use: 'pan', leastMl: 1200, ...lid };
  const held = chance.chance(0.6);
  const heat = chance.pick(['full', 'simmer'] as const);
  return component(making, {
    ingredients: [ingredient(chance, 'main'), ingredient(chance, 'other')],
    steps: [
      prepare(making, 'cut', { touches: ['main'] }),
      {
        id: 'simmer',
        name: 'simmer',
        segments: [on(chance, 3), boils, on(chance, 2, adult(chance))],
        needs: [{ use: 'burner', heat }, ...(held ? [] : [panNeed])],
        after: [{ step: 'cut' }],
        cooked: true,
      },
      {
        id: 'season',
        name: 'season',
        segments: [on(chance, 3)],
        needs: [],
        after: [{ step: 'simmer', ...(chance.chance(0.4) ? { longest: 'PT15M' } : {}), shortest: 'PT1M' }],
        cooked: true,
        readyToEat: true,
      },
    ],
    ...(held ? { holds: [{ id: 'pot', need: panNeed, from: 'simmer', to: 'season' }] } : {}),
    ...(chance.chance(0.25) ? { batches: { steps: ['simmer', 'season'], mostPortions: 4 } } : {}),
    ready: 'season',
  });
}

function soak(making: Making): Component {
  const { chance, kitchen, pool } = making;
  const draw = pool && (kitchen.kettle === undefined || chance.chance(0.6));
  const bowl: Need = { use: 'bowl', leastMl: 1000 };
  const steps: Step[] = [];
  if (draw) {
    steps.push({
      id: 'soak',
      name: 'soak',
      segments: [on(chance, 2, adult(chance)), off(chance, 5, 10), on(chance, 2)],
      needs: [bowl, { use: 'pool', how: 'draw', ml: 300, during: { from: 0, to: 0 } }],
      readyToEat: true,
    });
  } else if (kitchen.kettle !== undefined) {
    steps.push({
      id: 'soak',
      name: 'soak',
      segments: [
        on(chance, 1),
        { hands: 'off', boilMl: 500, longest: 'PT10M' },
        on(chance, 2),
        off(chance, 5, 10),
        on(chance, 1),
      ],
      needs: [
        { use: 'kettle', ml: 500, during: { from: 0, to: 2 } },
        { ...bowl, during: { from: 2, to: 4 } },
      ],
      readyToEat: true,
    });
  } else {
    steps.push({ id: 'mix', name: 'mix', segments: [on(chance, 5)], needs: [bowl], readyToEat: true });
  }
  if (chance.chance(0.4))
    steps.push({
      id: 'dress',
      name: 'dress',
      segments: [on(chance, 2)],
      needs: [],
      after: [{ step: steps[0]!.id, longest: 'PT20M' }],
      readyToEat: true,
    });
  return component(making, {
    ingredients: [ingredient(chance, 'main')],
    steps,
    ...(chance.chance(0.3)
      ? {
          ahead: [
            {
              id: 'rinse',
              name: 'rinse the night before',
              daysBefore: 1,
              at: '21:00',
              hands: 'PT5M',
              shortest: 'PT8H',
              longest: 'PT20H',
              until: steps[0]!.id,
            },
          ],
          later: [{ id: 'thaw', name: 'thaw', daysAfter: 2, at: '20:00', hands: 'PT2M' }],
        }
      : {}),
  });
}

function inPool(making: Making): Component {
  const { chance } = making;
  const steam = chance.chance(0.4);
  const need: Need = steam
    ? { use: 'pool', how: 'steam', tiers: 1 }
    : { use: 'pool', how: 'boil', ml: chance.int(4, 10) * 100 };
  const cut = chance.chance(0.5) ? [prepare(making, 'cut')] : [];
  return component(making, {
    // Wheat or nuts in the water is what most often asks for fresh water.
    ingredients: [
      { ...ingredient(chance, 'main'), allergens: chance.pick([[], ['gluten'], ['nuts']] as Allergen[][]) },
    ],
    steps: [
      ...cut,
      {
        id: 'cook',
        name: steam ? 'steam' : 'boil',
        segments: [on(chance, 1), off(chance, 6, 14), on(chance, 2, adult(chance))],

        needs: [need],
        after: cut.map(({ id }) => ({ step: id })),
        cooked: true,
      },
      {
        id: 'cool',
        name: 'cool',
        segments: [off(chance, 5, 15), on(chance, 1)],
        needs: [{ use: 'place', place: 'cooling', places: 1 }],
        after: [{ step: 'cook', longest: 'PT3M' }],
        cooked: true,
        readyToEat: true,
      },
    ],
  });
}

function crisp(making: Making): Component {
  const { chance } = making;
  const inOven = {
    name: 'crisp in the oven',
    segments: [on(chance, 1), off(chance, 6, 12), on(chance, 1)],
    needs: [
      { use: 'oven' as const, function: 'conventional' as const, leastC: 150, mostC: 180, share: 50 },
      { use: 'tray' as const },
    ],
  };
  return component(making, {
    ingredients: [ingredient(chance, 'main')],
    steps: [
      prepare(making, 'tear', { readyToEat: true }),
      {
        id: 'crisp',
        name: 'crisp in the afterheat',
        segments: [on(chance, 1), off(chance, 5, 10), on(chance, 1)],
        needs: [
          { use: 'oven', function: 'conventional', leastC: 90, mostC: 170, share: 50, afterheat: true },
          { use: 'tray' },
        ],
        ...(chance.chance(0.7) ? { alternatives: [inOven] } : {}),
        after: [{ step: 'tear' }],
        readyToEat: true,
        cooked: true,
      },
    ],
  });
}

function dressing(making: Making): Component {
  const { chance, kitchen } = making;
  const warm = kitchen.appliances.length > 0 && chance.chance(0.5);
  const put = chance.chance(0.3);
  return component(making, {
    ingredients: [ingredient(chance, 'main'), ingredient(chance, 'leaves', chance.chance(0.15) ? 'egg' : undefined)],
    steps: [
      prepare(making, 'chop', { readyToEat: true, touches: ['main'] }),
      {
        id: 'mix',
        name: 'mix',
        segments: [on(chance, 4)],
        needs: [{ use: 'bowl', leastMl: 500 }],
        after: [{ step: 'chop', ...(chance.chance(0.3) ? { longest: 'PT0M' } : {}) }],
        readyToEat: true,
      },
      ...(warm
        ? [
            {
              id: 'warm',
              name: 'warm',
              segments: [on(chance, 1), off(chance, 3, 5), on(chance, 1)],
              needs: [{ use: 'appliance', does: 'microwave', heats: true } as const],
              after: [{ step: 'mix' }],
              readyToEat: true,
            },
          ]
        : []),
      ...(put
        ? [
            {
              id: 'store',
              name: 'into the fridge',
              segments: [on(chance, 1)],
              needs: [],
              after: [{ step: warm ? 'warm' : 'mix' }],
              putsAway: true,
            },
          ]
        : []),
    ],
    ...(put ? { fridge: { from: warm ? 'warm' : 'mix', within: 'PT120M' } } : {}),
  });
}

function keptHot(making: Making): Component {
  const { chance } = making;
  return component(making, {
    ingredients: [ingredient(chance, 'main')],
    steps: [
      {
        id: 'fry',
        name: 'fry',
        segments: [on(chance, 10)],
        needs: [
          { use: 'burner', heat: 'full' },
          { use: 'pan', leastMl: 800 },
        ],
        cooked: true,
      },
      {
        id: 'keep',
        name: 'keep hot',
        segments: [on(chance, 1), { hands: 'off', shortest: 'PT2M', longest: 'PT25M' }, on(chance, 1)],
        needs: [{ use: 'oven', function: 'conventional', leastC: 70, mostC: 110, share: 50 }, { use: 'tray' }],
        after: [{ step: 'fry', longest: 'PT5M' }],
        cooked: true,
        readyToEat: true,
        hotHold: { leastC: 63, longest: 'PT60M' },
      },
    ],
  });
}

const MAKERS: readonly ((making: Making) => Component)[] = [roast, roast, simmer, simmer, soak, dressing, dressing];

/** A component of a random kind that the kitchen can cook. */
export function randomComponent(making: Making): Component {
  const { chance, pool, heated } = making;
  if (pool && chance.chance(0.45)) return inPool(making);
  if (heated && chance.chance(0.15)) return crisp(making);
  if (chance.chance(0.05)) return keptHot(making);
  return chance.pick(MAKERS)(making);
}
export { roast };
