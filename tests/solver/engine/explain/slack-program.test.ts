import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slackPlaced } from '../../../../solver/answers/place-slack.ts';
import { planOrder, withTimes, type PlanOrder } from '../../../../solver/engine/explain/plan-order.ts';
import { leastWaiting, mostSlack } from '../../../../solver/engine/explain/slack-program.ts';
import { endNode } from '../../../../solver/engine/explain/taken.ts';
import { tierArcs } from '../../../../solver/engine/explain/tier-arcs.ts';
import type { Solution } from '../../../../solver/engine/outcome.ts';
import type { Problem, WaitingTier } from '../../../../solver/engine/problem.ts';
import { solve } from '../../../../solver/engine/solve.ts';
import { faultsOf, plainTierValues } from '../../../support/plain-check.ts';
import { randomProblem, smallShape } from '../../../support/random-problem.ts';
import { seeded } from '../../../support/seeded.ts';
import { after, endOf, finish, problemWith, startOf, task, use } from '../build-problem.ts';

const solved = (problem: Problem, seed: number, effort = 600): Solution | null => {
  const outcome = solve(problem, { seed, effort });
  return outcome.kind === 'proven' || outcome.kind === 'bounded' ? outcome.solution : null;
};

const withTiers = (problem: Problem, solution: Solution): PlanOrder => {
  const order = planOrder(problem, solution);
  return { ...order, arcs: [...order.arcs, ...tierArcs(problem, solution, order)] };
};

/** Longest path between any two nodes (Floyd & Warshall), −Infinity where there is none. */
function longest({ nodes, arcs }: PlanOrder): readonly Float64Array[] {
  const rows = Array.from({ length: nodes }, (_, node) =>
    new Float64Array(nodes).fill(-Infinity).fill(0, node, node + 1),
  );
  for (const { from, to, least } of arcs) rows[from]![to] = Math.max(rows[from]![to]!, least);
  for (let via = 0; via < nodes; via++)
    for (let from = 0; from < nodes; from++)
      for (let to = 0; to < nodes; to++)
        rows[from]![to] = Math.max(rows[from]![to]!, rows[from]![via]! + rows[via]![to]!);
  return rows;
}

describe('slack inside an order', () => {
  it('behind one task is as much as the longest cycle through it leaves, and all arcs still hold', () => {
    let compared = 0;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (seed) => {
        const problem = randomProblem(seed, smallShape);
        const solution = solved(problem, seed);
        if (solution === null) return;
        const order = withTiers(problem, solution);
        const paths = longest(order);
        const unsure = seeded(seed).pick(
          problem.tasks.flatMap((_, index) => (solution.tasks[index] ? [index] : [])).concat(-1),
        );
        if (unsure < 0) return;
        const node = endNode(unsure);
        const together = (other: number): boolean => paths[node]![other]! + paths[other]![node]! === 0;
        if (together(0)) return;
        const leaving = order.arcs.filter(({ from, to }) => together(from) && !together(to));
        const most = Math.min(...leaving.map(({ from, to, least }) => -(least + paths[to]![from]!)));
        const times = mostSlack(order, [{ node, weight: 1, most: 1000 }]);
        expect(times).not.toBeNull();
        for (const { from, to, least } of order.arcs) expect(times![to]! - times![from]!).toBeGreaterThanOrEqual(least);
        const placed = Math.min(...leaving.map(({ from, to, least }) => times![to]! - times![from]! - least));
        expect(placed).toBe(most);
        compared++;
      }),
      { numRuns: 150 },
    );
    expect(compared).toBeGreaterThan(15);
  });

  it('is shared out by weight: the work that is least sure first', () => {
    // All numbers invented: two jobs one after the other before a deadline with 6 minutes to spare.
    const problem = problemWith({
      horizon: 30,
      resources: [{ id: 'cook', capacity: 1 }],
      tasks: [task('long', 10, [use('cook')]), task('short', 2, [use('cook')]), task('last', 2)],
      lags: [after('long', 'short'), after('short', 'last')],
      tiers: [{ ...finish([]), terms: [{ point: endOf('last'), plus: 0 }] }],
    });
    const solution: Solution = {
      choices: [],
      tasks: [
        { start: 0, end: 10 },
        { start: 10, end: 12 },
        { start: 18, end: 20 },
      ],
    };
    const order = withTiers(problem, solution);
    const unsure = [
      { node: endNode(0), weight: 10, most: 4 },
      { node: endNode(1), weight: 2, most: 4 },
    ];
    expect([...mostSlack(order, unsure)!]).toEqual([0, 0, 10, 14, 16, 18, 20]);
  });
});

describe('the least waiting inside an order', () => {
  it('moves what waits next to what it waits for', () => {
    // All numbers invented: toast is best within 2 minutes, and was made at once though the table is at 20.
    const waiting: WaitingTier = {
      kind: 'waiting',
      id: 'waiting',
      terms: [{ weight: 3, from: endOf('toast'), to: startOf('table'), free: 2 }],
    };
    const problem = problemWith({
      horizon: 40,
      tasks: [task('toast', 4), task('roast', 20), task('table', 1)],
      lags: [after('toast', 'table'), after('roast', 'table')],
      tiers: [finish([task('table', 1)]), waiting],
    });
    const solution: Solution = {
      choices: [],
      tasks: [
        { start: 0, end: 4 },
        { start: 0, end: 20 },
        { start: 20, end: 21 },
      ],
    };
    const order = planOrder(problem, solution);
    const tiers = tierArcs(problem, solution, order).filter(({ why }) => why.kind === 'tier' && why.tier === 0);
    const times = leastWaiting(problem, { ...order, arcs: [...order.arcs, ...tiers] })!;
    expect(plainTierValues(problem, solution)).toEqual([21, 42]);
    expect(plainTierValues(problem, withTimes(solution, times))).toEqual([21, 0]);
  });
});

describe('the least waiting of one dish inside an order', () => {
  it('is what the longest path to it leaves over', () => {
    let compared = 0;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (seed) => {
        const some = randomProblem(seed, smallShape);
        const [from, to] = seeded(seed).sample(some.tasks, 2);
        if (from === undefined || to === undefined) return;
        const waiting: WaitingTier = {
          kind: 'waiting',
          id: 'waiting',
          terms: [{ weight: 2, from: endOf(from.id), to: startOf(to.id), free: 1 }],
        };
        const problem = { ...some, tiers: [finish(some.tasks)] };
        const solution = solved(problem, seed, 300);
        if (solution === null) return;
        const order = withTiers(problem, solution);
        const times = leastWaiting({ ...problem, tiers: [waiting] }, order);
        if (times === null) return;
        const [before, then] = [endNode(some.tasks.indexOf(from)), endNode(some.tasks.indexOf(to)) - 1];
        expect(times[then]! - times[before]! - 1).toBeLessThanOrEqual(Math.max(0, longest(order)[before]![then]! - 1));
        for (const arc of order.arcs) expect(times[arc.to]! - times[arc.from]!).toBeGreaterThanOrEqual(arc.least);
        compared++;
      }),
      { numRuns: 250 },
    );
    expect(compared).toBeGreaterThan(5);
  });
});

describe('slackPlaced', () => {
  it('keeps every rule and makes no tier worse unless an earlier one is better: random problems of every feature', () => {
    let moved = 0;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (seed) => {
        const problem = randomProblem(seed, { ...smallShape, features: { tiers: 1 } });
        const solution = solved(problem, seed, 300);
        if (solution === null) return;
        const unsure = problem.tasks.map((_, index) => ({ node: endNode(index), weight: 1 + (index % 3), most: 3 }));
        const placed = slackPlaced(problem, solution, unsure);
        if (placed !== solution) moved++;
        expect(placed.choices).toEqual(solution.choices);
        expect(faultsOf(problem, placed)).toEqual([]);
        const before = plainTierValues(problem, solution);
        const after = plainTierValues(problem, placed);
        const changed = after.findIndex((value, index) => value !== before[index]);
        if (changed >= 0) expect(after[changed]).toBeLessThan(before[changed]!);
      }),
      { numRuns: 200 },
    );
    expect(moved).toBeGreaterThan(15);
  });

  it('draws a plan together though a tier below the first is worse for it (invented)', () => {
    // Baked at once, the bread stands eight minutes until the table at minute 12 instead of two.
    const problem = problemWith({
      tasks: [task('bake', 4), task('table', 1)],
      lags: [after('bake', 'table'), { from: 'origin', to: startOf('table'), least: 12 }],
      tiers: [
        finish([task('bake', 4)]),
        {
          kind: 'waiting',
          id: 'waiting',
          terms: [{ from: endOf('bake'), to: startOf('table'), free: 0, weight: 1 }],
        },
      ],
    });
    const idle = {
      choices: [],
      tasks: [
        { start: 6, end: 10 },
        { start: 12, end: 13 },
      ],
    };
    expect(plainTierValues(problem, idle)).toEqual([10, 2]);
    const placed = slackPlaced(problem, idle, []);
    expect(plainTierValues(problem, placed)).toEqual([4, 8]);
  });
});
