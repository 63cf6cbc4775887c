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

  describe('a piece of work shorter than the least', () => {
    /** The first of two pieces of 4 minutes ends after 2, or the second begins 2 later; the cooks told at minute 14. */
    const short = (piece: 1 | 2, told: NonNullable<Plan['lived']>['steps'], now = 14): readonly number[] => {
      const plan = changed((each) => {
        const [first, second] = [stepOf(each, 'salad/chop~1'), stepOf(each, 'salad/chop~2')];
        if (piece === 1) first.end = first.segments[0]!.end = first.start + 2;
        else second.start = second.segments[0]!.start = second.end - 2;
        each.lived = { now, steps: told };
      });
      return checkPlan(plan).map(({ rule }) => rule);
    };
    const { start, end } = stepOf(structuredClone(supper), 'salad/chop~1');
    const second = stepOf(structuredClone(supper), 'salad/chop~2');
    const whole = { 1: 2 + second.end - second.start, 2: 2 + end - start };

    test('is accepted where the cooks told of this very piece', () => {
      expect(short(1, [{ step: 'salad/chop', minutes: [whole[1]], pieces: [2] }])).toEqual([]);
    });

    test('is refused where they told of the other piece, or of another length, or of none', () => {
      expect(short(2, [{ step: 'salad/chop', minutes: [whole[2]], pieces: [end - start] }])).toEqual([1]);
      expect(short(1, [{ step: 'salad/chop', minutes: [whole[1]], pieces: [3] }])).toEqual([1]);
      expect(short(1, [{ step: 'salad/chop', minutes: [whole[1]] }])).toEqual([1]);
    });

    test('is refused where it was still to come when they told', () => {
      const told = [{ step: 'salad/chop', minutes: [whole[1]], pieces: [2] }];
      expect(short(1, told, start - 1)).toEqual([1]);
    });
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
