/** Fitting an oven to readings: the readings are made from known ovens, so that it is known what must come out. All invented. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calibrateOven, fitWorking, type CalibratedOven } from '../../../solver/heat/oven-calibration.ts';
import { celsiusLater, timeConstantMin, type OvenModel } from '../../../solver/heat/oven-model.ts';
import { readingFaults, type OvenReadings, type SoundReadings } from '../../../solver/heat/oven-readings.ts';
import { typicalOven } from '../../../solver/heat/typical-oven.ts';

const ROOM = 20;
const home: CalibratedOven = { volumeL: 65, kind: 'electric', powerW: 2500 };

/** An oven by its time constant (min) and its heat capacity (J/K). */
const ovenOf = (tau: number, capacityJPerK: number): OvenModel => ({
  capacityJPerK,
  lossWPerK: capacityJPerK / (tau * 60),
  powerW: home.powerW,
  enteringShare: 1,
});
const ovens = fc
  .tuple(fc.double({ min: 15, max: 120, noNaN: true }), fc.double({ min: 3000, max: 20_000, noNaN: true }))
  .map(([tau, capacity]) => ovenOf(tau, capacity));

/** What one would read of an oven, each reading out by its own error. */
function readingsOf(
  oven: OvenModel,
  toHeat: readonly number[],
  afterOff: readonly { readonly fromC: number; readonly minutes: number }[],
  errors: readonly number[] = [],
): SoundReadings {
  const error = (index: number): number => errors[index] ?? 0;
  return {
    toHeat: toHeat.map((minutes, index) => ({
      minutes,
      celsius: celsiusLater(oven, ROOM, ROOM, 'full', minutes) + error(index),
    })),
    afterOff: afterOff.map(({ fromC, minutes }, index) => ({
      fromC,
      minutes,
      celsius: celsiusLater(oven, ROOM, fromC, 'off', minutes) + error(toHeat.length + index),
    })),
  };
}
const heatTimes = fc.uniqueArray(fc.integer({ min: 3, max: 15 }), { minLength: 1, maxLength: 4 });
const offTimes = fc.uniqueArray(
  fc.record({ fromC: fc.integer({ min: 150, max: 250 }), minutes: fc.integer({ min: 5, max: 40 }) }),
  { minLength: 1, maxLength: 4, selector: ({ fromC, minutes }) => `${fromC} ${minutes}` },
);

describe('an oven fitted to readings', () => {
  test('is the oven that gave them, where they are exact', () => {
    fc.assert(
      fc.property(ovens, heatTimes, offTimes, (oven, heat, off) => {
        const fit = calibrateOven(home, ROOM, readingsOf(oven, heat, off));
        expect(timeConstantMin(fit.model) / timeConstantMin(oven)).toBeCloseTo(1, 4);
        expect(fit.model.capacityJPerK / oven.capacityJPerK).toBeCloseTo(1, 4);
        expect(fit.rmsK).toBeLessThan(0.01);
        expect([fit.capacityFrom, fit.timeConstantFrom]).toEqual(['readings', 'readings']);
      }),
    );
  });

  test('misses readings with errors by no more than the errors, on the mean of squares', () => {
    // The oven that gave the readings misses them by the errors; the least squares cannot be more.
    fc.assert(
      fc.property(
        ovens,
        heatTimes,
        offTimes,
        fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 8, maxLength: 8 }),
        (oven, heat, off, errors) => {
          const readings = readingsOf(oven, heat, off, errors);
          fc.pre(readingFaults(readings, ROOM, home).length === 0);
          const used = errors.slice(0, heat.length + off.length);
          const noise = Math.sqrt(used.reduce((sum, each) => sum + each * each, 0) / used.length);
          expect(calibrateOven(home, ROOM, readings).rmsK).toBeLessThanOrEqual(noise + 0.001);
        },
      ),
    );
  });

  test('is nearly right with readings that are out by up to three degrees', () => {
    // A fall over 30 min of at least a fifth shows the time constant to about 3 K / (fall); the rise shows the capacity likewise.
    fc.assert(
      fc.property(
        fc.double({ min: 25, max: 70, noNaN: true }),
        fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 5, maxLength: 5 }),
        (tau, errors) => {
          const oven = ovenOf(tau, 8000);
          const off = [20, 30, 40].map((minutes) => ({ fromC: 220, minutes }));
          const { model } = calibrateOven(home, ROOM, readingsOf(oven, [6, 10], off, errors));
          expect(Math.abs(timeConstantMin(model) / tau - 1)).toBeLessThan(0.1);
          expect(Math.abs(model.capacityJPerK / 8000 - 1)).toBeLessThan(0.1);
        },
      ),
    );
  });

  test('does not depend on the order of the readings', () => {
    fc.assert(
      fc.property(ovens, heatTimes, offTimes, fc.boolean(), (oven, heat, off, both) => {
        const readings = readingsOf(oven, heat, off, [1, -2, 0.5, 3, -1, 2, -0.5, 1.5]);
        const turned = {
          toHeat: [...readings.toHeat].reverse(),
          afterOff: both ? [...readings.afterOff].reverse() : readings.afterOff,
        };
        expect(calibrateOven(home, ROOM, turned).model).toEqual(calibrateOven(home, ROOM, readings).model);
      }),
    );
  });

  test('is the typical oven where there are no readings', () => {
    const fit = calibrateOven(home, ROOM, {});
    expect(fit.model.capacityJPerK).toBeCloseTo(typicalOven(65, 'electric', 2500).capacityJPerK, 9);
    expect(fit.model.lossWPerK).toBeCloseTo(typicalOven(65, 'electric', 2500).lossWPerK, 9);
    expect([fit.capacityFrom, fit.timeConstantFrom, fit.readings]).toEqual(['typical', 'typical', []]);
  });

  test('meets one reading of heating up closely, and says that the rest leans on the typical oven', () => {
    const fit = calibrateOven(home, ROOM, { toHeat: [{ minutes: 12, celsius: 200 }] });
    expect(fit.readings[0]!.modelC).toBeCloseTo(200, 3);
    expect(timeConstantMin(fit.model)).toBeCloseTo(timeConstantMin(typicalOven(65, 'electric', 2500)), 3);
    expect([fit.capacityFrom, fit.timeConstantFrom]).toEqual(['both', 'both']);
  });

  test('meets one reading after switching off, with the typical heat capacity', () => {
    const fit = calibrateOven(home, ROOM, { afterOff: [{ fromC: 200, minutes: 20, celsius: 140 }] });
    // 180 K fall to 120 K in 20 min: 20 / ln 1.5 = 49.33 min.
    expect(timeConstantMin(fit.model)).toBeCloseTo(49.33, 2);
    expect(fit.model.capacityJPerK).toBeCloseTo(typicalOven(65, 'electric', 2500).capacityJPerK, 6);
    expect([fit.capacityFrom, fit.timeConstantFrom]).toEqual(['typical', 'readings']);
  });

  test('shows its two numbers with the readings they are from', () => {
    const fit = calibrateOven(home, ROOM, {
      toHeat: [{ minutes: 12, celsius: 200 }],
      afterOff: [{ fromC: 200, minutes: 20, celsius: 140 }],
    });
    const { capacity, loss } = fitWorking(fit, ROOM);
    expect(capacity.value).toBe(fit.model.capacityJPerK);
    expect(loss.value).toBe(fit.model.lossWPerK);
    expect(capacity.source.standing).toBe('reading');
    expect(capacity.inputs.map(({ value }) => value)).toEqual(expect.arrayContaining([200, 140]));
  });
});

const impossible: readonly { name: string; readings: OvenReadings; path: string; mend: RegExp }[] = [
  {
    name: 'hotter after switching off',
    readings: { afterOff: [{ fromC: 200, minutes: 10, celsius: 205 }] },
    path: 'afterOff[0].celsius',
    mend: /thermostat overshoots/,
  },
  {
    name: 'below the room',
    readings: { afterOff: [{ fromC: 200, minutes: 60, celsius: 18 }] },
    path: 'afterOff[0].celsius',
    mend: /temperature of the room/,
  },
  {
    name: 'switched off colder than the room',
    readings: { afterOff: [{ fromC: 15, minutes: 60, celsius: 14 }] },
    path: 'afterOff[0].fromC',
    mend: /switched off/,
  },
  {
    name: 'no minutes after switching off',
    readings: { afterOff: [{ fromC: 200, minutes: 0, celsius: 190 }] },
    path: 'afterOff[0].minutes',
    mend: /wait/,
  },
  {
    name: 'heated to less than the room',
    readings: { toHeat: [{ minutes: 5, celsius: 20 }] },
    path: 'toHeat[0].celsius',
    mend: /correct/,
  },
  {
    name: 'hot at once',
    readings: { toHeat: [{ minutes: 0, celsius: 200 }] },
    path: 'toHeat[0].minutes',
    mend: /minutes/,
  },
  {
    // 65 L of air take about 78 J/K: 180 K need 14 kJ, and 2500 W give 3 kJ in 1.2 s.
    name: 'hotter than the air could be by then',
    readings: { toHeat: [{ minutes: 0.02, celsius: 200 }] },
    path: 'toHeat[0].minutes',
    mend: /rated power/,
  },
  {
    name: 'never reached: no hotter later on',
    readings: {
      toHeat: [
        { minutes: 10, celsius: 180 },
        { minutes: 20, celsius: 180 },
      ],
    },
    path: 'toHeat[1].celsius',
    mend: /thermostat had reached/,
  },
  {
    name: 'warmer again after switching off',
    readings: {
      afterOff: [
        { fromC: 200, minutes: 10, celsius: 160 },
        { fromC: 200, minutes: 20, celsius: 165 },
      ],
    },
    path: 'afterOff[1].celsius',
    mend: /correct one/,
  },
];

describe('a reading that cannot be', () => {
  test.each(impossible)('$name is a fault with its place and its mend', ({ readings, path, mend }) => {
    const faults = readingFaults(readings, ROOM, home);
    expect(faults.map((fault) => fault.path)).toEqual([path]);
    expect(faults[0]!.mend).toMatch(mend);
  });

  test('is left out of the fit, and the rest is used', () => {
    const sound = { toHeat: [{ minutes: 12, celsius: 200 }], afterOff: [{ fromC: 200, minutes: 20, celsius: 140 }] };
    const fit = calibrateOven(home, ROOM, {
      ...sound,
      afterOff: [...sound.afterOff, { fromC: 200, minutes: 10, celsius: 230 }],
    });
    expect(fit.model).toEqual(calibrateOven(home, ROOM, sound).model);
    expect(fit.readings).toHaveLength(2);
  });

  test('is told with every other one at once', () => {
    const faults = impossible.flatMap(({ readings }) => readings.afterOff ?? []).slice(0, 3);
    expect(readingFaults({ afterOff: faults }, ROOM, home)).toHaveLength(3);
  });
});
