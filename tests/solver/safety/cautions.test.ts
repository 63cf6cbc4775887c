/** Cautions of the invented supper, and of changed copies of it. */
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { cautionsOf, type Caution } from '../../../solver/safety/cautions.ts';
import { rulesInForce } from '../../../solver/safety/rules-in-force.ts';
import { componentOf, recipeStep } from '../../support/break-plan.ts';
import { supper } from '../../support/supper.ts';

const words = (plan: Plan, id: Caution['id']): string | undefined =>
  cautionsOf(plan).find((caution) => caution.id === id)?.words;
const changed = (change: (plan: Plan) => void): Plan => {
  const plan = structuredClone(supper);
  change(plan);
  return plan;
};
const under = (authority: string): Plan =>
  changed((plan) => {
    const inForce = rulesInForce(authority);
    if (inForce.ok) plan.rules = inForce.rules;
  });

describe('the cautions of every plan', () => {
  test('say that a probe thermometer decides, that local rules come first, and that a severe allergy has no guarantee', () => {
    const bare = changed((plan) => {
      plan.components = [];
    });
    expect(words(bare, 'probe')).toContain('A probe thermometer decides');
    expect(words(bare, 'local-rules')).toContain('Local food-safety rules');
    expect(words(bare, 'allergies')).toContain('no guarantee for someone with a severe allergy');
    expect(cautionsOf(bare).map(({ id }) => id)).toEqual(['probe', 'local-rules', 'allergies']);
  });

  test('name the authority, or that nobody has picked one', () => {
    expect(words(supper, 'local-rules')).toContain(
      'Nobody has picked an authority, so the strictest built-in rules hold',
    );
    expect(words(under('united-kingdom'), 'local-rules')).toContain('“United Kingdom” (Food Standards Agency and NHS');
  });
});

describe('what a plan holds brings its caution', () => {
  test('cooking through: the plan has the reading and claims no temperature', () => {
    expect(words(supper, 'probe')).toContain('it does not claim that a temperature is reached');
  });
  test('raw poultry: hands, board, knife, and no washing of the bird', () => {
    expect(words(supper, 'raw')).toBe(
      'After raw poultry, wash hands with soap for 20 s or longer, and board and knife in hot soapy water. Raw poultry is not washed: it splashes.',
    );
  });
  test('food kept after it was hot: the time to the fridge by the rules in force', () => {
    expect(words(supper, 'cooling')).toContain('within 90 min of the heat');
    expect(words(supper, 'cooling')).toContain('to 21 °C within 2 h and to 5 °C within 6 h');
    expect(words(supper, 'cooling')).toContain('The fridge is at 4 °C or below');
    expect(words(under('united-states'), 'cooling')).toContain('within 120 min of the heat');
  });
  test('boxes that nobody puts away', () => {
    const plan = changed(({ session }) => {
      delete session.packing!.putAway;
    });
    expect(words(plan, 'not-put-away')).toMatch(
      /^Nothing in this plan puts .*chicken.* into the fridge: .* within 90 min/,
    );
    expect(words(plan, 'cooling')).toBeUndefined();
    expect(words(supper, 'not-put-away')).toBeUndefined();
  });
  test('components of no storage class', () => {
    const plan = changed((copy) => {
      for (const component of copy.components) component.storage = 'cooked-poultry';
      delete componentOf(copy, 'greens').storage;
    });
    expect(words(plan, 'keeping')).toBe(
      'greens: no storage class that the rules know, so counted as cooked leftovers, 2 days in the fridge at most.',
    );
  });
  test('reheating, by the rules in force', () => {
    expect(words(under('united-kingdom'), 'reheating')).toBe(
      'Reheat once, to 70 °C for 2 min, or 75 °C for 30 s in the core.',
    );
  });
  test('hot holding', () => {
    expect(words(supper, 'hot-holding')).toBeUndefined();
    const plan = changed((copy) => {
      recipeStep(copy, 'chicken/rest').hotHold = { leastC: 63, longest: 'PT30M' };
    });
    expect(words(plan, 'hot-holding')).toContain('63 °C or hotter');
  });
  test('beans with a toxin, and pulses that name none', () => {
    const plan = changed((copy) => {
      Object.assign(componentOf(copy, 'greens').ingredients[0]!, { group: 'pulse', name: 'red beans' });
    });
    expect(words(plan, 'pulses')).toContain('Of red beans the recipes name none');
    componentOf(plan, 'greens').ingredients[0]!.toxin = { kind: 'kidney-beans' };
    expect(words(plan, 'pulses')).toBeUndefined();
    expect(words(plan, 'toxin')).toContain('soaking for 5 h, fresh water, and a full boil for 30 min');
  });
  test('rules without a published source', () => {
    const plan = under('united-kingdom');
    plan.rules!.rules[0]!.source.standing = 'invented';
    expect(words(plan, 'unsourced')).toMatch(/^No published source stands behind the rules core-/);
    expect(words(supper, 'unsourced')).toBeUndefined();
  });
});
