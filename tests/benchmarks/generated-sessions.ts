/**
 * Kitchen sessions of a given number of steps, for the growth of the engine's effort: dishes of the demo over and over, each time under
 * another name and with other portions, in a room of as many of the demo's kitchens as the steps need, and a cook for every twenty-five steps.
 */
import type { Component } from '../../solver/kitchen/component.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import type { Session } from '../../solver/kitchen/session.ts';
import { sessionToProblem } from '../../solver/translate/session-to-problem.ts';
import { seeded } from '../support/seeded.ts';

export interface GeneratedSession {
  readonly session: Session;
  readonly kitchen: Kitchen;
  readonly components: readonly Component[];
}

/** What sessions are made of. */
export interface Stock {
  readonly kitchen: Kitchen;
  /** Dishes that the kitchen can cook. */
  readonly components: readonly Component[];
}

const STEPS_PER_KITCHEN = 50;
const STEPS_PER_COOK = 25;
const usesPool = ({ steps }: Component): boolean => steps.some(({ needs }) => needs.some(({ use }) => use === 'pool'));

/**
 * Makes a session.
 *
 * @param stock the kitchen and the dishes to take from, in a random order anew each time round
 * @param steps about how many steps it has, 10–400; the last dish may take it a few past that
 * @param seed any integer; the same steps and seed give the same session
 * @throws Error where the session is refused, which would be a fault of this generator
 */
export function generatedSession(stock: Stock, steps: number, seed: number): GeneratedSession {
  const chance = seeded(seed * 104_729 + steps);
  const kitchens = Math.max(1, Math.round(steps / STEPS_PER_KITCHEN));
  const kitchen = roomOf(stock.kitchen, kitchens);
  const components: Component[] = [];
  const portions: number[] = [];
  let round: Component[] = [];
  const made = (): GeneratedSession => ({
    session: sessionOf(components, portions, kitchen, { steps, seed, pools: kitchens }),
    kitchen,
    components,
  });
  // A dish has at least the steps it is written with; only near the end is the whole worth translating.
  let written = 0;
  while (written < 0.6 * steps || stepsOf(made()) < steps) {
    if (round.length === 0) round = chance.shuffle(stock.components);
    const next = round.pop()!;
    // One pot of water serves three dishes.
    if (usesPool(next) && components.filter(usesPool).length >= 3 * kitchens) continue;
    components.push({ ...next, id: `${next.id}-${components.length + 1}` });
    portions.push(chance.int(2, 6));
    written += next.steps.length;
  }
  return made();
}

/** The dishes that a kitchen can cook, without those that need another dish. */
export function stockOf(kitchen: Kitchen, components: readonly Component[]): Stock {
  const alone = components.filter(
    (component) =>
      !component.steps.some(({ after }) => after?.some(({ step }) => step.includes('/'))) &&
      sessionToProblem(oneDish(kitchen, component)).ok,
  );
  return { kitchen, components: alone };
}

function oneDish(kitchen: Kitchen, component: Component): GeneratedSession {
  const session = sessionOf([component], [4], kitchen, { steps: 10, seed: 0, pools: 1 });
  return { session, kitchen, components: [component] };
}

function stepsOf(generated: GeneratedSession): number {
  const translated = sessionToProblem(generated);
  if (!translated.ok) throw new Error(JSON.stringify(translated.faults));
  return translated.translation.steps.length;
}

/** A kitchen several times over as one room: everything in it as often, under names of its own. */
function roomOf(first: Kitchen, count: number): Kitchen {
  const homes = Array.from({ length: count }, () => first);
  const every = <T extends { readonly id: string; readonly name: string }>(of: (home: Kitchen) => readonly T[]): T[] =>
    homes.flatMap((home, k) =>
      of(home).map((each) => ({ ...each, id: `${each.id}-${k + 1}`, name: `${each.name} ${k + 1}` })),
    );
  const places = (of: (home: Kitchen) => number): number => count * of(first);
  return {
    ...first,
    id: 'room',
    name: 'Room of kitchens (invented)',
    ovens: every(({ ovens }) => ovens).map((oven) => ({
      ...oven,
      racks: oven.racks.map((rack) => ({ ...rack, id: `${rack.id}-of-${oven.id}` })),
    })),
    appliances: every(({ appliances }) => appliances),
    hob: { heat: first.hob.heat, burners: every(({ hob }) => hob.burners) },
    pans: every(({ pans }) => pans),
    trays: every(({ trays }) => trays),
    boards: every(({ boards }) => boards),
    bowls: every(({ bowls }) => bowls),
    tools: every(({ tools }) => tools),
    sink: { places: places(({ sink }) => sink.places) },
    resting: { places: places(({ resting }) => resting.places) },
    cooling: { places: places(({ cooling }) => cooling.places) },
    drying: { places: places(({ drying }) => drying.places) },
    fridgeL: places(({ fridgeL }) => fridgeL),
    freezerL: places(({ freezerL }) => freezerL),
    power: [],
  };
}

function sessionOf(
  components: readonly Component[],
  portions: readonly number[],
  kitchen: Kitchen,
  { steps, seed, pools }: { readonly steps: number; readonly seed: number; readonly pools: number },
): Session {
  const people = Math.max(1, Math.round(steps / STEPS_PER_COOK));
  return {
    kind: 'session',
    version: 1,
    id: `generated-${steps}-${seed}`,
    name: 'Generated session (invented)',
    start: { local: '2026-03-08T10:00', zone: 'Europe/Lisbon' },
    longest: 'PT480M',
    kitchens: [kitchen.id],
    people: Array.from({ length: people }, (_, k) => ({ id: `cook-${k + 1}`, name: `Cook ${k + 1}`, can: ['adult'] })),
    dishes: components.map(({ id }, k) => ({ component: id, portions: portions[k]! })),
    pools: Array.from({ length: pools }, (_, k) => ({
      id: `water-${k + 1}`,
      name: `pot of water ${k + 1}`,
      waterMl: 4200,
      leastMl: 3000,
      salted: true,
    })),
    eaters: [
      {
        id: 'eve',
        name: 'Eve',
        avoids: ['gluten'],
        boxes: 2,
        eats: components
          .filter(({ ingredients }) => ingredients.every(({ allergens }) => !allergens.includes('gluten')))
          .map(({ id }) => id),
      },
    ],
    clearing: { work: { fixed: 'PT5M' } },
  };
}
