/** Cooling of food in trays against what studies found, and the coefficients behind it against textbooks. */
import { describe, expect, test } from 'vitest';
import { compositionOfFood } from '../../solver/food/composition.ts';
import { foodOf } from '../../solver/food/foods.ts';
import { coolFood, warmestAt, type Cooling } from '../../solver/heat/food-cooling.ts';
import { plateConvection, radiation, saturationKPa, sphereConvection } from '../../solver/heat/food-surface.ts';

const sauce = compositionOfFood(foodOf('tomato-canned')!);
const exact = (cooling: Cooling): number => {
  const course = coolFood(cooling, sauce);
  if (course.kind === 'never') throw new Error('never cools');
  return course.exactMinutes;
};

describe('coefficients of surfaces', () => {
  test('a sphere of 50 mm at 330 K in water at 290 K has about 780 W/(m²·K)', () => {
    // source: worked example after Incropera and DeWitt, Fundamentals of Heat and Mass Transfer (4th edition, p. 502): k 0.63, viscosity
    // 0.7e-6 m²/s, Pr 4.67, expansion 362e-6 per K
    const water = { conductivity: 0.63, viscosity: 0.7e-6, diffusivity: 0.63 / 4.2e6, expansion: 362e-6 };
    expect(sphereConvection('water', 40, 0.05, water)).toBeCloseTo(780, -1);
  });

  test('natural convection in air lies in the range that textbooks give', () => {
    // source: Çengel, Heat and Mass Transfer, chapter 1, typical coefficients: free convection of gases 2–25 W/(m²·K)
    for (const kelvin of [10, 20, 60]) {
      for (const facing of ['up', 'down'] as const) {
        expect(plateConvection('air', facing, kelvin, 0.1)).toBeGreaterThan(2);
        expect(plateConvection('air', facing, kelvin, 0.1)).toBeLessThan(25);
      }
    }
  });

  test('radiation between like temperatures is 4·ε·σ·T³', () => {
    // source: definition of the radiation coefficient, Çengel, Heat and Mass Transfer, chapter 3; 4 × 5.67e-8 × 293.15³ = 5.71
    expect(radiation(1, 20, 20)).toBeCloseTo(5.71, 2);
  });

  test.each([
    { celsius: 15, kPa: 1.705 },
    { celsius: 24.5, kPa: 3.075 },
  ])('water has a vapour pressure of $kPa kPa at $celsius °C', ({ celsius, kPa }) => {
    // source: Allen and others, FAO Irrigation and Drainage Paper 56 (1998), chapter 3, example 3
    expect(saturationKPa(celsius)).toBeCloseTo(kPa, 2);
  });
});

describe('tomato sauce in trays, as cooled in a study of school kitchens', () => {
  // source: Roberts and others, Food Protection Trends 33(1), 27–31 (2013), abstract: at 5.1 and 7.6 cm in refrigerator and freezer,
  // covered and uncovered, only 5.1 cm uncovered in a freezer met both limits of the Food Code (57 to 21 °C in 2 h, to 5 °C in 6 h in all).
  // The air here is still, and a chiller's may be moved by a fan: the order is checked, and that the others fail.
  const ways = [51, 76].flatMap((depthMm) =>
    (['fridge', 'freezer'] as const).flatMap((where) =>
      [true, false].map((covered) => ({ depthMm, in: where, covered, aroundC: where === 'fridge' ? 3 : -18 })),
    ),
  );
  const timed = ways.map((way) => ({
    way,
    first: exact({ ...way, wet: true, fromC: 57, toC: 21 }),
    both: exact({ ...way, wet: true, fromC: 57, toC: 5 }),
  }));

  test('5.1 cm uncovered in the freezer is the soonest by both limits', () => {
    for (const by of ['first', 'both'] as const) {
      const soonest = timed.reduce((best, each) => (each[by] < best[by] ? each : best));
      expect(soonest.way).toMatchObject({ depthMm: 51, in: 'freezer', covered: false });
    }
  });

  test('all others miss the limits', () => {
    const others = timed.filter(({ way }) => !(way.depthMm === 51 && way.in === 'freezer' && !way.covered));
    expect(others).toHaveLength(7);
    for (const { first, both } of others) expect(first > 120 || both > 360).toBe(true);
  });

  test('5.1 cm uncovered in a freezer whose fan moves the air meets both limits', () => {
    // source: coefficient 25 W/(m²·K), the least of forced convection of gases in Çengel, Heat and Mass Transfer, chapter 1 (25–250)
    const fan = { depthMm: 51, in: 'freezer', coefficients: { lower: 25, upper: 25 } } as const;
    expect(exact({ ...fan, fromC: 57, toC: 21 })).toBeLessThan(120);
    expect(exact({ ...fan, fromC: 57, toC: 5 })).toBeLessThan(360);
    expect(exact({ ...fan, in: 'fridge', aroundC: 3, depthMm: 76, fromC: 57, toC: 21 })).toBeGreaterThan(120);
  });
});

test('the logarithm of what the food is above its surroundings falls in a straight line, R² above 0.90', () => {
  // source: Igo, Hedeen, Schaffner, Journal of Food Protection (2021), abstract: cooling curves of 29 foods in 25 restaurants
  const cooling: Cooling = { fromC: 60, toC: 8, depthMm: 60, in: 'fridge', wet: true };
  const course = coolFood(cooling, sauce);
  if (course.kind === 'never') throw new Error('never cools');
  const points = Array.from({ length: 50 }, (_, index) => {
    const minute = (course.exactMinutes * index) / 49;
    return { x: minute, y: Math.log10(warmestAt(course, 60, minute) - 5) };
  });
  const mean = (of: (point: { x: number; y: number }) => number): number =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length;
  const [mx, my] = [mean(({ x }) => x), mean(({ y }) => y)];
  const sxy = mean(({ x, y }) => (x - mx) * (y - my));
  const r2 = sxy ** 2 / (mean(({ x }) => (x - mx) ** 2) * mean(({ y }) => (y - my) ** 2));
  expect(r2).toBeGreaterThan(0.9);
});

test('twice the depth takes nearly four times as long in cold water, and less than that in air', () => {
  // source: Dickerson and Read, Journal of Milk and Food Technology 36 (1973), abstract: with the square of the shortest dimension; that holds
  // where the food's own conduction rules, and the film of air keeps it from ruling
  const ratio = (where: Cooling['in']): number =>
    exact({ fromC: 90, toC: 30, depthMm: 200, in: where }) / exact({ fromC: 90, toC: 30, depthMm: 100, in: where });
  expect(ratio('cold-water')).toBeGreaterThan(3.5);
  expect(ratio('cold-water')).toBeLessThan(4.1);
  expect(ratio('rack')).toBeLessThan(ratio('cold-water'));
});
