import fc from 'fast-check';
import highsLoader from 'highs';
import { describe, expect, test } from 'vitest';
import { CAPACITY, concurrencyWeights } from '../../../../solver/engine/bounds/concurrency-weights.ts';
import { ConcurrentSets, weightOf } from '../../../../solver/engine/bounds/concurrent-sets.ts';
import { Learner } from '../../../../solver/engine/learning/learner.ts';
import { bruteForce } from '../../../support/brute-force.ts';
import { after, problemWith, task, use } from '../build-problem.ts';

/** Tasks with amounts of two resources of 3 each, and pairs that must stand apart. */
const questions = fc
  .record({
    amounts: fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 3 })), {
      minLength: 1,
      maxLength: 7,
    }),
    apart: fc.array(fc.tuple(fc.nat(6), fc.nat(6)), { maxLength: 5 }),
  })
  .map(({ amounts, apart }) => ({
    amounts,
    capacities: [3, 3],
    apart: (a: number, b: number) => apart.some(([c, d]) => (a === c && b === d) || (a === d && b === c)),
  }));

type Question = typeof questions extends fc.Arbitrary<infer T> ? T : never;

/** Of all subsets those that can be in progress together, by looking at each. */
function everySet({ amounts, capacities, apart }: Question): number[][] {
  return Array.from({ length: 2 ** amounts.length }, (_, bits) =>
    amounts.flatMap((_amount, k) => ((bits >> k) & 1 ? [k] : [])),
  ).filter(
    (set) =>
      capacities.every((capacity, r) => set.reduce((sum, k) => sum + amounts[k]![r]!, 0) <= capacity) &&
      set.every((a) => set.every((b) => a === b || !apart(a, b))),
  );
}

function everyMaximalSet(question: Question): string[] {
  const all = everySet(question);
  const isWithin = (small: number[], large: number[]): boolean => small.every((k) => large.includes(k));
  return all
    .filter((set) => set.length > 0 && !all.some((other) => other.length > set.length && isWithin(set, other)))
    .map(String)
    .sort();
}

const MANY = 1_000_000;

describe('Sets of tasks that can be in progress together', () => {
  const weighed = fc.record({
    question: questions,
    weights: fc.array(fc.nat(4), { minLength: 7, maxLength: 7 }),
    limit: fc.nat(12),
  });

  test('are told where they weigh more than a limit, and none is told only where there is none, by looking at every set', () => {
    fc.assert(
      fc.property(weighed, ({ question, weights, limit }) => {
        const found = new ConcurrentSets(question).heavier(weights, limit, MANY)!;
        const every = everySet(question);
        const names = every.map(String);
        for (const set of found) {
          expect(names).toContain(String([...set].sort((a, b) => a - b)));
          expect(weightOf(set, weights)).toBeGreaterThan(limit);
        }
        expect(found.length > 0).toBe(every.some((set) => weightOf(set, weights) > limit));
      }),
      { seed: 6, numRuns: 500 },
    );
  });

  test('grow to maximal ones from each task', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const sets = new ConcurrentSets(question);
        const maximal = everyMaximalSet(question);
        for (const task of sets.tasks)
          expect(maximal).toContain(String(sets.grown(task, sets.tasks).sort((a, b) => a - b)));
      }),
    );
  });

  test('are given up where too many must be looked at', () => {
    const amounts = Array.from({ length: 30 }, () => [1]);
    const sets = new ConcurrentSets({ amounts, capacities: [10], apart: () => false });
    const weights = amounts.map((_, k) => 100 + k);
    expect(sets.heavier(weights, 10 * 130, 1000)).toBeNull();
  });
});

describe('Weights of concurrency', () => {
  test('add up where each pair shares another resource: three tasks of 4 minutes take 12, not the 8 of each resource', () => {
    // Invented, by hand: a and b share x, b and c share y, a and c share z, so that no two are ever in progress together.
    const amounts = [
      [1, 0, 1],
      [1, 1, 0],
      [0, 1, 1],
    ];
    const weights = concurrencyWeights([4, 4, 4], { amounts, capacities: [1, 1, 1], apart: () => false });
    expect(weights).toEqual([CAPACITY, CAPACITY, CAPACITY]);
  });

  test('let no set weigh more than the capacity, and all work weigh as much as HiGHS can make it', async () => {
    const highs = await highsLoader();
    const lengthsOf = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 7, maxLength: 7 });
    fc.assert(
      fc.property(questions, lengthsOf, (question, drawn) => {
        const sets = everySet(question).filter((set) => set.length > 0);
        const lengths = drawn.slice(0, question.amounts.length);
        const weights = concurrencyWeights(lengths, question)!;
        for (const set of sets) expect(set.reduce((sum, k) => sum + weights[k]!, 0)).toBeLessThanOrEqual(CAPACITY);
        const total = lengths.reduce((sum, length, k) => sum + length * weights[k]!, 0);
        const answer = highs.solve(
          [
            'Maximize',
            ` work: ${lengths.map((length, k) => `${length} w${k}`).join(' + ')}`,
            'Subject To',
            ...sets.map((set, j) => ` s${j}: ${set.map((k) => `w${k}`).join(' + ')} <= ${CAPACITY}`),
            'End\n',
          ].join('\n'),
        );
        const best = answer.ObjectiveValue;
        // Each weight is rounded down by less than one.
        const lost = lengths.reduce((sum, length) => sum + length, 0);
        expect(total).toBeGreaterThan(best - lost);
        expect(total).toBeLessThanOrEqual(best + 1e-6);
      }),
      { seed: 3, numRuns: 100 },
    );
  });
});

describe('Weights that take long', () => {
  test('are let go when told to stop', () => {
    const amounts = Array.from({ length: 12 }, (_, k) => [1 + (k % 3)]);
    const question = { amounts, capacities: [5], apart: () => false };
    const lengths = amounts.map((_, k) => 1 + k);
    expect(concurrencyWeights(lengths, question, () => true)).toBeNull();
    expect(concurrencyWeights(lengths, question, () => false)).not.toBeNull();
  });
});

describe('A proof with windows of concurrency', () => {
  // Five tasks of 1 to 3 minutes on three resources of 2, some after others (invented).
  const projects = fc
    .record({
      tasks: fc.array(
        fc.record({
          length: fc.integer({ min: 1, max: 3 }),
          amounts: fc.tuple(fc.nat(2), fc.nat(2), fc.nat(2)),
        }),
        { minLength: 5, maxLength: 5 },
      ),
      pairs: fc.array(fc.tuple(fc.nat(4), fc.nat(4)), { maxLength: 3 }),
    })
    .map(({ tasks, pairs }) =>
      problemWith({
        horizon: 16,
        tasks: tasks.map(({ length, amounts }, k) =>
          task(
            `t${k}`,
            length,
            amounts.flatMap((amount, r) => (amount > 0 ? [use(`r${r}`, amount)] : [])),
          ),
        ),
        resources: [0, 1, 2].map((r) => ({ id: `r${r}`, capacity: 2 })),
        lags: pairs.flatMap(([a, b]) => (a < b ? [after(`t${a}`, `t${b}`)] : [])),
      }),
    );

  test('has the least finish by complete enumeration', () => {
    let added = 0;
    fc.assert(
      fc.property(projects, (problem) => {
        const known = bruteForce(problem);
        if (known.kind !== 'optimal') throw new Error('tasks of 15 minutes in all fit in 16');
        const learner = new Learner(problem, 1);
        if (learner.model.addEnergyWindows()) added++;
        while (!learner.done) learner.improve({ conflicts: 100 });
        expect(learner.values).toEqual(known.values);
        expect(learner.bounds[0]).toBe(known.values[0]);
      }),
      { seed: 4, numRuns: 200 },
    );
    expect(added).toBeGreaterThan(30);
  });
});
