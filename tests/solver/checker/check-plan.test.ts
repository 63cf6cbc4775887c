import { describe, expect, test } from 'vitest';
import * as v from 'valibot';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import { Plan } from '../../../solver/kitchen/plan.ts';
import { supper } from '../../support/supper.ts';

describe('the checker', () => {
  test('a plan worked out by hand is of the published form', () => {
    expect(v.safeParse(Plan, supper).issues).toBeUndefined();
  });

  test('a plan worked out by hand is valid', () => {
    expect(checkPlan(supper)).toEqual([]);
  });
});
