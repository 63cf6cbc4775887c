import { describe, expect, test } from 'vitest';
import { stepFigures } from '../../../solver/answers/step-figures.ts';
import { recoveryOfNeed } from '../../../solver/heat/oven-load.ts';
import { planSession } from '../../../solver/translate/plan-session.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../support/demo-documents.ts';

const result = planSession({
  session: byId(demoSessions(), 'harbour-sunday'),
  kitchen: byId(demoKitchens(), 'harbour-one-oven'),
  components: demoComponents(),
  seed: 1,
  effort: 20_000,
});
if (result.kind !== 'planned') throw new Error(JSON.stringify(result));
const { plan } = result;
const figures = stepFigures(plan);
const all = Object.entries(figures).flatMap(([id, list]) => list.map((each) => ({ id, ...each })));

describe("the figures of a plan's steps", () => {
  test('name steps of the plan, and each number of a step once', () => {
    const ids = new Set(plan.steps.map(({ id }) => id));
    expect(Object.keys(figures).filter((id) => !ids.has(id))).toEqual([]);
    for (const list of Object.values(figures)) expect(new Set(list.map(({ label }) => label)).size).toBe(list.length);
  });

  test('have for each stretch of work by hand the minutes that are planned for it', () => {
    const byHand = all.filter(({ working }) => working.name === 'Minutes of work by hand');
    expect(byHand.length).toBeGreaterThan(20);
    for (const { id, label, working } of byHand) {
      const steps = plan.steps.filter((step) => step.id === id || step.id.startsWith(`${id.replace(/~\d+$/, '')}~`));
      const lengths = steps.flatMap(({ segments }) =>
        segments.filter(({ hands, check }) => hands === 'on' && check !== true).map(({ start, end }) => end - start),
      );
      const whole = lengths.reduce((sum, length) => sum + length, 0);
      expect([...lengths, whole], `${id}: ${label}`).toContain(working.value);
    }
  });

  test('tell of everything that heat decides: the boil, the oven, the afterheat, cooling, and the limits of safety', () => {
    const labels = all.map(({ label }) => label).join('\n');
    for (const word of [
      'to the boil',
      'heating up',
      'afterheat',
      'cooling',
      'read in the middle',
      'into the fridge within',
    ])
      expect(labels).toContain(word);
  });

  test('have a source and inputs that are numbers', () => {
    for (const { working, id } of all) {
      expect(working.source.cite, id).not.toBe('');
      expect(
        working.inputs.every(({ value }) => Number.isFinite(value)),
        `${id}: ${working.name}`,
      ).toBe(true);
      expect(Number.isFinite(working.value), `${id}: ${working.name}`).toBe(true);
    }
  });
});

test('what an oven makes up for a cold load is told at the setting at which a plan adds its minutes', () => {
  const roast = planSession({
    session: byId(demoSessions(), 'weeknight-roast'),
    kitchen: byId(demoKitchens(), 'lane-cottage'),
    components: demoComponents(),
    seed: 1,
    effort: 20_000,
  });
  if (roast.kind !== 'planned') throw new Error(JSON.stringify(roast));
  const { steps, kitchen, components } = roast.plan;
  const planned = byId(steps, 'mustard-pork/roast');
  const { working } = stepFigures(roast.plan)['mustard-pork/roast']!.find(({ label }) =>
    label.startsWith('made up for by the oven'),
  )!;
  const recipe = byId(byId(components, 'mustard-pork').steps, 'roast');
  const way = planned.alternative === 0 ? recipe : recipe.alternatives![planned.alternative - 1]!;
  const oven = kitchen.ovens[0]!;
  const need = way.needs.find((each) => each.use === 'oven')!;
  if (need.use !== 'oven') throw new Error('a roast is in an oven');
  const added = recoveryOfNeed(oven, kitchen.roomC, {
    ...need,
    load: { ...need.load!, massG: byId(components, 'mustard-pork').makes.massG },
  });
  expect(Math.ceil(working.value)).toBe(added);
});
