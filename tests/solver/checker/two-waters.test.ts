/** A pot of water used twice: fresh water between wheat and nuts, or the same water back on the heat. All invented. */
import { describe, expect, test } from 'vitest';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import type { Component } from '../../../solver/kitchen/component.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import type { Session } from '../../../solver/kitchen/session.ts';
import { drop, stepOf } from '../../support/break-plan.ts';
import { off, on, place, planOf, step, water, withTotals } from '../../support/plan-builder.ts';
import { kitchen } from '../../support/supper.ts';

const boiled = (id: string, allergen: 'gluten' | 'nuts'): Component => ({
  kind: 'component',
  version: 1,
  id,
  name: id,
  makes: { portions: 2, massG: 500 },
  ingredients: [{ id: 'main', name: id, allergens: [allergen] }],
  steps: [
    {
      id: 'boil',
      name: `boil the ${id}`,
      segments: [
        { hands: 'on', work: { fixed: 'PT1M' } },
        { hands: 'off', shortest: 'PT10M' },
        { hands: 'on', work: { fixed: 'PT1M' } },
      ],
      needs: [{ use: 'pool', how: 'boil', ml: 600 }],
      readyToEat: true,
    },
  ],
  packed: 'cooled',
  keeps: { fridge: 'P2D' },
});

const components = [boiled('pasta', 'gluten'), boiled('chestnuts', 'nuts')];
const eater = (id: string, avoids: 'gluten' | 'nuts', eats: string) => ({
  id,
  name: id,
  avoids: [avoids],
  boxes: 1,
  eats: [eats],
});
const session: Session = {
  kind: 'session',
  version: 1,
  id: 'two-waters',
  name: 'two waters',
  start: { local: '2026-03-08T10:00', zone: 'Europe/Lisbon' },
  longest: 'PT90M',
  kitchens: ['small-kitchen'],
  people: [
    { id: 'ada', name: 'Ada', can: [] },
    { id: 'bo', name: 'Bo', can: [] },
  ],
  dishes: components.map(({ id }) => ({ component: id, portions: 2 })),
  pools: [{ id: 'pot-water', name: 'the pot of water', waterMl: 3000, leastMl: 2400, boils: 2 }],
  eaters: [eater('eve', 'gluten', 'chestnuts'), eater('sam', 'nuts', 'pasta')],
};

/** 3 L take 12 min from cold, 6 back to the boil while still hot. */
function twice(second: 'fresh' | 'again', eaters = session.eaters!): Plan {
  const fresh = second === 'fresh';
  const [back, hot] = fresh ? [27, 39] : [26, 32];
  return planOf(
    { session: { ...session, eaters }, kitchen, components },
    {
      steps: [
        water('pot-water', 'fill', 'ada', 0, 1),
        step(
          'pasta/boil',
          2,
          [on('ada', 13, 14), off(14, 24), on('ada', 24, 25)],
          [place('pool', 'pot-water', 13, 25, { how: 'boil', boil: 1, amount: 600 })],
        ),
        fresh ? water('pot-water', 'change', 'bo', 25, 27) : water('pot-water', 'reboil', 'bo', 25, 26),
        step(
          'chestnuts/boil',
          2,
          [on('bo', hot, hot + 1), off(hot + 1, hot + 11), on('bo', hot + 11, hot + 12)],
          [place('pool', 'pot-water', hot, hot + 12, { how: 'boil', boil: 2, amount: 600 })],
        ),
        water('pot-water', 'empty', 'bo', hot + 12, hot + 13),
      ],
      pools: [
        {
          pool: 'pot-water',
          pan: 'pot',
          from: 0,
          until: hot + 13,
          boils: [
            { boil: 1, water: 'cold', burner: 'big', onHeat: 1, boilsAt: 13, offHeat: 25, hotUntil: 40 },
            {
              boil: 2,
              water: second,
              burner: 'big',
              onHeat: back,
              boilsAt: hot,
              offHeat: hot + 12,
              hotUntil: hot + 12,
            },
          ],
          level: [{ minute: 1, ml: 3000 }],
        },
      ],
    },
  );
}

const rulesOf = (plan: Plan): readonly number[] => [...new Set(checkPlan(withTotals(plan)).map(({ rule }) => rule))];

describe('a pot of water used twice', () => {
  test('with fresh water between wheat and nuts is valid', () => {
    expect(checkPlan(twice('fresh'))).toEqual([]);
  });

  test('with the same water back on the heat is valid where nobody minds', () => {
    expect(checkPlan(twice('again', []))).toEqual([]);
  });

  test('with the same water breaks the rule of soil where somebody does', () => {
    expect(rulesOf(twice('again'))).toEqual([8]);
  });

  test('with fresh water that nobody fetches breaks the rule of water', () => {
    const plan = twice('fresh');
    drop(plan, 'pot-water/change');
    expect(rulesOf(plan)).toEqual([7]);
  });

  test('with fresh water that boils as soon as hot water breaks the rule of water', () => {
    const plan = twice('fresh');
    plan.pools[0]!.boils[1]!.boilsAt = 33;
    expect(rulesOf(plan)).toEqual([7]);
  });

  test('put back on the heat when it is cold takes as long as from cold', () => {
    const plan = twice('again', []);
    plan.pools[0]!.boils[0]!.hotUntil = 25;
    expect(rulesOf(plan)).toEqual([7]);
  });

  test('with a second boil where the session allows one breaks the rule of water', () => {
    const plan = twice('fresh');
    plan.session.pools![0]!.boils = 1;
    expect(rulesOf(plan)).toEqual([7]);
  });

  test('with a food left in the water that is poured away breaks the rule of water', () => {
    const plan = twice('fresh');
    const change = stepOf(plan, 'pot-water/change');
    Object.assign(change, water('pot-water', 'change', 'bo', 24, 26));
    expect(rulesOf(plan)).toEqual([7]);
  });
});
