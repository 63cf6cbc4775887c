import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bindingChain } from '../../../../solver/engine/explain/binding-chain.ts';
import { planOrder } from '../../../../solver/engine/explain/plan-order.ts';
import { roomWithin } from '../../../../solver/engine/explain/room.ts';
import { ORIGIN, startNode } from '../../../../solver/engine/explain/taken.ts';
import type { Solution } from '../../../../solver/engine/outcome.ts';
import type { LatestTier, Problem } from '../../../../solver/engine/problem.ts';
import { solve } from '../../../../solver/engine/solve.ts';
import { jobShopProblem } from '../../../benchmarks/readers/shops.ts';
import { randomProblem, smallShape } from '../../../support/random-problem.ts';
import { after, endOf, problemWith, startOf, task, use } from '../build-problem.ts';

const solved = (problem: Problem, effort: number): Solution | null => {
  const outcome = solve(problem, { seed: 1, effort });
  return outcome.kind === 'proven' || outcome.kind === 'bounded' ? outcome.solution : null;
};

/**
 * The building project of 14 activities: name, weeks, what comes before.
 * source: F. S. Hillier & G. J. Lieberman, Introduction to Operations Research, 7th ed. 2001, ch. 10, the Reliable Construction
 * Co. project: 44 weeks along A–B–C–E–F–J–L–N; slack of D, G, H, M 4 weeks, of I 2, of K 1, of all others 0.
 */
const building: readonly (readonly [string, number, string])[] = [
  ['A', 2, ''],
  ['B', 4, 'A'],
  ['C', 10, 'B'],
  ['D', 6, 'C'],
  ['E', 4, 'C'],
  ['F', 5, 'E'],
  ['G', 7, 'D'],
  ['H', 9, 'EG'],
  ['I', 7, 'C'],
  ['J', 8, 'FI'],
  ['K', 4, 'J'],
  ['L', 5, 'J'],
  ['M', 2, 'H'],
  ['N', 6, 'KL'],
];

describe('the binding chain of the textbook’s building project', () => {
  const problem = problemWith({
    horizon: 60,
    tasks: building.map(([name, weeks]) => task(name, weeks)),
    lags: building.flatMap(([name, , befores]) => [...befores].map((before) => after(before, name))),
  });
  const starts = [0, 2, 6, 16, 16, 20, 22, 29, 16, 25, 33, 33, 38, 38];
  const order = planOrder(problem, {
    choices: [],
    tasks: starts.map((start, index) => ({ start, end: start + building[index]![1] })),
  });

  it('is the critical path', () => {
    const chain = bindingChain(problem, order)!;
    expect(chain.arcs.flatMap(({ why }) => (why.kind === 'length' ? [why.task] : [])).join('')).toBe('ABCEFJLN');
    expect(chain.arcs.reduce((sum, arc) => sum + arc.least, 0)).toBe(44);
    expect(chain.idle).toBe(0);
  });

  it('leaves the others the slack of the book', () => {
    const { latest } = roomWithin(problem, order);
    const slack = building.map(([name], index) => [name, latest[startNode(index)]! - starts[index]!]);
    expect(Object.fromEntries(slack.filter(([, weeks]) => weeks !== 0))).toEqual({
      D: 4,
      G: 4,
      H: 4,
      I: 2,
      K: 1,
      M: 4,
    });
  });
});

describe('the binding chain', () => {
  it('of a best plan of FT06 is as long as the plan, 55, machine by machine and job by job', () => {
    // source: H. Fisher & G. L. Thompson 1963, in Muth & Thompson (eds.), Industrial Scheduling; optimum 55.
    const ops = [
      '2 1  0 3  1 6  3 7  5 3  4 6',
      '1 8  2 5  4 10  5 10  0 10  3 4',
      '2 5  3 4  5 8  0 9  1 1  4 7',
      '1 5  0 5  2 5  3 3  4 8  5 9',
      '2 9  1 3  4 5  5 4  0 3  3 1',
      '1 3  3 3  5 9  0 10  4 4  2 1',
    ].map((row) => row.split('  ').map((pair) => pair.split(' ').map(Number) as [number, number]));
    const problem = jobShopProblem({ name: 'FT06', jobs: 6, machines: 6, ops });
    const outcome = solve(problem, { seed: 1, effort: 400_000 });
    if (outcome.kind !== 'proven' && outcome.kind !== 'bounded') throw new Error('no plan');
    expect(outcome.tiers[0]!.value).toBe(55);
    const { arcs } = bindingChain(problem, planOrder(problem, outcome.solution))!;
    expect(arcs.reduce((sum, arc) => sum + (arc.why.kind === 'length' ? arc.least : 0), 0)).toBe(55);
    expect(new Set(arcs.map((arc) => arc.why.kind))).toEqual(new Set(['horizon', 'length', 'lag', 'resource']));
  });

  it('of random plans joins up, is tight, and with the idle minutes makes up the value of the tier', () => {
    let chains = 0;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (seed) => {
        const problem = randomProblem(seed, smallShape);
        const solution = solved(problem, 800);
        if (solution === null) return;
        const order = planOrder(problem, solution);
        const chain = bindingChain(problem, order);
        if (chain === null) return;
        chains++;
        const { arcs, times, decides, idle } = chain;
        expect(decides === 'finish' ? arcs[0]!.from : arcs.at(-1)!.to).toBe(ORIGIN);
        arcs.slice(1).forEach((arc, index) => expect(arc.from).toBe(arcs[index]!.to));
        for (const arc of arcs) expect(times[arc.to]! - times[arc.from]!).toBe(arc.least);
        const length = Math.abs(arcs.reduce((sum, arc) => sum + arc.least, 0));
        const point = order.times[decides === 'finish' ? arcs.at(-1)!.to : arcs[0]!.from]!;
        expect(decides === 'finish' ? length + idle : length - idle).toBe(point);
      }),
      // In the example a task of no length stands in the chain.
      { numRuns: 100, examples: [[590_200]] },
    );
    expect(chains).toBeGreaterThan(20);
  });

  it('of a latest start runs from the first work to the table', () => {
    // All numbers invented: two dishes by one cook, on the table at 60.
    const latestStart: LatestTier = {
      kind: 'latest',
      id: 'latest-start',
      terms: ['chop', 'stir'].map((id) => ({ point: startOf(id), plus: 60, minus: true })),
    };
    const problem = problemWith({
      horizon: 80,
      resources: [{ id: 'cook', capacity: 1 }],
      tasks: [task('chop', 10, [use('cook')]), task('roast', 30), task('stir', 5, [use('cook')])],
      lags: [
        after('chop', 'roast'),
        ...['roast', 'stir'].map((id) => ({
          from: endOf(id),
          to: 'origin' as const,
          least: -60,
          requirement: 'table',
        })),
      ],
      tiers: [latestStart],
    });
    const solution: Solution = {
      choices: [],
      tasks: [
        { start: 20, end: 30 },
        { start: 30, end: 60 },
        { start: 40, end: 45 },
      ],
    };
    const order = planOrder(problem, solution);
    const chain = bindingChain(problem, order)!;
    expect(chain.decides).toBe('start');
    expect(chain.arcs.map(({ why, least }) => [why.kind, least])).toEqual([
      ['length', 10],
      ['lag', 0],
      ['length', 30],
      ['lag', -60],
    ]);
    const { earliest, latest } = roomWithin(problem, order);
    expect([earliest[startNode(2)], latest[startNode(2)]]).toEqual([30, 55]);
  });
});
