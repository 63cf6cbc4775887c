/** Labels of the boxes of a supper worked out by hand. All invented. */
import { describe, expect, test } from 'vitest';
import { boxContents } from '../../../solver/boxes/box-contents.ts';
import { boxLabels, LABEL_CAUTION, listOf } from '../../../solver/boxes/labels.ts';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import { ALLERGENS, type AllergenMark } from '../../../solver/kitchen/values.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { componentOf, drop } from '../../support/break-plan.ts';
import { withTotals } from '../../support/plan-builder.ts';
import { supper } from '../../support/supper.ts';

const dayOf = (): string => '2026-03-08';
function labels(change: (plan: Plan) => void = () => undefined) {
  const plan = structuredClone(supper);
  change(plan);
  return { plan: withTotals(plan), all: boxLabels(plan, dayOf) };
}
const eve = (all: ReturnType<typeof boxLabels>) => all.filter(({ eater }) => eater?.id === 'eve');

describe('the labels of a plan', () => {
  test('are one for each box, those of whoever avoids something first, the rest for whom it may concern', () => {
    const { all } = labels();
    expect(all.map(({ eater, number, of }) => [eater?.name ?? null, number, of])).toEqual([
      ['Eve', 1, 2],
      ['Eve', 2, 2],
      [null, 1, 2],
      [null, 2, 2],
    ]);
  });

  test('say what is in the box, with its weight: a portion of each dish', () => {
    const [label] = labels().all;
    expect(label!.dishes).toEqual([
      { component: 'greens', name: 'greens', massG: 250 },
      { component: 'millet', name: 'millet', massG: 250 },
    ]);
    expect(label!.massG).toBe(500);
  });

  test('say a smaller weight where there are fewer portions than boxes, and none where a recipe tells none', () => {
    const fewer = labels((plan) => (plan.session.dishes.find((dish) => dish.component === 'greens')!.portions = 2));
    expect(eve(fewer.all)[0]!.massG).toBe(250 + 125);
    const silent = labels((plan) => (componentOf(plan, 'greens').makes.massG = 0));
    expect(eve(silent.all)[0]!.massG).toBeNull();
  });

  test('are kept free of what their eater avoids, and stress what the others contain', () => {
    const { all } = labels();
    expect(eve(all)[0]).toMatchObject({ keptFree: ['gluten'], notFor: [], contains: { eu: [], us: [] } });
    expect(eve(all)[0]!.mayHaveMet.eu).toEqual([]);
    expect(all[2]!.contains).toEqual({ eu: ['cereals containing gluten'], us: ['wheat'] });
  });

  test('name the cereals of the gluten where all of them are known', () => {
    const { all } = labels((plan) => {
      for (const id of ['croutons', 'pasta', 'rolls']) componentOf(plan, id).ingredients[0]!.cereals = ['rye'];
    });
    expect(all[2]!.contains).toEqual({ eu: ['cereals containing gluten (rye)'], us: [] });
  });

  test('say what a box may have met in the kitchen, and that it is not for whom that would hurt', () => {
    // Ada’s hands lifted the pasta and are not washed before the boxes are filled.
    const { plan, all } = labels((each) => drop(each, 'wash/ada.1'));
    expect(eve(all)[0]!.mayHaveMet).toEqual({ eu: ['cereals containing gluten'], us: ['wheat'] });
    expect(eve(all)[0]!.notFor).toEqual(['gluten']);
    expect(checkPlan(plan).map(({ rule }) => rule)).toEqual([8]);
  });

  test('tell of flour that came by way of another dish, as the checker does', () => {
    // Bo’s floury hands put the squash in, and Ada takes it out before she lifts the millet.
    const { plan, all } = labels((each) => drop(each, 'wash/ada.2'));
    expect(eve(all)[0]!.notFor).toEqual(['gluten']);
    expect(checkPlan(plan).map(({ message }) => message)).toEqual([
      'millet may meet gluten at 10:28 by way of ada, and must stay free of it.',
    ]);
  });

  test('say of boxes filled later what those before them held', () => {
    const { all } = labels((plan) => {
      componentOf(plan, 'millet').ingredients[0]!.allergens = ['sesame'];
      plan.session.eaters!.push({ id: 'sam', name: 'Sam', avoids: [], boxes: 1, eats: ['pasta'] });
    });
    expect(all.map(({ eater }) => eater?.id)).toEqual(['eve', 'eve', 'sam', undefined]);
    expect(all[2]!.mayHaveMet.eu).toEqual(['sesame']);
  });

  test('count the days from when each part was cooked, and go by the part that keeps the shortest', () => {
    const days = labels((plan) => {
      componentOf(plan, 'greens').keeps = { fridge: 'P2D', freezer: 'P30D' };
      componentOf(plan, 'millet').keeps = { fridge: 'P4D', freezer: 'P90D' };
    });
    expect(eve(days.all)[0]).toMatchObject({
      cookedOn: '2026-03-08',
      useBy: '2026-03-10',
      frozenUseBy: '2026-04-07',
    });
    expect(eve(labels().all)[0]).toMatchObject({ useBy: '2026-03-10', frozenUseBy: null });
  });

  test('are none without packing', () => {
    const { all } = labels((plan) => delete plan.session.packing);
    expect(all).toEqual([]);
    expect(boxContents({ ...supper, session: { ...supper.session, packing: undefined } })).toEqual([]);
  });

  test('come with the caution that a home kitchen is no guarantee', () => {
    expect(LABEL_CAUTION).toMatch(/no guarantee for someone with a severe allergy/);
  });
});

describe('a list of allergens', () => {
  test('is in the order of the Annex, in words, with the nine of the United States beside it', () => {
    const marks = new Set<AllergenMark>(['sesame', 'gluten', 'wheat', 'barley', 'celery']);
    expect(listOf(marks)).toEqual({
      eu: ['cereals containing gluten (wheat, barley)', 'celery', 'sesame'],
      us: ['sesame', 'wheat'],
    });
    expect(listOf(new Set(ALLERGENS)).eu).toHaveLength(14);
  });
});
