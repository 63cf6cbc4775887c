import { describe, expect, test } from 'vitest';
import type { Solution, TraceRow } from '../../../solver/engine/outcome.ts';
import { tierValues } from '../../../solver/engine/tier-values.ts';
import { solveTogether } from '../../../solver/engine/together.ts';
import { verifySolution } from '../../../solver/engine/verify-solution.ts';
import { referenceProblem } from '../../support/random-problem-reference.ts';
import { kitchenLike } from './kitchen-like-problem.ts';

const problems = [
  ...[3, 105, 153].map(referenceProblem),
  kitchenLike({ seed: 3, steps: 12, people: 2 }),
  kitchenLike({ seed: 5, steps: 24, people: 2 }),
];

describe.each(problems.map((problem) => ({ problem, name: problem.name })))('what is told of $name', ({ problem }) => {
  const told: { readonly row: TraceRow; readonly solution: Solution | null }[] = [];
  const outcome = solveTogether(problem, {
    seed: 7,
    effort: 65_000,
    onProgress: (row, solution) => told.push({ row, solution }),
  });

  test('with each plan: a value and a bound of every tier, those of this very plan', () => {
    const withPlan = told.filter(({ solution }) => solution !== null);
    expect(withPlan.length > 0).toBe('solution' in outcome);
    for (const { row, solution } of withPlan) {
      expect(verifySolution(problem, solution!)).toEqual([]);
      expect(row.tiers?.map(({ value }) => value)).toEqual(tierValues(problem, solution!));
      expect(row.tiers?.every(({ value, bound }) => bound <= value)).toBe(true);
      if (problem.tiers.length > 0)
        expect([row.tiers?.[0]?.value, row.tiers?.[0]?.bound]).toEqual([row.value, row.bound]);
    }
  });

  test('every row tells something new, and the plans never get worse', () => {
    told.slice(1).forEach(({ row }, index) => {
      const { work: _, ...before } = told[index]!.row;
      const { work: __, ...now } = row;
      expect(now).not.toEqual(before);
      if (row.tiers === undefined || before.tiers === undefined) return;
      const first = row.tiers.findIndex(({ value }, k) => value !== before.tiers?.[k]?.value);
      if (first >= 0) expect(row.tiers[first]!.value).toBeLessThan(before.tiers[first]!.value);
    });
  });

  test('the tier worked on comes after all that are proven, and no bound that was told is above the outcome', () => {
    for (const { row } of told) {
      if (row.tiers === undefined) continue;
      expect(row.tiers.slice(row.tier).some(({ proven }) => proven)).toBe(false);
    }
    if (!('solution' in outcome)) return;
    for (const { row } of told) expect(row.bound).toBeLessThanOrEqual(outcome.tiers[0]?.value ?? Infinity);
    expect(outcome.trace).toEqual(told.map(({ row }) => row));
  });
});

describe('the building of the model', () => {
  test('is told when it begins and when the model stands, before anything is proved by it', () => {
    const told: string[] = [];
    solveTogether(kitchenLike({ seed: 5, steps: 24, people: 2 }), {
      seed: 7,
      effort: 65_000,
      onModel: (stands) => told.push(stands ? 'stands' : 'begins'),
      onProgress: ({ tiers }) => told.push(...(tiers?.[0]?.proven === true ? ['proven'] : [])),
    });
    expect(told.filter((word) => word !== 'proven')).toEqual(['begins', 'stands']);
    expect(told.slice(0, 2)).toEqual(['begins', 'stands']);
  });
});

describe('a small problem without any plan', () => {
  test.each([79, 104, 120, 134, 187, 196, 220, 232, 245])(
    'is handed to the proof soon: reference problem %i (invented, refuted by enumeration too) within 6,000 units',
    (seed) => {
      const outcome = solveTogether(referenceProblem(seed), { seed: 1, effort: 1_000_000 });
      expect(outcome.kind).toBe('impossible');
      expect(outcome.work).toBeLessThan(6_000);
    },
  );
});
