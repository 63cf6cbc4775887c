/** A cold load, the afterheat and the curves of an oven in its kitchen, by hand and by what must hold. Ovens and loads are invented. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { afterheatSpan, afterheatWorking } from '../../../solver/heat/afterheat.ts';
import { holdingW, ovenHeat, spareW } from '../../../solver/heat/oven-heat.ts';
import { airJPerK, recoveryMinutes, recoveryOfNeed, recoveryWorking } from '../../../solver/heat/oven-load.ts';
import { celsiusAfter, coolMinutes, heatMinutes } from '../../../solver/heat/oven-tables.ts';
import type { Oven } from '../../../solver/kitchen/kitchen.ts';
import { inOven, linearOven } from '../../support/documents.ts';

const ROOM = 20;
const { heating: _, cooling: __, holdingW: ___, ...bare } = linearOven('oven');
/** 180 K in 12 min and from 220 to 120 °C in 35 min. */
const read: Oven = {
  ...bare,
  readings: { toHeat: [{ minutes: 12, celsius: 200 }], afterOff: [{ fromC: 220, minutes: 35, celsius: 120 }] },
};
const none = { massG: 0, fromC: ROOM, trayG: 0 };

describe('the air in an oven', () => {
  // source: density 1.204 kg/m³ and specific heat 1.006–1.007 kJ/(kg·K) of dry air at 20 °C and 1 atm, as in common property tables
  // (Çengel, Heat and Mass Transfer, table A-15): 1.21 kJ/(m³·K).
  test('takes 1.21 J for each litre and kelvin at 20 °C', () => {
    expect(airJPerK(1, 20)).toBeCloseTo(1.204 * 1.007, 2);
  });
});

describe('a cold load', () => {
  const heat = ovenHeat(linearOven('oven'), ROOM);

  test('by hand: air 14 kJ, a kilogram of tray 90 kJ and of food 398 kJ at 2100 W to spare take 4.0 min', () => {
    expect(spareW(heat, 200)).toBe(3000 - 900);
    const joules = airJPerK(65, 20) * 180 + 1000 * 0.5 * 180 + 1000 * 4.19 * 95;
    const load = { massG: 1000, fromC: 5, trayG: 1000 };
    expect(recoveryMinutes(heat, 200, load)).toBeCloseTo(joules / 2100 / 60, 9);
    expect(recoveryMinutes(heat, 200, load)).toBeCloseTo(3.99, 2);
    const working = recoveryWorking(heat, 200, load)!;
    expect(working.value).toBe(recoveryMinutes(heat, 200, load));
    // Its formula, done again with its inputs.
    const of = Object.fromEntries(working.inputs.map(({ symbol, value }) => [symbol, value])) as Record<string, number>;
    const owed =
      (of['Ca']! + of['mt']! * of['ct']!) * (of['T']! - of['Tr']!) +
      of['m']! * (of['c']! * (Math.min(of['T']!, 100) - of['T₀']!) + of['L']!);
    expect(owed / (60 * of['η']! * (of['P']! - of['Ph']!))).toBeCloseTo(working.value, 9);
  });

  test('that is frozen takes 334 kJ a kilogram more to thaw', () => {
    // source: latent heat of fusion of water, 334 kJ/kg, physics data table.
    const [frozen, cold] = [-1e-9, 0].map((fromC) => recoveryMinutes(heat, 200, { massG: 1000, fromC, trayG: 0 }));
    expect(frozen! - cold!).toBeCloseTo(334_000 / 2100 / 60, 6);
  });

  test('of nothing but an opened door costs seconds', () => {
    expect(recoveryMinutes(heat, 200, none) * 60).toBeLessThan(10);
  });

  test('rounds up to whole minutes at the highest setting of the window, and is none where the step tells of none', () => {
    const need = inOven(150, 205, { load: { massG: 1000, fromC: 5, trayG: 1000 } });
    if (need.use !== 'oven') throw new Error('an oven');
    expect(recoveryOfNeed(linearOven('oven'), ROOM, need)).toBe(4);
    const { load: ____, ...without } = need;
    expect(recoveryOfNeed(linearOven('oven'), ROOM, without)).toBe(0);
  });

  test('is never made up for by an oven that spends all its power on holding the temperature', () => {
    const weak = ovenHeat({ ...linearOven('oven'), powerW: 900 }, ROOM);
    expect(recoveryMinutes(weak, 200, none)).toBe(Infinity);
    expect(recoveryWorking(weak, 200, none)).toBeNull();
  });

  test('heavier, colder, in a hotter or a weaker oven never takes less time', () => {
    const grams = fc.integer({ min: 0, max: 8000 });
    fc.assert(
      fc.property(
        grams,
        grams,
        fc.integer({ min: -18, max: 60 }),
        fc.integer({ min: 100, max: 230 }),
        (m, more, from, at) => {
          const warm = ovenHeat(read, ROOM);
          const load = { massG: m, fromC: from, trayG: 500 };
          const asIs = recoveryMinutes(warm, at, load);
          expect(recoveryMinutes(warm, at, { ...load, massG: m + more })).toBeGreaterThanOrEqual(asIs);
          expect(recoveryMinutes(warm, at, { ...load, fromC: from - 10 })).toBeGreaterThanOrEqual(asIs);
          expect(recoveryMinutes(warm, at + 10, load)).toBeGreaterThanOrEqual(asIs);
        },
      ),
    );
  });
});

describe('the heat of an oven in its kitchen', () => {
  test('is its own tables where it has them', () => {
    const heat = ovenHeat(linearOven('oven'), ROOM);
    expect([heatMinutes(heat, 20, 200), coolMinutes(heat, 250, 50)]).toEqual([18, 40]);
    expect(holdingW(heat, 200)).toBe(900);
    expect(heat.afterheatGuardK).toBe(0);
  });

  test('is the model through its readings where it has none', () => {
    const heat = ovenHeat(read, ROOM);
    expect(heatMinutes(heat, 20, 200)).toBeCloseTo(12, 3);
    expect(coolMinutes(heat, 220, 120)).toBeCloseTo(35, 3);
    expect(celsiusAfter(heat, 220, null, 35)).toBeCloseTo(120, 3);
    // 35 / ln 2 = 50.5 min; C = U·τ, so that holding takes what the rise of the cold oven gives.
    const { capacityJPerK, lossWPerK } = heat.fit().model;
    expect(capacityJPerK / lossWPerK / 60).toBeCloseTo(50.5, 1);
    expect(holdingW(heat, 200)).toBeCloseTo(lossWPerK * 180, 6);
  });

  test('is that of a typical oven of its volume where nothing is known, with a wider guard', () => {
    const heat = ovenHeat(bare, ROOM);
    expect(heat.fit().capacityFrom).toBe('typical');
    expect(heat.afterheatGuardK).toBeGreaterThan(ovenHeat(read, ROOM).afterheatGuardK);
  });

  test('changes its temperature by the minute as by the hour', () => {
    const settings = fc.option(fc.integer({ min: 50, max: 250 }), { nil: null });
    fc.assert(
      fc.property(
        fc.constantFrom(linearOven('oven'), read, bare),
        fc.integer({ min: 20, max: 250 }),
        settings,
        fc.integer({ min: 1, max: 40 }),
        (oven, from, setting, minutes) => {
          const heat = ovenHeat(oven, ROOM);
          let now = from;
          for (let minute = 0; minute < minutes; minute++) now = celsiusAfter(heat, now, setting, 1);
          expect(now).toBeCloseTo(celsiusAfter(heat, from, setting, minutes), 6);
        },
      ),
    );
  });

  test('is at a temperature after the minutes that it takes to get there', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(linearOven('oven'), read, bare),
        fc.integer({ min: 50, max: 250 }),
        fc.integer({ min: 50, max: 250 }),
        (oven, from, to) => {
          const heat = ovenHeat(oven, ROOM);
          const minutes = to > from ? heatMinutes(heat, from, to) : coolMinutes(heat, from, to);
          if (minutes === Infinity) return;
          expect(celsiusAfter(heat, from, to > from ? to : null, minutes)).toBeCloseTo(to, 6);
        },
      ),
    );
  });
});

describe('the afterheat', () => {
  const heat = ovenHeat(read, ROOM);

  test('by hand: from 200 °C, guarded by 2 K, it is down to 160 °C after 50.5 · ln(182/140) and leaves 120 °C after 50.5 · ln(178/100)', () => {
    const span = afterheatSpan(heat, { leastC: 200, mostC: 200 }, { leastC: 120, mostC: 160 }, 2)!;
    expect(span.from).toBeCloseTo(50.494 * Math.log(182 / 140), 2);
    expect(span.until).toBeCloseTo(50.494 * Math.log(178 / 100), 2);
    expect(afterheatWorking(heat, 200, 120, 2)!.value).toBeCloseTo(span.until, 9);
  });

  test('is none in an oven that is too cool when it is switched off, or by the guard might be', () => {
    expect(afterheatSpan(heat, { leastC: 121, mostC: 121 }, { leastC: 120, mostC: 160 }, 2)).toBeNull();
    expect(afterheatWorking(heat, 121, 120, 2)).toBeNull();
  });

  test('stays in its window all through, however much within the guard the oven is out', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(linearOven('oven'), read, bare),
        fc.integer({ min: 150, max: 230 }),
        fc.integer({ min: 60, max: 140 }),
        fc.integer({ min: 20, max: 60 }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (oven, offC, leastC, wide, out) => {
          const warm = ovenHeat(oven, ROOM);
          const window = { leastC, mostC: leastC + wide };
          const span = afterheatSpan(warm, { leastC: offC, mostC: offC }, window);
          if (span === null) return;
          const startC = offC + out * warm.afterheatGuardK;
          for (const minutes of [span.from, span.until]) {
            const celsius = celsiusAfter(warm, startC, null, minutes);
            expect(celsius).toBeGreaterThanOrEqual(window.leastC - 1e-6);
            expect(celsius).toBeLessThanOrEqual(window.mostC + 1e-6);
          }
        },
      ),
    );
  });
});
