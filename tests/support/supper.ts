/**
 * A small supper with everything in it that the rules speak of, and a valid plan of it worked out by hand. All invented.
 * Ada keeps to what must stay free of gluten until 10:33; Bo is there until 11:00.
 */
import type { Component } from '../../solver/kitchen/component.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import type { Plan } from '../../solver/kitchen/plan.ts';
import type { Session } from '../../solver/kitchen/session.ts';
import type { Step } from '../../solver/kitchen/step.ts';
import { off, on, place, planOf, step, wash, water } from './plan-builder.ts';

export const kitchen: Kitchen = {
  kind: 'kitchen',
  version: 1,
  id: 'small-kitchen',
  name: 'small kitchen',
  roomC: 20,
  ovens: [
    {
      id: 'oven',
      name: 'the oven',
      volumeL: 60,
      powerW: 3000,
      holdingW: 900,
      functions: ['conventional', 'fan'],
      dial: { leastC: 50, mostC: 250, stepC: 10 },
      racks: [
        { id: 'top', name: 'top rack' },
        { id: 'low', name: 'low rack' },
      ],
      // 18 °C a minute up to 200 °C.
      heating: [
        { minutes: 0, celsius: 20 },
        { minutes: 10, celsius: 200 },
        { minutes: 15, celsius: 250 },
      ],
      // 4 °C a minute from 200 to 120 °C.
      cooling: [
        { minutes: 0, celsius: 250 },
        { minutes: 10, celsius: 200 },
        { minutes: 30, celsius: 120 },
        { minutes: 60, celsius: 60 },
      ],
    },
  ],
  appliances: [],
  hob: {
    heat: 'ceramic',
    burners: [
      {
        id: 'big',
        name: 'big burner',
        leastPanCm: 20,
        mostPanCm: 30,
        powerW: 2000,
        efficiency: 0.7,
        boilMinutesPerLitre: { lidded: 4, open: 5 },
      },
      {
        id: 'small',
        name: 'small burner',
        leastPanCm: 10,
        mostPanCm: 18,
        powerW: 1000,
        efficiency: 0.7,
        boilMinutesPerLitre: { lidded: 6, open: 8 },
      },
    ],
  },
  kettle: { id: 'kettle', name: 'kettle', mostMl: 1700, powerW: 2000, minutesPerLitre: 2 },
  pans: [
    {
      id: 'pot',
      name: 'big pot',
      volumeMl: 6000,
      acrossCm: 24,
      lid: true,
      insertMl: 1000,
      tiers: 1,
      staysHot: [
        { ml: 1000, minutes: 10 },
        { ml: 5000, minutes: 30 },
      ],
    },
    { id: 'saucepan', name: 'saucepan', volumeMl: 2000, acrossCm: 18, lid: true },
    { id: 'wide', name: 'wide pan', volumeMl: 3000, acrossCm: 28, lid: false },
  ],
  trays: [
    { id: 'tray-a', name: 'first tray' },
    { id: 'tray-b', name: 'second tray' },
  ],
  boards: [{ id: 'board', name: 'the board' }],
  bowls: [
    { id: 'bowl', name: 'the bowl', volumeMl: 2000 },
    { id: 'cup', name: 'cup', volumeMl: 300 },
  ],
  tools: [
    { id: 'knife', name: 'the knife', kind: 'knife' },
    { id: 'peeler', name: 'the peeler', kind: 'peeler' },
  ],
  sink: { places: 1 },
  resting: { places: 1 },
  cooling: { places: 2 },
  drying: { places: 2 },
  fridgeL: 100,
  freezerL: 50,
  washing: { board: 1, pan: 2, tray: 2, bowl: 1, tool: 1, hands: 0.5 },
  power: [
    { id: 'home', name: 'the home', limitW: 7552 },
    { id: 'hob', name: 'the hob', limitW: 2552, members: ['big', 'small'] },
  ],
  tariff: { currency: 'EUR', electricityPerKWh: 0.3, gasPerKWh: 0.1, waterPerM3: 4 },
};

const dish = (id: string, steps: Step[], extra: Partial<Component> = {}): Component => ({
  kind: 'component',
  version: 1,
  id,
  name: id,
  makes: { portions: 4, massG: 1000 },
  ingredients: [{ id: 'main', name: id, allergens: [] }],
  steps,
  packed: 'cooled',
  keeps: { fridge: 'P2D' },
  ...extra,
});
const gluten: Component['ingredients'] = [{ id: 'main', name: 'wheat', allergens: ['gluten'] }];
const hands = (minutes: number, extra: object = {}): Step['segments'][number] => ({
  hands: 'on',
  work: { fixed: `PT${minutes}M` },
  ...extra,
});
const wait = (shortest: number, longest = shortest, extra: object = {}): Step['segments'][number] => ({
  hands: 'off',
  shortest: `PT${shortest}M`,
  longest: `PT${longest}M`,
  ...extra,
});

const chicken = dish(
  'chicken',
  [
    {
      id: 'cut',
      name: 'cut the chicken',
      segments: [hands(5)],
      needs: [{ use: 'board' }, { use: 'tool', kind: 'knife' }],
    },
    {
      id: 'roast',
      name: 'roast the chicken',
      segments: [
        hands(1),
        wait(30, 30, { checks: [{ name: 'turn', at: 'PT15M', within: 'PT2M', work: { fixed: 'PT1M' } }] }),
        hands(2, { probe: true }),
      ],
      needs: [
        { use: 'oven', function: 'conventional', leastC: 180, mostC: 200, share: 60, drips: true },
        { use: 'tray' },
      ],
      after: [{ step: 'cut', longest: 'PT10M' }],
      cooked: true,
      cooksThrough: { raw: 'poultry', coreC: 75, holdSeconds: 30 },
    },
    {
      id: 'rest',
      name: 'rest the chicken',
      segments: [wait(5, 10), hands(1)],
      needs: [{ use: 'place', place: 'resting', places: 1 }],
      after: [{ step: 'roast', longest: 'PT0M' }],
      cooked: true,
      readyToEat: true,
    },
  ],
  {
    ingredients: [{ id: 'main', name: 'chicken', allergens: [], raw: 'poultry' }],
    fridge: { from: 'roast', within: 'PT40M' },
  },
);
const croutons = dish(
  'croutons',
  [
    { id: 'tear', name: 'tear the bread', segments: [hands(3)], needs: [{ use: 'board' }], readyToEat: true },
    {
      id: 'crisp',
      name: 'crisp the bread',
      segments: [hands(1), wait(8, 12), hands(1)],
      needs: [
        { use: 'oven', function: 'conventional', leastC: 100, mostC: 170, share: 50, afterheat: true },
        { use: 'tray' },
      ],
      after: [{ step: 'tear' }],
      readyToEat: true,
    },
  ],
  { ingredients: gluten },
);
const pasta = dish(
  'pasta',
  [
    {
      id: 'boil',
      name: 'boil the pasta',
      segments: [hands(1), wait(10), hands(2, { who: 'adult' })],
      needs: [{ use: 'pool', how: 'boil', ml: 800 }],
      cooked: true,
      readyToEat: true,
    },
  ],
  { ingredients: gluten },
);
const greens = dish('greens', [
  {
    id: 'steam',
    name: 'steam the greens',
    segments: [hands(1), wait(6), hands(1)],
    needs: [{ use: 'pool', how: 'steam', tiers: 1 }],
    cooked: true,
    readyToEat: true,
  },
]);
const millet = dish(
  'millet',
  [
    {
      id: 'soak',
      name: 'soak the millet',
      segments: [hands(1), wait(6, 8), hands(1)],
      needs: [
        { use: 'bowl', leastMl: 1000 },
        { use: 'pool', how: 'draw', ml: 500, during: { from: 0, to: 0 } },
      ],
      readyToEat: true,
    },
  ],
  {
    ahead: [
      {
        id: 'rinse',
        name: 'rinse the millet',
        daysBefore: 1,
        at: '21:00',
        hands: 'PT5M',
        shortest: 'PT8H',
        longest: 'PT14H',
        until: 'soak',
      },
    ],
    later: [{ id: 'thaw', name: 'thaw the millet', daysAfter: 2, at: '20:00', hands: 'PT2M' }],
  },
);
const sauce = dish(
  'sauce',
  [
    {
      id: 'simmer',
      name: 'simmer the sauce',
      segments: [hands(2), wait(10, 15, { boilMl: 500 }), hands(1)],
      needs: [{ use: 'burner', heat: 'simmer' }],
      cooked: true,
    },
    {
      id: 'season',
      name: 'season the sauce',
      segments: [hands(2)],
      needs: [],
      after: [{ step: 'simmer', longest: 'PT5M' }],
      cooked: true,
      readyToEat: true,
    },
  ],
  { holds: [{ id: 'pan', need: { use: 'pan', leastMl: 1500, lid: true }, from: 'simmer', to: 'season' }] },
);
const stock = dish('stock', [
  {
    id: 'brew',
    name: 'brew the stock',
    segments: [hands(1), { hands: 'off', boilMl: 500, longest: 'PT2M' }, hands(1)],
    needs: [{ use: 'kettle', ml: 500 }],
  },
]);
const rolls = dish(
  'rolls',
  [
    { id: 'mix', name: 'mix the dough', segments: [hands(3)], needs: [{ use: 'bowl', leastMl: 1000 }] },
    { id: 'shape', name: 'shape the rolls', segments: [hands(2)], needs: [], after: [{ step: 'mix' }] },
    { id: 'flour', name: 'flour the rolls', segments: [hands(1)], needs: [], after: [{ step: 'shape' }] },
  ],
  { ingredients: gluten, batches: { steps: ['shape', 'flour'], mostPortions: 2 } },
);
const salad = dish('salad', [
  {
    id: 'chop',
    name: 'chop the salad',
    segments: [hands(8)],
    needs: [{ use: 'board' }, { use: 'tool', kind: 'knife' }],
    interruptible: { pieces: 2, least: 'PT4M' },
    readyToEat: true,
  },
]);

const squash = dish('squash', [
  {
    id: 'bake',
    name: 'bake the squash',
    segments: [hands(1), wait(9), hands(1)],
    needs: [{ use: 'oven', function: 'conventional', leastC: 180, mostC: 200, share: 50 }],
    cooked: true,
  },
]);

export const components: readonly Component[] = [
  chicken,
  croutons,
  pasta,
  greens,
  millet,
  sauce,
  stock,
  rolls,
  salad,
  squash,
];

export const session: Session = {
  kind: 'session',
  version: 1,
  id: 'supper',
  name: 'supper',
  start: { local: '2026-03-08T10:00', zone: 'Europe/Lisbon' },
  longest: 'PT80M',
  kitchens: ['small-kitchen'],
  people: [
    { id: 'ada', name: 'Ada', can: ['adult'] },
    { id: 'bo', name: 'Bo', can: [], there: [{ from: 'PT0M', until: 'PT60M' }] },
  ],
  dishes: components.map(({ id }) => ({ component: id, portions: 4 })),
  pools: [{ id: 'pot-water', name: 'the pot of water', waterMl: 3000, leastMl: 2400 }],
  eaters: [{ id: 'eve', name: 'Eve', avoids: ['gluten'], boxes: 2, eats: ['greens', 'millet'] }],
  packing: {
    name: 'fill the boxes',
    boxes: 4,
    work: { fixed: 'PT4M' },
    cooling: { shortest: 'PT10M', longest: 'PT30M', places: 2 },
    putAway: { fixed: 'PT2M' },
  },
  absences: [{ what: 'small', from: 'PT0M', until: 'PT5M' }],
  pins: [
    { component: 'chicken', step: 'roast', start: 'PT10M', place: 'top' },
    { component: 'greens', step: 'steam', person: 'ada' },
    { component: 'sauce', step: 'simmer', place: 'small' },
  ],
  clearing: { work: { fixed: 'PT3M' } },
};

const pool = (how: 'boil' | 'steam' | 'draw', from: number, until: number, amount: number) =>
  place('pool', 'pot-water', from, until, { how, boil: 1, amount });
const rack = (id: string, from: number, until: number, amount: number, afterheat = false) =>
  place('rack', id, from, until, {
    oven: 'oven',
    amount,
    function: 'conventional',
    leastC: afterheat ? 100 : 180,
    mostC: afterheat ? 170 : 200,
    ...(afterheat ? { afterheat } : {}),
  });

/** The valid plan; 200 °C are never reached: the dial is at 190, from 10:00 to 10:43. */
export const supper: Plan = planOf(
  { session, kitchen, components },
  {
    steps: [
      water('pot-water', 'fill', 'ada', 0, 1),
      step('oven/preheat', undefined, [off(0, 10)], [], { kind: 'preheat', inFinish: false }),
      step('rolls/mix', 4, [on('bo', 0, 3)], [place('bowl', 'bowl', 0, 3)]),
      step('chicken/cut', 4, [on('ada', 1, 6)], [place('board', 'board', 1, 6), place('tool', 'knife', 1, 6)]),
      step('rolls/shape.1', 2, [on('bo', 3, 5)]),
      step('rolls/shape.2', 2, [on('bo', 5, 7)]),
      wash('ada', 'board', 'board', 6, 7),
      wash('ada', 'tool', 'knife', 7, 8),
      step('rolls/flour.1', 2, [on('bo', 7, 8)]),
      wash('bo', 'bowl', 'bowl', 8, 9),
      step('salad/chop~1', 4, [on('bo', 9, 13)], [place('board', 'board', 9, 20), place('tool', 'knife', 9, 20)], {
        piece: 1,
      }),
      step('rolls/flour.2', 2, [on('bo', 13, 14)]),
      step(
        'chicken/roast',
        4,
        [on('ada', 10, 11), off(11, 41), on('ada', 26, 27, { check: true }), on('ada', 41, 43, { probe: true })],
        [rack('top', 10, 43, 60), place('tray', 'tray-a', 10, 43)],
      ),
      step('greens/steam', 4, [on('ada', 13, 14), off(14, 20), on('ada', 20, 21)], [pool('steam', 13, 21, 1)]),
      step('squash/bake', 4, [on('bo', 14, 15), off(15, 24), on('ada', 24, 25)], [rack('low', 14, 25, 50)]),
      step('salad/chop~2', 4, [on('bo', 16, 20)], [], { piece: 2 }),
      // Bo put the squash in with flour on the hands; Ada took it out.
      { ...wash('ada', null, 'ada', 25, 26), id: 'wash/ada.2' },
      step(
        'millet/soak',
        4,
        [on('ada', 21, 22), off(22, 28), on('ada', 28, 29)],
        [place('bowl', 'bowl', 21, 29), pool('draw', 21, 22, 500)],
      ),
      step('pasta/boil', 4, [on('bo', 22, 23), off(23, 33), on('ada', 33, 35)], [pool('boil', 22, 35, 800)]),
      step('sauce/simmer', 4, [on('ada', 22, 24), off(24, 38), on('ada', 38, 39)], [place('burner', 'small', 22, 39)]),
      step('croutons/tear', 4, [on('bo', 23, 26)], [place('board', 'board', 23, 26)]),
      step('stock/brew', 4, [on('bo', 26, 27), off(27, 29), on('bo', 29, 30)], [place('kettle', 'kettle', 26, 30)]),
      water('pot-water', 'empty', 'bo', 36, 37),
      step('sauce/season', 4, [on('ada', 39, 41)]),
      step('chicken/rest', 4, [off(43, 48), on('ada', 48, 49)], [place('resting', 'resting', 43, 49)]),
      step(
        'croutons/crisp',
        4,
        [on('bo', 49, 50), off(50, 58), on('bo', 58, 59)],
        [rack('low', 49, 59, 50, true), place('tray', 'tray-b', 49, 59)],
      ),
      // Ada lifted the pasta.
      wash('ada', null, 'ada', 53, 54),
      step('boxes/pack', 4, [on('ada', 59, 63)]),
      step('boxes/cool', 4, [off(63, 75)], [place('cooling', 'cooling', 63, 75, { amount: 2 })]),
      step('clearing/clear', 1, [on('ada', 63, 66)], [place('sink', 'sink', 63, 66)]),
      step('boxes/put-away', 4, [on('ada', 75, 77)], [], { inFinish: false }),
    ],
    holds: [{ component: 'sauce', hold: 'pan', batch: 1, place: place('pan', 'saucepan', 22, 41) }],
    ovens: [
      {
        oven: 'oven',
        settings: [
          { minute: 0, celsius: 190, function: 'conventional' },
          { minute: 43, celsius: null, function: 'conventional' },
        ],
        line: [],
      },
    ],
    pools: [
      {
        pool: 'pot-water',
        pan: 'pot',
        from: 0,
        until: 37,
        // 3 L at 4 min/L.
        boils: [{ boil: 1, water: 'cold', burner: 'big', onHeat: 1, boilsAt: 13, offHeat: 35, hotUntil: 36 }],
        level: [
          { minute: 1, ml: 3000 },
          { minute: 21, ml: 2500 },
          { minute: 37, ml: 0 },
        ],
      },
    ],
    ahead: [
      { component: 'millet', step: 'rinse', name: 'rinse the millet', start: -780, until: 21, handsOnMinutes: 5 },
    ],
    later: [
      { component: 'millet', step: 'thaw', name: 'thaw the millet', start: 3480, until: 3482, handsOnMinutes: 2 },
    ],
  },
);
