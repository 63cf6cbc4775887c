/** The series of a cooling slab and sphere, held against what they must obey and against a plain computation in small steps. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  foAtTheta,
  heatGoneFromSlab,
  heatGoneFromSphere,
  hottestPlace,
  slabModes,
  sphereModes,
  thetaAt,
} from '../../../solver/heat/food-conduction.ts';

const biot = fc.double({ min: 0.01, max: 50, noNaN: true });
const maybeNone = fc.oneof(fc.constant(0), biot);
const place = fc.double({ min: 0, max: 1, noNaN: true });
const fourier = fc.double({ min: 0.02, max: 3, noNaN: true });

/** A slab in `cells` layers, stepped explicitly: heat between neighbours, and out at the faces through half a layer and the film. */
function steppedSlab(lowerBi: number, upperBi: number, fo: number, cells = 60): readonly number[] {
  const dx = 1 / cells;
  const steps = Math.ceil(fo / (0.2 * dx * dx));
  const dt = fo / steps;
  const face = (bi: number): number => (bi === 0 ? 0 : 1 / (dx / 2 + 1 / bi));
  let theta = Array.from({ length: cells }, () => 1);
  for (let step = 0; step < steps; step++) {
    theta = theta.map((own, index) => {
      const below = index === 0 ? -own * face(lowerBi) : (theta[index - 1]! - own) / dx;
      const above = index === cells - 1 ? -own * face(upperBi) : (theta[index + 1]! - own) / dx;
      return own + ((below + above) * dt) / dx;
    });
  }
  return theta;
}

describe('a slab', () => {
  test.each([
    { lower: 0, upper: 0.5, fo: 0.3 },
    { lower: 2, upper: 0.3, fo: 0.1 },
    { lower: 17, upper: 0.9, fo: 0.2 },
    { lower: 5, upper: 5, fo: 0.05 },
    { lower: 0.4, upper: 0, fo: 1 },
  ])('with Bi $lower below and $upper above is as stepped in sixty layers at Fo $fo', ({ lower, upper, fo }) => {
    const modes = slabModes(lower, upper);
    steppedSlab(lower, upper, fo).forEach((theta, index) => {
      expect(Math.abs(thetaAt(modes, (index + 0.5) / 60, fo) - theta)).toBeLessThan(0.004);
    });
  });

  test('cools at both faces as half of it cools at one', () => {
    fc.assert(
      fc.property(biot, fourier, (bi, fo) => {
        const half = thetaAt(slabModes(0, bi), 0, fo);
        const whole = thetaAt(slabModes(2 * bi, 2 * bi), 0.5, fo / 4);
        expect(whole).toBeCloseTo(half, 6);
      }),
    );
  });

  test('turned over is the same slab', () => {
    fc.assert(
      fc.property(maybeNone, biot, place, fourier, (lower, upper, at, fo) => {
        expect(thetaAt(slabModes(lower, upper), at, fo)).toBeCloseTo(thetaAt(slabModes(upper, lower), 1 - at, fo), 6);
      }),
    );
  });

  test('is nowhere hotter than at the place that stays hottest, once the first mode rules', () => {
    fc.assert(
      fc.property(maybeNone, biot, place, fc.double({ min: 0.5, max: 3, noNaN: true }), (lower, upper, at, fo) => {
        const modes = slabModes(lower, upper);
        expect(thetaAt(modes, at, fo)).toBeLessThanOrEqual(thetaAt(modes, hottestPlace(modes, lower), fo) + 1e-3);
      }),
    );
  });

  test('never falls below its surroundings nor warms, and cools sooner the more its face gives off', () => {
    fc.assert(
      fc.property(maybeNone, biot, biot, place, fourier, (lower, upper, more, at, fo) => {
        const modes = slabModes(lower, upper);
        const now = thetaAt(modes, at, fo);
        expect(now).toBeGreaterThanOrEqual(0);
        expect(thetaAt(modes, at, fo * 1.1)).toBeLessThanOrEqual(now + 1e-9);
        expect(thetaAt(slabModes(lower, upper + more), at, fo)).toBeLessThanOrEqual(now + 1e-6);
      }),
    );
  });

  test('has lost what its mean temperature has fallen', () => {
    fc.assert(
      fc.property(maybeNone, biot, fourier, (lower, upper, fo) => {
        const modes = slabModes(lower, upper);
        const cells = 400;
        let mean = 0;
        for (let index = 0; index < cells; index++) mean += thetaAt(modes, (index + 0.5) / cells, fo) / cells;
        expect(heatGoneFromSlab(modes, lower, fo)).toBeCloseTo(1 - mean, 3);
      }),
    );
  });
});

describe('a sphere', () => {
  test('has lost what its mean temperature has fallen', () => {
    fc.assert(
      fc.property(biot, fourier, (bi, fo) => {
        const modes = sphereModes(bi);
        const shells = 400;
        let mean = 0;
        for (let index = 0; index < shells; index++) {
          const r = (index + 0.5) / shells;
          mean += (thetaAt(modes, r, fo) * 3 * r * r) / shells;
        }
        expect(heatGoneFromSphere(modes, fo)).toBeCloseTo(1 - mean, 3);
      }),
    );
  });

  test('is hottest at its centre', () => {
    fc.assert(
      fc.property(biot, place, fourier, (bi, at, fo) => {
        const modes = sphereModes(bi);
        expect(thetaAt(modes, at, fo)).toBeLessThanOrEqual(thetaAt(modes, 0, fo) + 1e-9);
      }),
    );
  });
});

test('the time to a temperature is the time at which the series has it', () => {
  fc.assert(
    fc.property(biot, biot, fc.double({ min: 0.02, max: 0.95, noNaN: true }), (lower, upper, theta) => {
      const slab = slabModes(lower, upper);
      const at = hottestPlace(slab, lower);
      expect(thetaAt(slab, at, foAtTheta(slab, at, theta))).toBeCloseTo(theta, 6);
      const sphere = sphereModes(upper);
      expect(thetaAt(sphere, 0, foAtTheta(sphere, 0, theta))).toBeCloseTo(theta, 6);
    }),
  );
});

test('asking when food has the temperature of its surroundings is a defect', () => {
  expect(() => foAtTheta(sphereModes(1), 0, 0)).toThrow('never');
});
