import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import { Plan } from '../../../solver/kitchen/plan.ts';
import { recipeStep, shift, stepOf, type BrokenPlan } from '../../support/break-plan.ts';
import { withTotals } from '../../support/plan-builder.ts';
import { supper } from '../../support/supper.ts';
import { handsAndPlaces } from './broken-plans/hands-and-places.ts';
import { heatAndWater } from './broken-plans/heat-and-water.ts';
import { soilAndSafety } from './broken-plans/soil-and-safety.ts';
import { stepsAndOrder } from './broken-plans/steps-and-order.ts';

function changed(change: (plan: Plan) => void, keepTotals = false): Plan {
  const plan = structuredClone(supper);
  change(plan);
  return keepTotals ? plan : withTotals(plan);
}

describe('the checker', () => {
  test('a plan worked out by hand is of the published form', () => {
    expect(v.safeParse(Plan, supper).issues).toBeUndefined();
  });

  test('a plan worked out by hand is valid', () => {
    expect(checkPlan(supper)).toEqual([]);
  });

  test('a plan that the checker accepts may start from a cold oven where the step allows it', () => {
    const plan = changed((each) => {
      const [need] = recipeStep(each, 'chicken/roast').needs;
      if (need?.use === 'oven') need.coldStart = true;
      each.ovens[0]!.settings[0]!.minute = 4;
      shift(stepOf(each, 'oven/preheat'), 4);
    });
    expect(checkPlan(plan)).toEqual([]);
  });

  test('a piece of work that was shorter than the least is accepted where the cooks have told of it', () => {
    const short = (steps: NonNullable<Plan['lived']>['steps']): Plan =>
      changed((each) => {
        const [first, second] = [stepOf(each, 'salad/chop~1'), stepOf(each, 'salad/chop~2')];
        first.end = first.segments[0]!.end = 12;
        second.start = second.segments[0]!.start = 15;
        each.lived = { now: 14, steps };
      });
    expect(checkPlan(short([{ step: 'salad/chop', minutes: [8] }]))).toEqual([]);
    expect(checkPlan(short([])).map(({ rule }) => rule)).toEqual([1]);
  });

  test('a dish for the table is in time from the allowance on', () => {
    for (const at of ['PT49M', 'PT54M']) {
      const plan = changed((each) => {
        each.session.table = { at, dishes: ['chicken'], othersMayRunPast: true };
      });
      expect(checkPlan(plan)).toEqual([]);
    }
  });

  test('floury hands may lift greens that they do not touch', () => {
    const flouryHands = soilAndSafety.find(({ name }) => name === 'hands go from flour to greens unwashed')!;
    const plan = changed((each) => {
      flouryHands.change(each);
      for (const id of ['greens/steam', 'millet/soak'])
        for (const segment of recipeStep(each, id).segments) if (segment.hands === 'on') segment.handles = 'things';
    });
    expect(checkPlan(plan)).toEqual([]);
  });

  test('an earlier day is counted by the clocks of the zone', () => {
    // The clocks go forward in the night: one hour less passes from 21:00 to the start.
    const hourLess = (days: number, clock: string): number =>
      days * 1440 + Number(clock.slice(0, 2)) * 60 - 600 + (days < 0 ? 60 : 0);
    const plan = changed((each) => {
      each.ahead[0]!.start = -720;
      each.components.find(({ id }) => id === 'millet')!.ahead![0]!.longest = 'PT13H';
    });
    expect(checkPlan(plan, { wallOffset: hourLess })).toEqual([]);
    expect(checkPlan(plan)).not.toEqual([]);
  });

  const broken: readonly BrokenPlan[] = [...stepsAndOrder, ...handsAndPlaces, ...heatAndWater, ...soilAndSafety];
  test.each(broken)('rule $rule alone is broken by a plan in which $name', ({ rule, change, keepTotals }) => {
    const violations = checkPlan(changed(change, keepTotals));
    expect(
      [...new Set(violations.map((each) => each.rule))],
      violations.map((each) => `${each.rule}: ${each.message}`).join('\n'),
    ).toEqual([rule]);
    for (const { message } of violations) expect(message).toMatch(/^.+\.$/);
  });

  test('every rule has plans broken in just its way', () => {
    expect([...new Set(broken.map(({ rule }) => rule))].sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });
});
