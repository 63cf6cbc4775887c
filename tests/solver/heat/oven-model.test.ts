/** The lumped oven model against its own law integrated step by step, against sums done by hand, and against what heat must obey. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { courseEnergy, heatAndHoldWorking, type Stretch } from '../../../solver/heat/oven-energy.ts';
import {
  celsiusLater,
  coolDownWorking,
  heatUpWorking,
  holdingDrawW,
  holdingWorking,
  hottestC,
  LUMPED_MODEL,
  minutesToCool,
  minutesToHeat,
  timeConstantMin,
  type OvenModel,
} from '../../../solver/heat/oven-model.ts';

const ROOM = 20;
/** Invented, with round numbers: a time constant of 9000 / 3 s = 50 min, and 20 + 2700 / 3 = 920 °C that power comes towards. */
const round: OvenModel = { capacityJPerK: 9000, lossWPerK: 3, powerW: 2700, enteringShare: 1 };

/** Ovens from a small one on a counter to a large one of a hall. Invented ranges. */
const ovens = fc.record({
  capacityJPerK: fc.double({ min: 1500, max: 40_000, noNaN: true }),
  lossWPerK: fc.double({ min: 0.5, max: 15, noNaN: true }),
  powerW: fc.double({ min: 800, max: 8000, noNaN: true }),
  enteringShare: fc.double({ min: 0.3, max: 1, noNaN: true }),
});
const celsius = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const minutesOf = (time: number | 'never'): number => (time === 'never' ? Infinity : time);

/** The law itself, in steps of a tenth of a second: C·dT = (η·P − U·(T − Tr))·dt. */
function stepByStep(model: OvenModel, fromC: number, power: 'full' | 'off', minutes: number): number {
  let now = fromC;
  for (let step = 0; step < minutes * 600; step++) {
    const heat = (power === 'full' ? model.powerW * model.enteringShare : 0) - model.lossWPerK * (now - ROOM);
    now += (heat * 0.1) / model.capacityJPerK;
  }
  return now;
}

describe('heating and cooling, by hand', () => {
  test('from 20 to 200 °C takes 50 · ln(900 / 720) = 11.157 minutes', () => {
    expect(timeConstantMin(round)).toBe(50);
    expect(hottestC(round, ROOM)).toBe(920);
    expect(minutesToHeat(round, ROOM, 20, 200)).toBeCloseTo(11.157, 3);
  });

  test('from 220 to 120 °C, switched off, takes 50 · ln 2 = 34.657 minutes', () => {
    expect(minutesToCool(round, ROOM, 220, 120)).toBeCloseTo(34.657, 3);
  });

  test('holding 200 °C draws 3 · 180 = 540 W, and 900 W where only three fifths of the power enter', () => {
    expect(holdingDrawW(round, ROOM, 200)).toBe(540);
    expect(holdingDrawW({ ...round, enteringShare: 0.6 }, ROOM, 200)).toBeCloseTo(900);
  });

  test('heating to 200 °C and holding it half an hour draws 2700 W · 11.157 min + 540 W · 30 min = 772.1 Wh', () => {
    const energy = courseEnergy(round, ROOM, 20, [
      { kind: 'heat', toC: 200 },
      { kind: 'hold', minutes: 30 },
    ]);
    expect(energy).toMatchObject({ drawnWh: expect.closeTo(772.1, 1) as number, storedWh: 450 });
  });
});

describe('heating and cooling', () => {
  test('follow the law integrated step by step', () => {
    for (const [power, fromC, minutes] of [
      ['full', 20, 12],
      ['full', 150, 7],
      ['off', 250, 20],
      ['off', 90, 90],
    ] as const) {
      expect(celsiusLater(round, ROOM, fromC, power, minutes)).toBeCloseTo(stepByStep(round, fromC, power, minutes), 1);
    }
  });

  test('are never where power cannot reach a temperature, or the room is warmer', () => {
    const weak = { ...round, powerW: 300 };
    expect(hottestC(weak, ROOM)).toBe(120);
    expect(minutesToHeat(weak, ROOM, 20, 120)).toBe('never');
    expect(minutesToCool(round, ROOM, 200, 20)).toBe('never');
    expect(courseEnergy(weak, ROOM, 20, [{ kind: 'heat', toC: 180 }])).toBe('never');
  });

  test('a hotter target is never sooner', () => {
    fc.assert(
      fc.property(ovens, celsius(20, 150), celsius(0, 150), celsius(0, 150), (oven, from, more, evenMore) => {
        const [first, second] = [from + more, from + more + evenMore].map((to) =>
          minutesOf(minutesToHeat(oven, ROOM, from, to)),
        );
        expect(second).toBeGreaterThanOrEqual(first! - 1e-9);
      }),
    );
  });

  test('more power is never later, more loss never sooner, more to heat never sooner', () => {
    const factor = fc.double({ min: 1, max: 4, noNaN: true });
    fc.assert(
      fc.property(ovens, celsius(20, 150), celsius(0, 150), factor, (oven, from, rise, f) => {
        const time = (changed: Partial<OvenModel>): number =>
          minutesOf(minutesToHeat({ ...oven, ...changed }, ROOM, from, from + rise));
        const asIs = time({});
        expect(time({ powerW: oven.powerW * f })).toBeLessThanOrEqual(asIs * (1 + 1e-9) + 1e-9);
        expect(time({ lossWPerK: oven.lossWPerK * f })).toBeGreaterThanOrEqual(asIs * (1 - 1e-9) - 1e-9);
        expect(time({ capacityJPerK: oven.capacityJPerK * f })).toBeGreaterThanOrEqual(asIs * (1 - 1e-9) - 1e-9);
      }),
    );
  });

  test('cooling never undershoots the room, and never warms', () => {
    fc.assert(
      fc.property(ovens, celsius(20, 300), fc.double({ min: 0, max: 100_000, noNaN: true }), (oven, from, minutes) => {
        const later = celsiusLater(oven, ROOM, from, 'off', minutes);
        expect(later).toBeGreaterThanOrEqual(ROOM);
        expect(later).toBeLessThanOrEqual(from + 1e-9);
      }),
    );
  });

  test('the time to a temperature is the time at which the oven has it', () => {
    fc.assert(
      fc.property(ovens, celsius(25, 280), celsius(25, 280), (oven, from, to) => {
        const time = to > from ? minutesToHeat(oven, ROOM, from, to) : minutesToCool(oven, ROOM, from, to);
        if (time === 'never') return;
        expect(celsiusLater(oven, ROOM, from, to > from ? 'full' : 'off', time)).toBeCloseTo(to, 6);
      }),
    );
  });

  test('a way made in two parts takes as long as in one', () => {
    fc.assert(
      fc.property(ovens, celsius(20, 100), celsius(0, 80), celsius(0, 80), (oven, from, a, b) => {
        const time = (x: number, y: number): number => minutesOf(minutesToHeat(oven, ROOM, x, y));
        const whole = time(from, from + a + b);
        if (whole === Infinity) return;
        expect(time(from, from + a) + time(from + a, from + a + b)).toBeCloseTo(whole, 6);
      }),
    );
  });
});

describe('energy of a course', () => {
  const stretch: fc.Arbitrary<Stretch> = fc.oneof(
    fc.record({ kind: fc.constant('heat' as const), toC: celsius(30, 280) }),
    fc.record({ kind: fc.constant('hold' as const), minutes: celsius(0, 120) }),
    fc.record({ kind: fc.constant('off' as const), minutes: celsius(0, 120) }),
  );

  test('what enters is what is stored and what is lost, to 0.1 %', () => {
    fc.assert(
      fc.property(ovens, celsius(20, 200), fc.array(stretch, { maxLength: 8 }), (oven, from, course) => {
        const energy = courseEnergy(oven, ROOM, from, course);
        // What power cannot hold cannot be held.
        if (energy === 'never' || hottestC(oven, ROOM) < 281) return;
        const { enteredWh, storedWh, lostWh } = energy;
        const turnover = enteredWh + Math.abs(storedWh) + lostWh;
        expect(Math.abs(enteredWh - storedWh - lostWh)).toBeLessThanOrEqual(0.001 * turnover + 1e-9);
      }),
    );
  });

  test('what is lost is the loss summed minute by minute', () => {
    const energy = courseEnergy(round, ROOM, 20, [
      { kind: 'heat', toC: 220 },
      { kind: 'off', minutes: 40 },
    ]);
    if (energy === 'never') throw new Error('reached');
    const heatUp = energy.minutes - 40;
    let sum = 0;
    const dt = 0.01;
    for (let t = dt / 2; t < heatUp; t += dt) sum += 3 * (celsiusLater(round, ROOM, 20, 'full', t) - ROOM) * dt;
    for (let t = dt / 2; t < 40; t += dt) sum += 3 * (celsiusLater(round, ROOM, 220, 'off', t) - ROOM) * dt;
    expect(energy.lostWh).toBeCloseTo(sum / 60, 0);
  });
});

describe('the workings', () => {
  test('give the numbers that they are of, with what they were made from', () => {
    const heatUp = heatUpWorking(round, ROOM, 20, 200, LUMPED_MODEL)!;
    expect(heatUp.value).toBe(minutesToHeat(round, ROOM, 20, 200));
    expect(heatUp.inputs.map(({ symbol }) => symbol)).toEqual(['C', 'U', 'P', 'η', 'Tr', 'T₁', 'T₂']);
    expect(coolDownWorking(round, ROOM, 220, 120, LUMPED_MODEL)!.value).toBeCloseTo(34.657, 3);
    expect(holdingWorking(round, ROOM, 200, LUMPED_MODEL).value).toBe(540);
    expect(heatAndHoldWorking(round, ROOM, 200, 30, LUMPED_MODEL)!.value).toBeCloseTo(772.1, 1);
  });

  test('are none where the answer is never', () => {
    expect(heatUpWorking({ ...round, powerW: 0 }, ROOM, 20, 200, LUMPED_MODEL)).toBeNull();
    expect(coolDownWorking(round, ROOM, 200, 10, LUMPED_MODEL)).toBeNull();
  });
});
