/** A working holds what its formula gives, so that a person who works it out by hand comes to the value. */
import { describe, expect, test } from 'vitest';
import { kettleOrPan } from '../../../solver/water/kettle-or-pan.ts';
import {
  boilWorking,
  boilingPointWorking,
  dipWorking,
  simmerWorking,
  kettleWorking,
  soakWorking,
  steamWorking,
} from '../../../solver/water/workings.ts';
import type { Working } from '../../../solver/working.ts';
import { kitchen } from '../../support/supper.ts';

const at = (working: Working, symbol: string): number =>
  working.inputs.find((each) => each.symbol === symbol)?.value ?? NaN;
const burner = kitchen.hob.burners[0]!;
const pan = kitchen.pans[0]!;

describe('by hand from the inputs of the working', () => {
  test('time to the boil', () => {
    const w = boilWorking(kitchen, burner, pan, 2000, true);
    const kJ = (at(w, 'm') * at(w, 'c') + at(w, 'C')) * (at(w, 'Tₛ') - at(w, 'T₀'));
    expect((kJ * 1000) / (at(w, 'η') * at(w, 'P') - at(w, 'L')) / 60 / w.value).toBeCloseTo(1, 2);
  });
  test('time in the kettle', () => {
    const w = kettleWorking(kitchen, kitchen.kettle!, 1500);
    const kJ = at(w, 'm') * at(w, 'c') * (at(w, 'Tₛ') - at(w, 'T₀'));
    expect((kJ * 1000) / (at(w, 'η') * at(w, 'P')) / 60 / w.value).toBeCloseTo(1, 2);
  });
  test('the draw at the boil', () => {
    const w = simmerWorking(kitchen, burner, pan, true, 'boil');
    expect(at(w, 'L') / at(w, 'η')).toBeCloseTo(w.value, 6);
  });
  test('how long it is hot enough to soak in', () => {
    const w = soakWorking(kitchen, pan, 3000);
    const kJ = (at(w, 'm') * at(w, 'c') + at(w, 'C')) * (at(w, 'Tₛ') - at(w, 'Tₑ'));
    expect((kJ * 1000) / (at(w, 'g') * at(w, 'L')) / 60 / w.value).toBeCloseTo(1, 1);
  });
  test('time to boil again', () => {
    const w = dipWorking(kitchen, burner, pan, 3000, { massG: 500, specificHeat: 3.6, celsius: 20 }, true);
    const kJ = at(w, 'm') * at(w, 'c') * (at(w, 'Tₛ') - at(w, 'T₀'));
    expect((kJ * 1000) / (at(w, 'Q') - at(w, 'L')) / 60).toBeCloseTo(w.value, 6);
  });
  test('water boiled away', () => {
    const w = steamWorking(kitchen, burner, pan, 10);
    expect(((at(w, 'Q') - at(w, 'L')) / 1000 / at(w, 'r')) * at(w, 't') * 60 * 1000).toBeCloseTo(w.value, 6);
  });
  test('the boiling point', () => {
    const w = boilingPointWorking({ altitudeM: 1524 });
    expect(1730.63 / (8.07131 - Math.log10(at(w, 'p'))) - 233.426).toBeCloseTo(w.value, 9);
  });
});

describe('kettle against pan', () => {
  const gas = { ...kitchen, hob: { ...kitchen.hob, heat: 'gas' as const } };
  const { efficiency: _, ...plain } = { ...burner, powerW: 2500 };

  // source: D. MacKay, How much is inside hot water?, parts 1 and 6: a litre on gas takes about 0.3 kWh, in the kettle 0.11 kWh and
  // then 0.06 to 0.07 kWh of gas to bring it back to the boil in the pan
  test('on gas the kettle takes less energy and then a little gas, as measured: 110 Wh in the kettle, to 10 %', () => {
    const { ways, thriftiest } = kettleOrPan(gas, plain, pan, kitchen.kettle!, 1000);
    const kettleWh = ways.find(({ way }) => way === 'kettle')!.wattHours;
    expect(Math.abs(kettleWh / 110 - 1)).toBeLessThan(0.1);
    expect(ways.find(({ way }) => way === 'pan')!.wattHours).toBeGreaterThan(240);
    expect(thriftiest.way).toBe('kettle-then-pan');
  });

  test('with cheap gas the pan may still cost less', () => {
    const cheap = { ...gas, tariff: { ...gas.tariff, electricityPerKWh: 0.4, gasPerKWh: 0.04 } };
    expect(kettleOrPan(cheap, plain, pan, kitchen.kettle!, 1000).cheapest.way).toBe('pan');
  });
});
