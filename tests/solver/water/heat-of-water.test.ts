/** What holds of water whatever the pan, the heat and the room: order and conservation. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boiledAwayMl, heatPot, keepBoiling } from '../../../solver/water/boil-model.ts';
import { dipOf } from '../../../solver/water/dip.ts';
import { celsiusOfPot, coolPotMinutes, soakMinutes } from '../../../solver/water/pot-cooling.ts';
import { potOf } from '../../../solver/water/pot.ts';
import { potLoss, surroundingsOf } from '../../../solver/water/pot-loss.ts';
import { condensedMl, steam, steamHeatW } from '../../../solver/water/steam.ts';

const pan = fc.record({
  volumeMl: fc.integer({ min: 500, max: 20_000 }),
  acrossCm: fc.integer({ min: 12, max: 36 }),
  lid: fc.constant(true),
  metal: fc.constantFrom('steel', 'aluminium', 'cast-iron', 'copper', 'glass'),
});
const place = fc.record({ roomC: fc.integer({ min: 5, max: 35 }), altitudeM: fc.integer({ min: 0, max: 4000 }) });
const ml = fc.integer({ min: 100, max: 10_000 });
const heatW = fc.integer({ min: 50, max: 6000 });

describe('heating a pot', () => {
  test('what is given is what is stored and lost, to 0.1 %', () => {
    fc.assert(
      fc.property(pan, place, ml, heatW, fc.boolean(), (shape, where, water, watts, lidded) => {
        const around = surroundingsOf(where);
        const heat = heatPot(potOf(shape), water, around.tapC, around.boilsC, watts, around, lidded);
        if (heat.minutes === Infinity) return;
        expect(Math.abs(heat.inKJ - heat.storedKJ - heat.lostKJ)).toBeLessThanOrEqual(0.001 * heat.inKJ);
      }),
    );
  });

  test('more water never boils sooner, and more heat never later', () => {
    fc.assert(
      fc.property(pan, place, ml, ml, heatW, heatW, fc.boolean(), (shape, where, water, more, watts, extra, lidded) => {
        const around = surroundingsOf(where);
        const minutes = (volume: number, heat: number) =>
          heatPot(potOf(shape), volume, around.tapC, around.boilsC, heat, around, lidded).minutes;
        expect(minutes(water + more, watts)).toBeGreaterThanOrEqual(minutes(water, watts));
        expect(minutes(water, watts + extra)).toBeLessThanOrEqual(minutes(water, watts));
      }),
    );
  });

  test('a lid never costs time, energy or water', () => {
    fc.assert(
      fc.property(pan, place, ml, heatW, (shape, where, water, watts) => {
        const around = surroundingsOf(where);
        const heat = (lidded: boolean) =>
          heatPot(potOf(shape), water, around.tapC, around.boilsC, watts, around, lidded);
        const [on, off] = [heat(true), heat(false)];
        expect(on.minutes).toBeLessThanOrEqual(off.minutes);
        expect(on.inKJ).toBeLessThanOrEqual(off.inKJ);
        expect(on.vapourKg).toBeLessThanOrEqual(off.vapourKg);
        expect(keepBoiling(potOf(shape), around, true).heatW).toBeLessThanOrEqual(
          keepBoiling(potOf(shape), around, false).heatW,
        );
      }),
    );
  });

  test('heat that the losses reach at the boil never brings it there', () => {
    fc.assert(
      fc.property(pan, place, ml, fc.boolean(), (shape, where, water, lidded) => {
        const around = surroundingsOf(where);
        const { watts } = potLoss(potOf(shape), around.boilsC, around, lidded, true);
        const minutes = (heat: number) =>
          heatPot(potOf(shape), water, around.tapC, around.boilsC, heat, around, lidded).minutes;
        expect(minutes(watts)).toBe(Infinity);
        expect(minutes(watts * 1.01)).toBeLessThan(Infinity);
      }),
    );
  });

  test('heating in two goes takes as long as in one', () => {
    fc.assert(
      fc.property(pan, place, ml, fc.integer({ min: 20, max: 80 }), (shape, where, water, between) => {
        const around = surroundingsOf(where);
        const from = (fromC: number, toC: number) =>
          heatPot(potOf(shape), water, fromC, toC, 6000, around, true).minutes;
        const whole = from(15, around.boilsC);
        expect(from(15, between) + from(between, around.boilsC)).toBeCloseTo(whole, 6);
      }),
    );
  });
});

describe('a pot off the heat', () => {
  test('never falls below the room, and never rises', () => {
    fc.assert(
      fc.property(pan, place, ml, fc.integer({ min: 0, max: 2000 }), fc.boolean(), (shape, where, water, m, lidded) => {
        const around = surroundingsOf(where);
        const after = (minutes: number) => celsiusOfPot(potOf(shape), water, 90, minutes, around, lidded);
        expect(after(m)).toBeGreaterThanOrEqual(around.roomC);
        expect(after(m + 10)).toBeLessThanOrEqual(after(m));
        expect(after(m)).toBeLessThanOrEqual(90);
      }),
    );
  });

  test('is as cool as asked after just the minutes told', () => {
    fc.assert(
      fc.property(
        pan,
        place,
        ml,
        fc.integer({ min: 45, max: 80 }),
        fc.boolean(),
        (shape, where, water, toC, lidded) => {
          const around = surroundingsOf(where);
          const minutes = coolPotMinutes(potOf(shape), water, 85, toC, around, lidded);
          expect(celsiusOfPot(potOf(shape), water, 85, minutes, around, lidded)).toBeCloseTo(toC, 3);
        },
      ),
    );
  });

  test('stays hot enough to soak in longer under its lid, and longer with more water', () => {
    fc.assert(
      fc.property(pan, place, ml, ml, (shape, where, water, more) => {
        const around = surroundingsOf(where);
        const hot = (volume: number, lidded: boolean) => soakMinutes(potOf(shape), volume, around, lidded);
        expect(hot(water, true)).toBeGreaterThanOrEqual(hot(water, false));
        expect(hot(water + more, true)).toBeGreaterThanOrEqual(hot(water, true));
      }),
    );
  });

  test('where water boils below what soaking asks, it is never hot enough', () => {
    const around = surroundingsOf({ roomC: 20, altitudeM: 5000 });
    expect(around.boilsC).toBeLessThan(85);
    expect(soakMinutes(potOf({ volumeMl: 3000, acrossCm: 20, lid: true }), 2000, around, true)).toBe(0);
  });
});

describe('food into boiling water', () => {
  const around = surroundingsOf({ roomC: 20 });
  const pot = potOf({ volumeMl: 8000, acrossCm: 24, lid: true });
  const food = { massG: 1000, specificHeat: 3.6, celsius: 20 };

  test('falls less the more water there is, and recovers sooner on more heat', () => {
    const dip = (water: number, heat: number) => dipOf(pot, water, food, heat, around, true);
    expect(dip(5000, 2000).lowestC).toBeGreaterThan(dip(2000, 2000).lowestC);
    expect(dip(5000, 3000).recoveryMinutes).toBeLessThan(dip(5000, 2000).recoveryMinutes);
    expect(dip(5000, 2000).recoveryMinutes).toBeCloseTo(dip(2000, 2000).recoveryMinutes, 9);
  });

  test('what the water and the pot give is what the food takes', () => {
    const dip = dipOf(pot, 4000, food, 2000, around, true);
    const given = (3.985 * 4.216 + pot.metalKJPerK) * (around.boilsC - dip.lowestC);
    expect(given / (3.6 * (dip.lowestC - 20))).toBeCloseTo(1, 2);
  });

  test('never recovers where the losses take all the heat', () => {
    expect(dipOf(pot, 4000, food, 50, around, true).recoveryMinutes).toBe(Infinity);
    expect(dipOf(pot, 4000, { ...food, massG: 0 }, 50, around, true).recoveryMinutes).toBe(0);
  });
});

describe('steam over a boiling pot', () => {
  const around = surroundingsOf({ roomC: 20 });
  const pot = potOf({ volumeMl: 8000, acrossCm: 24, lid: true });

  test('takes from the pot the water that the heat beyond the losses evaporates', () => {
    const heat = keepBoiling(pot, around, true).heatW + 1000;
    // by hand: 1 kW for 10 min is 600 kJ; over 2256 kJ/kg that is 266 g
    expect(steam(pot, 3000, 1000, heat, 10, around).waterMl).toBeCloseTo(266, 0);
  });

  test('lasts until the water is down to the least', () => {
    const heat = keepBoiling(pot, around, true).heatW + 1000;
    const { longestMinutes } = steam(pot, 3000, 1000, heat, 10, around);
    expect(steam(pot, 3000, 1000, heat, longestMinutes, around).lasts).toBe(true);
    expect(steam(pot, 3000, 1000, heat, longestMinutes + 0.01, around).lasts).toBe(false);
    expect(longestMinutes).toBeCloseTo(2000 / boiledAwayMl(pot, heat, 1, around, true), 6);
  });

  test('heat asked for food in the tiers gives just the steam that condenses on it', () => {
    const heat = steamHeatW(pot, 300, 12, around);
    expect(steam(pot, 3000, 1000, heat, 12, around).waterMl).toBeCloseTo(condensedMl(300, around), 6);
  });
});
