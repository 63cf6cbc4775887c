import { describe, expect, test } from 'vitest';
import type { Step } from '../../../solver/kitchen/step.ts';
import { lastHeat } from '../../../solver/safety/last-heat.ts';
import { component, off, on, step } from '../../support/documents.ts';

const HOLDING_C = 63;
const after = (id: string, needs: Step['needs'], ...before: string[]): Step => ({
  ...step(id, [on(1), off(10), on(1)]),
  needs,
  ...(before.length === 0 ? {} : { after: before.map((each) => ({ step: each })) }),
});
const last = (...steps: readonly Step[]): readonly string[] =>
  lastHeat(component('dish', [...steps]), HOLDING_C).map(({ id }) => id);

const roast: Step['needs'] = [{ use: 'oven', function: 'conventional', leastC: 180, mostC: 200, share: 50 }];
const dry: Step['needs'] = [{ use: 'oven', function: 'conventional', leastC: 50, mostC: 60, share: 50 }];

describe('the last heat of food', () => {
  test('is the last of the steps that heat it', () => {
    expect(last(after('boil', [{ use: 'burner', heat: 'full' }]), after('roast', roast, 'boil'))).toEqual(['roast']);
  });

  test('is no oven that is cooler than food is held hot at', () => {
    expect(last(after('roast', roast), after('dry', dry, 'roast'))).toEqual(['roast']);
  });

  test('is an appliance where the recipe says that food comes hot out of it, and no mixer', () => {
    const mix = after('mix', [{ use: 'appliance', does: 'mixer' }], 'roast');
    const warm = after('warm', [{ use: 'appliance', does: 'microwave', heats: true }], 'roast');
    expect(last(after('roast', roast), mix)).toEqual(['roast']);
    expect(last(after('roast', roast), warm)).toEqual(['warm']);
  });

  test('is each part’s own where parts are cooked apart', () => {
    expect(last(after('roast', roast), after('boil', [{ use: 'pool', how: 'boil', ml: 500 }]))).toEqual([
      'roast',
      'boil',
    ]);
  });
});
