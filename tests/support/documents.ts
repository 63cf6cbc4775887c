/** Small kitchens, components and sessions for tests. All values invented. */
import type { Component } from '../../solver/kitchen/component.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import type { Session } from '../../solver/kitchen/session.ts';
import type { Need, Segment, Step } from '../../solver/kitchen/step.ts';

/** Heats 10 °C a minute from 20 °C to 250 °C; falls 5 °C a minute from 250 °C to 50 °C. */
export const linearOven = (id: string, racks = 2): Kitchen['ovens'][number] => ({
  id,
  name: `oven ${id}`,
  volumeL: 65,
  powerW: 3000,
  holdingW: 900,
  functions: ['conventional', 'fan'],
  dial: { leastC: 50, mostC: 250, stepC: 10 },
  racks: Array.from({ length: racks }, (_, index) => ({ id: `${id}-rack-${index + 1}`, name: `rack ${index + 1}` })),
  heating: [
    { minutes: 0, celsius: 20 },
    { minutes: 23, celsius: 250 },
  ],
  cooling: [
    { minutes: 0, celsius: 250 },
    { minutes: 40, celsius: 50 },
  ],
});

/** A kitchen with one oven of two racks, two burners, a kettle, two pans, two boards and room enough. */
export function smallKitchen(changes: Partial<Kitchen> = {}): Kitchen {
  const burner = (id: string): Kitchen['hob']['burners'][number] => ({
    id,
    name: `burner ${id}`,
    leastPanCm: 12,
    mostPanCm: 28,
    powerW: 2000,
    efficiency: 0.8,
    boilMinutesPerLitre: { lidded: 4, open: 5 },
  });
  return {
    kind: 'kitchen',
    version: 1,
    id: 'small',
    name: 'Small kitchen',
    roomC: 20,
    ovens: [linearOven('oven')],
    appliances: [],
    hob: { heat: 'induction', burners: [burner('left'), burner('right')] },
    kettle: { id: 'kettle', name: 'kettle', mostMl: 1700, powerW: 2200, minutesPerLitre: 3 },
    pans: [
      {
        id: 'big-pan',
        name: 'big pan',
        volumeMl: 5000,
        acrossCm: 24,
        lid: true,
        insertMl: 2000,
        tiers: 2,
        staysHot: [
          { ml: 1000, minutes: 10 },
          { ml: 4000, minutes: 25 },
        ],
      },
      { id: 'small-pan', name: 'small pan', volumeMl: 2000, acrossCm: 18, lid: true },
    ],
    trays: [
      { id: 'tray-1', name: 'tray 1' },
      { id: 'tray-2', name: 'tray 2' },
    ],
    boards: [{ id: 'board', name: 'board' }],
    bowls: [{ id: 'bowl', name: 'bowl', volumeMl: 3000 }],
    tools: [],
    sink: { places: 1 },
    resting: { places: 4 },
    cooling: { places: 4 },
    drying: { places: 6 },
    fridgeL: 200,
    freezerL: 60,
    washing: { board: 2, pan: 3, tray: 3, bowl: 2, tool: 1, hands: 1 },
    power: [],
    tariff: { currency: 'EUR', electricityPerKWh: 0.3, gasPerKWh: 0.1, waterPerM3: 4 },
    ...changes,
  };
}

export const on = (minutes: number, more: Partial<Extract<Segment, { hands: 'on' }>> = {}): Segment => ({
  hands: 'on',
  work: { fixed: `PT${minutes}M` },
  ...more,
});
export const off = (
  shortest: number,
  longest = shortest,
  more: Partial<Extract<Segment, { hands: 'off' }>> = {},
): Segment => ({
  hands: 'off',
  shortest: `PT${shortest}M`,
  longest: `PT${longest}M`,
  ...more,
});

export const step = (
  id: string,
  segments: readonly Segment[],
  needs: readonly Need[] = [],
  more: Partial<Step> = {},
): Step => ({
  id,
  name: id,
  segments: [...segments],
  needs: [...needs],
  ...more,
});

export const inOven = (leastC: number, mostC = leastC, more: Partial<Extract<Need, { use: 'oven' }>> = {}): Need => ({
  use: 'oven',
  function: 'conventional',
  leastC,
  mostC,
  share: 100,
  ...more,
});

export function component(id: string, steps: readonly Step[], more: Partial<Component> = {}): Component {
  return {
    kind: 'component',
    version: 1,
    id,
    name: id,
    makes: { portions: 4, massG: 1000 },
    ingredients: [{ id: 'stuff', name: 'stuff', massG: 1000, allergens: [] }],
    steps: [...steps],
    packed: 'cooled',
    keeps: { fridge: 'P2D' },
    ...more,
  };
}

export function session(components: readonly Component[], more: Partial<Session> = {}): Session {
  return {
    kind: 'session',
    version: 1,
    id: 'test',
    name: 'Test',
    start: { local: '2026-03-08T10:00', zone: 'Europe/Lisbon' },
    longest: 'PT3H',
    kitchens: ['small'],
    people: [{ id: 'ada', name: 'Ada', can: ['adult'] }],
    dishes: components.map((each) => ({ component: each.id, portions: 4 })),
    ...more,
  };
}
