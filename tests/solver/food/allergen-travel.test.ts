/**
 * Allergens travel with boards, tools, trays, bowls, pans and the oil in them, appliances, hands, water and drips; and are kept off
 * who must not have them by order, by washing or by separate equipment. Small sessions with exactly one of these open, then with all
 * three, where the cheapest is taken. All invented.
 */
import { describe, expect, test } from 'vitest';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import type { Component } from '../../../solver/kitchen/component.ts';
import type { Kitchen } from '../../../solver/kitchen/kitchen.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import type { Session } from '../../../solver/kitchen/session.ts';
import type { Need } from '../../../solver/kitchen/step.ts';
import { component, inOven, linearOven, off, on, smallKitchen, step } from '../../support/documents.ts';
import { planned, planResult, stepOf, type Given } from '../../support/planning.ts';
import { walkThrough } from '../../support/walk-through.ts';

const EVE = { id: 'eve', name: 'Eve', avoids: ['gluten' as const], boxes: 1, eats: ['greens'] };
const things = { handles: 'things' as const };

/** Hands that touch only things, so that nothing but the needs carries anything on. */
const dish = (id: 'wheat' | 'greens', needs: readonly Need[], after: boolean, segments = [on(3, things)]): Component =>
  component(id, [step('work', segments, needs, after ? { after: [{ step: 'wheat/work' }] } : {})], {
    ingredients: [{ id: 'stuff', name: id, massG: 500, allergens: id === 'wheat' ? ['gluten'] : [] }],
  });

interface Case {
  readonly by: 'order' | 'washing' | 'fresh water' | 'separate equipment';
  /** Greens come after wheat, whatever it costs. */
  readonly after?: boolean;
  readonly kitchen?: Partial<Kitchen>;
  readonly session?: Partial<Session>;
}
interface Path {
  readonly path: string;
  readonly needs: { readonly wheat: readonly Need[]; readonly greens: readonly Need[] };
  readonly segments?: Component['steps'][number]['segments'];
  readonly cases: readonly Case[];
}

const both = (...needs: readonly Need[]) => ({ wheat: needs, greens: needs });
const noSink = { sink: { places: 0 } };
const board = (id: string) => ({ id, name: id });
const boil: Need = { use: 'pool', how: 'boil', ml: 500 };
const steam: Need = { use: 'pool', how: 'steam', tiers: 1 };
const draw: Need = { use: 'pool', how: 'draw', ml: 300, during: { from: 0, to: 0 } };
const pool = (id: string, boils = 1) => ({ id, name: id, waterMl: 2000, leastMl: 1500, boils });
const cooked = [on(1, things), off(8), on(1, things)];
const twoPots = {
  pans: ['pot-1', 'pot-2'].map((id) => ({ ...smallKitchen().pans[0]!, id, name: id })),
};
const inWater = (boils: number): Partial<Session> => ({ pools: [pool('water', boils)] });
const wet: readonly Case[] = [
  { by: 'order', session: inWater(1) },
  { by: 'fresh water', after: true, session: inWater(2) },
  { by: 'separate equipment', after: true, kitchen: twoPots, session: { pools: [pool('water'), pool('more-water')] } },
];

const PATHS: readonly Path[] = [
  {
    path: 'a board',
    needs: both({ use: 'board' }),
    cases: [
      { by: 'order', kitchen: noSink },
      { by: 'washing', after: true },
      { by: 'separate equipment', after: true, kitchen: { ...noSink, boards: [board('one'), board('two')] } },
    ],
  },
  {
    path: 'a knife',
    needs: both({ use: 'tool', kind: 'knife' }),
    cases: [
      { by: 'order', kitchen: { ...noSink, tools: [{ id: 'knife', name: 'knife', kind: 'knife' }] } },
      { by: 'washing', after: true, kitchen: { tools: [{ id: 'knife', name: 'knife', kind: 'knife' }] } },
      {
        by: 'separate equipment',
        after: true,
        kitchen: { ...noSink, tools: ['one', 'two'].map((id) => ({ id, name: id, kind: 'knife' })) },
      },
    ],
  },
  // A vessel is washed between one dish and another, so order alone does not help.
  {
    path: 'a tray',
    needs: both({ use: 'tray' }),
    cases: [
      { by: 'washing', kitchen: { trays: [{ id: 'tray', name: 'tray' }] } },
      { by: 'separate equipment', kitchen: noSink },
    ],
  },
  {
    path: 'a bowl',
    needs: both({ use: 'bowl', leastMl: 500 }),
    cases: [
      { by: 'washing' },
      {
        by: 'separate equipment',
        kitchen: { ...noSink, bowls: ['one', 'two'].map((id) => ({ id, name: id, volumeMl: 900 })) },
      },
    ],
  },
  {
    path: 'a pan and the oil in it',
    needs: both({ use: 'pan', leastMl: 1000 }, { use: 'burner', heat: 'full' }),
    cases: [
      { by: 'washing', kitchen: { pans: [smallKitchen().pans[1]!] } },
      { by: 'separate equipment', kitchen: noSink },
    ],
  },
  {
    path: 'an appliance',
    needs: both({ use: 'appliance', does: 'steam' }),
    cases: [
      { by: 'order', kitchen: { appliances: [{ id: 'one', name: 'one', does: 'steam', powerW: 800, places: 2 }] } },
      {
        by: 'separate equipment',
        after: true,
        kitchen: {
          appliances: ['one', 'two'].map((id) => ({ id, name: id, does: 'steam', powerW: 800, places: 1 })),
        },
      },
    ],
  },
  {
    path: 'hands',
    needs: both(),
    segments: [on(3)],
    cases: [
      { by: 'order', kitchen: noSink },
      { by: 'washing', after: true },
      {
        by: 'separate equipment',
        after: true,
        kitchen: noSink,
        session: {
          people: [
            { id: 'ada', name: 'Ada', can: [] },
            { id: 'bo', name: 'Bo', can: [] },
          ],
        },
      },
    ],
  },
  { path: 'water that both are boiled in', needs: both(boil), segments: cooked, cases: wet },
  {
    path: 'water that greens are steamed over',
    needs: { wheat: [boil], greens: [steam] },
    segments: cooked,
    cases: wet,
  },
  { path: 'water that wheat is steamed over', needs: { wheat: [steam], greens: [boil] }, segments: cooked, cases: wet },
  { path: 'two tiers over one water', needs: both(steam), segments: cooked, cases: wet },
  { path: 'water drawn', needs: { wheat: [boil], greens: [draw] }, segments: cooked, cases: wet },
  {
    path: 'drips in an oven',
    needs: { wheat: [inOven(200, 200, { drips: true })], greens: [inOven(200)] },
    segments: cooked,
    cases: [
      {
        by: 'order',
        session: {
          pins: [
            { component: 'wheat', step: 'work', place: 'oven-rack-1' },
            { component: 'greens', step: 'work', place: 'oven-rack-2' },
          ],
        },
      },
      { by: 'separate equipment' },
      { by: 'separate equipment', kitchen: { ovens: [linearOven('upper', 1), linearOven('lower', 1)] } },
    ],
  },
];

/** The things of a dish, the people among them only where hands touch food. */
function thingsOf(plan: Plan, id: string, hands: boolean): ReadonlySet<string> {
  const { places, segments } = stepOf(plan, `${id}/work`);
  const people = hands ? segments.flatMap(({ person }) => person ?? []) : [];
  return new Set([...places.filter(({ kind }) => kind !== 'burner').map((place) => place.id), ...people]);
}

function keptOffBy(plan: Plan, hands: boolean): Case['by'] {
  if (plan.steps.some(({ kind }) => kind === 'wash')) return 'washing';
  if (plan.steps.some(({ step: what }) => what === 'change')) return 'fresh water';
  const [wheat, greens] = [thingsOf(plan, 'wheat', hands), thingsOf(plan, 'greens', hands)];
  if (![...wheat].some((thing) => greens.has(thing))) {
    // Of racks one above another.
    const [one, other] = [stepOf(plan, 'greens/work'), stepOf(plan, 'wheat/work')];
    const inTurn = one.end <= other.start || other.end <= one.start;
    return plan.session.pins !== undefined && inTurn ? 'order' : 'separate equipment';
  }
  return 'order';
}

describe.each(PATHS)('gluten on the way of $path', ({ needs, segments = [on(3, things)], cases }) => {
  const handsMatter = needs.wheat.length === 0;
  const given = ({ after = false, kitchen = {}, session = {} }: Case): Given => ({
    components: [dish('wheat', needs.wheat, false, [...segments]), dish('greens', needs.greens, after, [...segments])],
    kitchen,
    session: { eaters: [EVE], ...session },
  });

  test.each(cases)('is kept off by $by', (each) => {
    const plan = planned(given(each));
    expect(checkPlan(plan)).toEqual([]);
    expect(walkThrough(plan)).toEqual([]);
    expect(keptOffBy(plan, handsMatter)).toBe(each.by);
    if (each.by === 'order' && each.session?.pins === undefined)
      expect(stepOf(plan, 'greens/work').start).toBeLessThanOrEqual(stepOf(plan, 'wheat/work').start);
  });

  test('is nobody’s care where nobody avoids it, and no plan is the longer for it', () => {
    const free = planned({ ...given(cases[0]!), session: { ...cases[0]!.session } });
    expect(free.finishMinutes).toBeLessThanOrEqual(planned(given(cases[0]!)).finishMinutes);
  });
});

describe('where all three ways are open, the cheapest is taken', () => {
  /** Wheat must go into a long rise early, greens come out of a soak late: greens first would hold up the wheat. */
  const wheat = component(
    'wheat',
    [
      step('work', [on(3, things)], [{ use: 'board' }]),
      step('rise', [off(10), on(1, things)], [], { after: [{ step: 'work' }] }),
    ],
    { ingredients: [{ id: 'stuff', name: 'wheat', massG: 500, allergens: ['gluten'] }] },
  );
  const greens = component('greens', [
    step('soak', [on(1, things), off(15), on(1, things)]),
    step('work', [on(3, things)], [{ use: 'board' }], { after: [{ step: 'soak' }] }),
  ]);
  const plan = (washMinutes: number, boards: number): Plan =>
    planned({
      components: [wheat, greens],
      session: { eaters: [EVE] },
      kitchen: {
        boards: Array.from({ length: boards }, (_, index) => board(`board-${index + 1}`)),
        washing: { ...smallKitchen().washing, board: washMinutes },
      },
    });

  test('a wash of two minutes, while the wheat rises', () => {
    const washed = plan(2, 1);
    expect(keptOffBy(washed, false)).toBe('washing');
    expect(washed.finishMinutes).toBe(20);
  });

  test('order, where a wash takes longer than it saves', () => {
    const ordered = plan(30, 1);
    expect(keptOffBy(ordered, false)).toBe('order');
    // Soaked by 17, greens cut by 20, wheat by 23, risen by 33 and out by 34; a wash alone takes 30 after 3 of wheat.
    expect(ordered.finishMinutes).toBe(34);
  });

  test('a second board, where there is one', () => {
    const apart = plan(2, 2);
    expect(keptOffBy(apart, false)).toBe('separate equipment');
    expect(apart.finishMinutes).toBe(20);
    expect(apart.handsOnMinutes).toBeLessThan(plan(2, 1).handsOnMinutes);
  });

  test('no plan at all is given where none of the three is open', () => {
    const result = planResult({
      components: [dish('wheat', [{ use: 'board' }], false), dish('greens', [{ use: 'board' }], true)],
      session: { eaters: [EVE] },
      kitchen: noSink,
    });
    expect(result.kind).toBe('impossible');
  });
});

describe('an allergen by way of another dish', () => {
  test('is kept off too: roots that nobody keeps free may have met flour', () => {
    const roots = component('roots', [step('work', [on(3)], [{ use: 'board' }], { after: [{ step: 'wheat/work' }] })]);
    const plan = planned({
      components: [
        dish('wheat', [], false, [on(3)]),
        roots,
        component('greens', [step('work', [on(3, things)], [{ use: 'board' }], { after: [{ step: 'roots/work' }] })]),
      ],
      session: { eaters: [EVE] },
    });
    expect(walkThrough(plan)).toEqual([]);
    expect(checkPlan(plan)).toEqual([]);
    expect(plan.steps.some(({ kind }) => kind === 'wash')).toBe(true);
    const unwashed = { ...plan, steps: plan.steps.filter(({ kind }) => kind !== 'wash') };
    expect(walkThrough(unwashed)).toEqual(['Eve is given gluten with greens']);
    expect(checkPlan(unwashed).some(({ rule, message }) => rule === 8 && /by way of board/.test(message))).toBe(true);
  });
});

describe('an allergen by way of the dish that has it', () => {
  // Found in generated sessions of 160 steps: wheat drained, then the parsley for it chopped on a board that greens came to.
  test('is kept off the board on which the rest of that dish was chopped by the same hands', () => {
    const parsleyWheat = component(
      'wheat',
      [
        step('drain', [on(3)], [], { touches: ['stuff'] }),
        step('chop', [on(3)], [{ use: 'board' }], { touches: ['parsley'], after: [{ step: 'drain' }] }),
      ],
      {
        ingredients: [
          { id: 'stuff', name: 'wheat', massG: 500, allergens: ['gluten'] },
          { id: 'parsley', name: 'parsley', massG: 50, allergens: [] },
        ],
      },
    );
    const greens = component('greens', [
      step('work', [on(3, things)], [{ use: 'board' }], { after: [{ step: 'wheat/chop' }] }),
    ]);
    const plan = planned({ components: [parsleyWheat, greens], session: { eaters: [EVE] } });
    expect(walkThrough(plan)).toEqual([]);
    expect(checkPlan(plan)).toEqual([]);
    const unwashed = { ...plan, steps: plan.steps.filter(({ kind }) => kind !== 'wash') };
    expect(walkThrough(unwashed)).toEqual(['Eve is given gluten with greens']);
  });
});

describe('the hands that fill boxes', () => {
  const session: Partial<Session> = {
    eaters: [EVE, { id: 'sam', name: 'Sam', avoids: [], boxes: 1 }],
    packing: { name: 'fill the boxes', boxes: 2, work: { fixed: 'PT4M' } },
  };
  const cooked = (without: readonly string[]): Plan => {
    const plan = planned({
      components: [dish('wheat', [], false, [on(3)]), dish('greens', [], false, [on(3)])],
      session: { ...session, packing: { ...session.packing!, without: [...without] } },
    });
    expect(checkPlan(plan)).toEqual([]);
    expect(walkThrough(plan)).toEqual([]);
    return plan;
  };

  test('are washed after wheat that goes into some of them', () => {
    const plan = cooked([]);
    expect(plan.steps.filter(({ kind }) => kind === 'wash').map(({ component: who }) => who)).toEqual(['ada']);
    const unwashed = { ...plan, steps: plan.steps.filter(({ kind }) => kind !== 'wash') };
    expect(walkThrough(unwashed).length).toBeGreaterThan(0);
    expect(checkPlan(unwashed).map(({ rule }) => rule)).toContain(8);
  });

  test('come before wheat that goes into none of them', () => {
    const plan = cooked(['wheat']);
    expect(plan.steps.filter(({ kind }) => kind === 'wash')).toEqual([]);
    expect(stepOf(plan, 'boxes/pack').end).toBeLessThanOrEqual(stepOf(plan, 'wheat/work').start);
  });
});
