import { describe, expect, it } from 'vitest';
import type { OrderArc } from '../../../../solver/engine/explain/plan-order.ts';
import { Random } from '../../../../solver/engine/random.ts';
import { simulate, type SimulateAsked } from '../../../../solver/engine/simulate/simulate.ts';
import { TICKS, twoPiece } from '../../../../solver/engine/simulate/two-piece.ts';

const SAMPLES = 4_000;

/**
 * Kolmogorov's bound: the largest distance between the empirical and the true distribution is below this 99.9 % of the time.
 * source: Kolmogorov 1933; the 0.1 % point of the limit distribution is 1.95, e.g. NIST/SEMATECH e-Handbook of Statistical Methods
 */
const bound = (samples: number): number => 1.95 / Math.sqrt(samples);

/** source: the triangular distribution, Johnson, Kotz, Balakrishnan, Continuous Univariate Distributions 2, chapter 26 */
const triangular =
  (least: number, peak: number, most: number) =>
  (x: number): number =>
    x <= least
      ? 0
      : x >= most
        ? 1
        : x <= peak
          ? (x - least) ** 2 / ((most - least) * (peak - least))
          : 1 - (most - x) ** 2 / ((most - least) * (most - peak));

function distance(sorted: readonly number[], distribution: (x: number) => number): number {
  const n = sorted.length;
  return Math.max(
    ...sorted.map((x, i) => Math.max(Math.abs(distribution(x) - i / n), Math.abs(distribution(x) - (i + 1) / n))),
  );
}

/** A network of lengths between nodes, begun at 0, all lengths varying by so many minutes. */
function network(
  arcs: readonly (readonly [from: number, to: number, minutes: number, early: number, late: number])[],
  finish: number,
  limits: readonly (readonly [from: number, to: number, most: number])[] = [],
): SimulateAsked {
  const list: OrderArc[] = arcs.map(([from, to, least]) => ({ from, to, least, why: { kind: 'lag', lag: 0 } }));
  const times = new Int32Array(finish + 1);
  for (let round = 0; round <= finish; round++)
    for (const { from, to, least } of list) times[to] = Math.max(times[to]!, times[from]! + least);
  return {
    arcs: [
      ...list,
      ...limits.map(([from, to, most]) => ({
        from: to,
        to: from,
        least: -most,
        why: { kind: 'lag' as const, lag: 0 },
      })),
    ],
    times,
    varied: arcs.flatMap(([, , , early, late], arc) =>
      early + late === 0 ? [] : [{ arc, moves: [], early: early * TICKS, late: late * TICKS, owner: arc }],
    ),
    owners: arcs.length,
    finish: [finish],
    limits: limits.map((_, index) => arcs.length + index),
    from: 0,
    samples: SAMPLES,
    seed: 7,
  };
}

const minutes = (asked: SimulateAsked): number[] => [...simulate(asked).finishes].map((ticks) => ticks / TICKS);

describe('a drawn length', () => {
  it.each([
    { early: 4, late: 8 },
    { early: 0, late: 10 },
    { early: 10, late: 0 },
  ])('has the triangular distribution: $early less to $late more', ({ early, late }) => {
    const random = new Random(3);
    const drawn = Array.from({ length: SAMPLES }, () => twoPiece(random, early * TICKS, late * TICKS) / TICKS).sort(
      (a, b) => a - b,
    );
    expect(distance(drawn, triangular(-early, 0, late))).toBeLessThan(bound(SAMPLES) + 1 / TICKS);
  });

  it('has the mean and the variance of the triangular distribution', () => {
    const random = new Random(5);
    const drawn = Array.from({ length: 20_000 }, () => 30 + twoPiece(random, 6 * TICKS, 15 * TICKS) / TICKS);
    const mean = drawn.reduce((sum, x) => sum + x, 0) / drawn.length;
    const variance = drawn.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (drawn.length - 1);
    // (a + b + c) / 3 and (a² + b² + c² − ab − ac − bc) / 18 for 24, 30, 45.
    expect(Math.abs(mean - 33)).toBeLessThan(4 * Math.sqrt(19.5 / drawn.length));
    expect(variance).toBeGreaterThan(19.5 * 0.96);
    expect(variance).toBeLessThan(19.5 * 1.04);
  });
});

describe('a simulated network', () => {
  it('of one length finishes as the length is distributed', () => {
    expect(distance(minutes(network([[0, 1, 20, 5, 10]], 1)), triangular(15, 20, 30))).toBeLessThan(
      bound(SAMPLES) + 1 / TICKS,
    );
  });

  it('of two lengths side by side has the product of their distributions', () => {
    const asked = network(
      [
        [0, 1, 20, 5, 10],
        [0, 2, 20, 8, 4],
        [1, 3, 0, 0, 0],
        [2, 3, 0, 0, 0],
      ],
      3,
    );
    const [a, b] = [triangular(15, 20, 30), triangular(12, 20, 24)];
    expect(distance(minutes(asked), (x) => a(x) * b(x))).toBeLessThan(bound(SAMPLES) + 1 / TICKS);
  });

  it('of two lengths one after the other has the convolution of their distributions', () => {
    // Falling triangles (planned is the least): the sum of two with widths 6, by the integral of one distribution over the other's density.
    const width = 6;
    const sum = (x: number): number => {
      const steps = 2_000;
      let total = 0;
      for (let k = 0; k < steps; k++) {
        const u = (width * (k + 0.5)) / steps;
        total += ((2 * (width - u)) / width ** 2) * triangular(0, 1e-9, width)(x - u) * (width / steps);
      }
      return total;
    };
    const finishes = minutes(
      network(
        [
          [0, 1, 10, 0, width],
          [1, 2, 10, 0, width],
        ],
        2,
      ),
    );
    expect(
      distance(
        finishes.map((x) => x - 20),
        sum,
      ),
    ).toBeLessThan(bound(SAMPLES) + 2 / TICKS);
  });

  it('puts each of two like lengths side by side on the longest chain half of the time', () => {
    const { critical } = simulate(
      network(
        [
          [0, 1, 20, 5, 10],
          [0, 2, 20, 5, 10],
          [1, 3, 0, 0, 0],
          [2, 3, 0, 0, 0],
        ],
        3,
      ),
    );
    expect(critical[0]! + critical[1]!).toBeCloseTo(1, 9);
    // Four standard deviations of a share of a half.
    expect(Math.abs(critical[0]! - 0.5)).toBeLessThan(4 * Math.sqrt(0.25 / SAMPLES));
  });

  it('breaks a longest gap as often as what comes between runs over it', () => {
    // What lies between takes 10, up to 10 more; 14 is the most: (10 − 4)² / 10² of the falling triangle.
    const { broken, anyBroken } = simulate(
      network(
        [
          [0, 1, 5, 0, 0],
          [1, 2, 10, 0, 10],
        ],
        2,
        [[1, 2, 14]],
      ),
    );
    expect(Math.abs(broken[0]! - 0.36)).toBeLessThan(4 * Math.sqrt((0.36 * 0.64) / SAMPLES));
    expect(anyBroken).toBe(broken[0]);
  });

  it('comes closer to the truth with more samples, as the square root of their number', () => {
    const asked = network([[0, 1, 20, 5, 10]], 1);
    for (const samples of [100, 1_000, 10_000]) {
      const finishes = [...simulate({ ...asked, samples }).finishes].map((ticks) => ticks / TICKS);
      expect(distance(finishes, triangular(15, 20, 30))).toBeLessThan(bound(samples) + 1 / TICKS);
    }
  });

  it('begins what waits on purpose no earlier than planned', () => {
    // The second begins at 15 though the first is over by 10 at the latest.
    const asked = network(
      [
        [0, 1, 8, 4, 2],
        [1, 2, 0, 0, 0],
        [2, 3, 5, 0, 0],
      ],
      3,
    );
    const times = Int32Array.from([0, 8, 15, 20]);
    expect([...new Set(simulate({ ...asked, times }).finishes)]).toEqual([20 * TICKS]);
  });

  it('gives the same samples for the same seed, and others for another', () => {
    const asked = network([[0, 1, 20, 5, 10]], 1);
    expect(simulate(asked)).toEqual(simulate(asked));
    expect(simulate(asked).finishes).not.toEqual(simulate({ ...asked, seed: 8 }).finishes);
  });

  it('stops when told to, with the samples so far', () => {
    let asks = 0;
    const result = simulate({ ...network([[0, 1, 20, 5, 10]], 1), shouldStop: () => ++asks > 3 });
    expect(result.stopped).toBe(true);
    expect(result.finishes.length).toBeLessThan(SAMPLES);
    expect(result.finishes.length).toBeGreaterThan(0);
  });
});
