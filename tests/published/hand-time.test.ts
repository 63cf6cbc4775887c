/**
 * Source: Hunter, Tang, Spies, Predictive Modeling of Labor Requirements for Preparation of a "Bioregenerative" Diet, SAE Technical Paper
 * 2003-01-2542 (abstract read): minutes of preparation are a fixed part plus a part that grows with the quantity, so larger batches take
 * less for each kilogram. The minutes of a demo's recipes are invented.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { workMinutes } from '../../solver/kitchen/scaling.ts';
import { workWorking } from '../../solver/kitchen/work-working.ts';
import { demoComponents } from '../support/demo-documents.ts';

const works = demoComponents().flatMap((component) =>
  component.steps.flatMap(({ segments }) =>
    segments.flatMap((segment) => (segment.hands === 'on' ? [{ component, work: segment.work }] : [])),
  ),
);

test('work by hand grows with the amount, and by less for each portion the more there are', () => {
  fc.assert(
    fc.property(fc.constantFrom(...works), fc.integer({ min: 1, max: 200 }), ({ component, work }, portions) => {
      const once = workMinutes(work, component, portions);
      const twice = workMinutes(work, component, 2 * portions);
      expect(twice).toBeGreaterThanOrEqual(once);
      expect(twice).toBeLessThanOrEqual(2 * once);
    }),
  );
});

test('the working of work by hand comes to the minutes that are planned', () => {
  fc.assert(
    fc.property(fc.constantFrom(...works), fc.integer({ min: 1, max: 200 }), ({ component, work }, portions) => {
      const working = workWorking(work, component, portions);
      const value = (symbol: string): number => working.inputs.find((each) => each.symbol === symbol)?.value ?? 0;
      const sum = value('a') + value('b') * value('m') + value('c') * value('n') + value('d') * value('p');
      expect(working.value).toBe(Math.max(1, Math.ceil(sum - 1e-9)));
      expect(working.value).toBe(workMinutes(work, component, portions));
    }),
  );
});
