/** Energy and weight on the labels of a plan's boxes. The plan is invented. */
import { expect, test } from 'vitest';
import { boxLabels } from '../../../solver/boxes/labels.ts';
import type { Ingredient } from '../../../solver/kitchen/component.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { componentOf } from '../../support/break-plan.ts';
import { supper } from '../../support/supper.ts';

const lentils: Ingredient = { id: 'lentils', name: 'lentils', massG: 1000, allergens: [], food: 'lentils-dry' };

function firstLabel(change: (plan: Plan) => void = () => undefined) {
  const plan = structuredClone(supper);
  change(plan);
  return boxLabels(plan, () => '2026-03-08')[0]!;
}
const plain = firstLabel();

test('a box whose dishes name no foods tells no energy', () => {
  expect(plain.energy).toBeNull();
});

test('a box tells the energy of what is counted, and how much that is', () => {
  const label = firstLabel((plan) => {
    for (const { component } of plain.dishes)
      componentOf(plan, component).ingredients.push({ ...lentils, id: 'counted', massG: 100 });
  });
  expect(label.energy!.kJ).toBeGreaterThan(0);
  expect(label.energy!.countedShare).toBeGreaterThan(0);
  expect(label.energy!.countedShare).toBeLessThanOrEqual(1);
});

test('a recipe that does not say its weight has that of its yields, where all are known', () => {
  const first = plain.dishes[0]!.component;
  const label = firstLabel((plan) => {
    const component = componentOf(plan, first);
    component.makes.massG = 0;
    component.ingredients = [{ ...lentils, becomes: 'lentils-cooked' }];
  });
  const portions = supper.components.find(({ id }) => id === first)!.makes.portions;
  // Solids of lentils dry 91.74, boiled 30.36 g per 100 g: USDA SR28 NDB 16069 and 16070.
  expect(label.dishes[0]!.massG).toBe(Math.round((1000 * 91.74) / 30.36 / portions));
});
