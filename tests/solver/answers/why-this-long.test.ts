import { describe, expect, it } from 'vitest';
import { withOwnReasons } from '../../../solver/answers/reasons-of-plan.ts';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { Plan as PlanSchema } from '../../../solver/kitchen/plan.ts';
import { planSession } from '../../../solver/translate/plan-session.ts';
import * as v from 'valibot';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../support/demo-documents.ts';
import { component, inOven, off, on, step } from '../../support/documents.ts';
import { planned, stepOf } from '../../support/planning.ts';
import { randomSession } from '../../support/random-session.ts';
import { supper } from '../../support/supper.ts';

/** What is true of the chain of any plan. */
function expectChain(plan: Plan): void {
  const chain = plan.bindingChain!;
  expect(chain.length).toBeGreaterThan(0);
  for (const link of chain) {
    expect(link.from).toBeLessThanOrEqual(link.until);
    expect(`${link.name} ${link.because}`).not.toMatch(/undefined|\bthe the\b|@|#/);
    if (link.step === undefined) continue;
    const own = stepOf(plan, link.step);
    expect(link.from).toBeGreaterThanOrEqual(own.start);
    expect(link.until).toBeLessThanOrEqual(own.end);
    // What binds has no time to spare, if it binds from its start.
    if (link.from === own.start && plan.tiers[0]!.id === 'finish') expect(own.slack).toBe(0);
  }
  if (plan.tiers[0]!.id === 'finish') expect(chain.at(-1)!.until).toBe(plan.finishMinutes);
}

describe('why this long', () => {
  it('of one dish in the oven: it heats, then the dish is in it', () => {
    // All numbers invented; the oven of the small kitchen takes 18 min to 200 °C.
    const roots = component('roots', [
      step('peel', [on(5)], [{ use: 'board' }]),
      step('roast', [on(1), off(40), on(1)], [inOven(200)], { after: [{ step: 'peel' }] }),
    ]);
    const plan = planned({ components: [roots] });
    expect(plan.bindingChain!.map(({ step: id, from, until, why }) => [id, from, until, why])).toEqual([
      ['oven/preheat', 0, 18, 'start'],
      ['roots/roast', 18, 60, 'heat'],
    ]);
    expect(stepOf(plan, 'roots/peel').slack! + stepOf(plan, 'roots/peel').start).toBe(13);
    expect(stepOf(plan, 'roots/roast').slack).toBe(0);
  });

  it('of two dishes at two temperatures: the oven turns between them', () => {
    // The oven of the small kitchen, named oven oven, goes from 180 to 220 °C in 4 min; the other way takes 8.
    const dish = (id: string, celsius: number) =>
      component(id, [step('roast', [on(1), off(20), on(1)], [inOven(celsius)])]);
    const plan = planned({ components: [dish('roots', 180), dish('fish', 220)] });
    expect(plan.bindingChain!.map(({ name, because }) => `${name}: ${because}`).slice(2)).toEqual([
      'the oven oven heats to 220 °C: for what goes in next',
      'roast (fish): waits for the oven oven at 220 °C',
    ]);
  });

  it('of two dishes and one person: the hands go from one to the other', () => {
    const dish = (id: string, minutes: number) => component(id, [step('cut', [on(minutes)], [])]);
    const plan = planned({ components: [dish('leeks', 7), dish('beets', 9)] });
    expect(plan.bindingChain!.map(({ why }) => why)).toEqual(['start', 'hands']);
    expect(plan.bindingChain![1]!.because).toBe('waits for Ada’s hands');
    expect(plan.finishMinutes).toBe(16);
  });

  it('of a dish that may not wait: it follows, and the gap tells by how much', () => {
    const dish = component('rice', [
      step('soak', [on(1), off(30), on(1)]),
      step('boil', [on(12)], [], { after: [{ step: 'soak', shortest: 'PT5M' }] }),
    ]);
    const plan = planned({ components: [dish] });
    expect(plan.bindingChain!.map(({ from, until, because }) => [from, until, because])).toEqual([
      [0, 32, 'begins with the session'],
      [37, 49, 'follows soak by 5 min or more'],
    ]);
  });

  it.each(demoSessions().map((session) => [session.id, session] as const))(
    'has a chain and slack in every plan of the demo, which stays valid: %s',
    (_id, session) => {
      const result = planSession({
        session,
        kitchen: byId(demoKitchens(), session.kitchens[0]!),
        components: demoComponents(),
        seed: 1,
        effort: 30_000,
      });
      if (result.kind !== 'planned') throw new Error(result.kind);
      expect(v.is(PlanSchema, result.plan)).toBe(true);
      expect(checkPlan(result.plan)).toEqual([]);
      expectChain(result.plan);
      expect(result.plan.steps.filter((each) => each.slack === undefined).map((each) => each.id)).toEqual([]);
    },
  );

  it('has a chain in plans of random sessions', () => {
    let told = 0;
    for (let seed = 0; seed < 25; seed++) {
      const result = planSession({ ...randomSession(seed, 1), seed: 1, effort: 3_000 });
      if (result.kind !== 'planned' || result.plan.tiers[0]!.value === 0) continue;
      expectChain(result.plan);
      told++;
    }
    expect(told).toBeGreaterThan(12);
  });

  it('is not told of a plan that keeps the rules but not the margins: its afterheat is used two minutes early', () => {
    expect(checkPlan(supper)).toEqual([]);
    expect(withOwnReasons(supper)).toBeNull();
  });
});
