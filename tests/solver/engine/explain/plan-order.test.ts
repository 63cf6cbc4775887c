import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  earliestTimes,
  latestTimes,
  planOrder,
  withTimes,
  type PlanOrder,
} from '../../../../solver/engine/explain/plan-order.ts';
import type { Solution } from '../../../../solver/engine/outcome.ts';
import { planByRule } from '../../../../solver/engine/plan-by-rule.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';
import { solve } from '../../../../solver/engine/solve.ts';
import { verifySolution } from '../../../../solver/engine/verify-solution.ts';
import { sessionToProblem } from '../../../../solver/translate/session-to-problem.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../../support/demo-documents.ts';
import { faultsOf } from '../../../support/plain-check.ts';
import { randomProblem, smallShape } from '../../../support/random-problem.ts';
import { seeded, type Seeded } from '../../../support/seeded.ts';
import { after, mode, problemWith, task, use } from '../build-problem.ts';
import { kitchenLike } from '../kitchen-like-problem.ts';

const keepsAll = (order: PlanOrder, times: Int32Array): boolean =>
  order.arcs.every((arc) => times[arc.to]! - times[arc.from]! >= arc.least);

/** Times that satisfy all arcs, drawn from the early side and the late side in turn. */
function* otherTimes(problem: Problem, order: PlanOrder, chance: Seeded, count: number): Generator<Int32Array> {
  const horizon = new Int32Array(order.nodes).fill(problem.horizon);
  const earliest = earliestTimes(order)!;
  const latest = latestTimes(order, horizon)!;
  yield earliest;
  yield latest;
  for (let draw = 0; draw < count; draw++) {
    // A bound that one node can keep, the latest (or earliest) times keep all together.
    const bounds = Int32Array.from(earliest, (least, node) => {
      return chance.chance(0.3) ? chance.int(least, latest[node]!) : draw % 2 === 0 ? least : latest[node]!;
    });
    yield draw % 2 === 0 ? earliestTimes(order, bounds)! : latestTimes(order, bounds)!;
  }
}

function expectOrder(problem: Problem, solution: Solution, seed: number, draws = 4): void {
  const order = planOrder(problem, solution);
  expect(keepsAll(order, order.times)).toBe(true);
  for (const times of otherTimes(problem, order, seeded(seed), draws)) {
    expect(keepsAll(order, times)).toBe(true);
    expect(verifySolution(problem, withTimes(solution, times))).toEqual([]);
    expect(faultsOf(problem, withTimes(solution, times))).toEqual([]);
  }
}

describe('the order inside a plan', () => {
  it('is kept by the plan, and any times that keep it are a solution: random problems of every feature', () => {
    let plans = 0;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (seed) => {
        const problem = randomProblem(seed, { ...smallShape, otherwise: 0.6 });
        const outcome = solve(problem, { seed, effort: 500 });
        if (outcome.kind !== 'proven' && outcome.kind !== 'bounded') return;
        plans++;
        expectOrder(problem, outcome.solution, seed);
      }),
      { numRuns: 120 },
    );
    expect(plans).toBeGreaterThan(25);
  });

  it.each([1, 2, 3, 4, 5, 6])('is kept, and enough: problem %i like a kitchen', (seed) => {
    const problem = kitchenLike({ seed, steps: 30, people: 2 });
    expectOrder(
      problem,
      planByRule(problem, { name: 'due', scheme: 'serial', direction: 'forward', measure: 'latest finish' })!,
      seed,
    );
  });

  it('holds the chain of an exclusive resource, and leaves what is beside it free', () => {
    const problem = problemWith({
      horizon: 20,
      resources: [{ id: 'board', capacity: 1, calendar: [{ from: 10, until: 12, capacity: 0 }] }],
      tasks: [task('a', 3, [use('board')]), task('b', 4, [use('board')]), task('c', 2)],
      lags: [after('a', 'c')],
    });
    const solution: Solution = {
      choices: [],
      tasks: [
        { start: 0, end: 3 },
        { start: 3, end: 7 },
        { start: 5, end: 7 },
      ],
    };
    const order = planOrder(problem, solution);
    expect(order.arcs.filter((arc) => arc.why.kind === 'resource')).toEqual([
      { from: 2, to: 3, least: 0, why: { kind: 'resource', resource: 'board' } },
    ]);
    // The board is away from minute 10 to 12: what is done before stays before.
    expect(order.arcs.filter((arc) => arc.why.kind === 'calendar')).toEqual([
      { from: 4, to: 0, least: -10, why: { kind: 'calendar', resource: 'board' } },
    ]);
    expect([...earliestTimes(order)!]).toEqual([0, 0, 3, 3, 7, 3, 5]);
    expect([...latestTimes(order, new Int32Array(7).fill(20))!]).toEqual([0, 3, 6, 6, 10, 18, 20]);
  });

  it('asks for no order where all fit at once', () => {
    const problem = problemWith({
      horizon: 20,
      resources: [{ id: 'rack', capacity: 3 }],
      tasks: [task('a', 3, [use('rack', 2)]), task('b', 4, [use('rack', 1)])],
    });
    const order = planOrder(problem, {
      choices: [],
      tasks: [
        { start: 0, end: 3 },
        { start: 9, end: 13 },
      ],
    });
    expect(order.arcs.filter((arc) => arc.why.kind === 'resource')).toEqual([]);
  });

  it('has no times under bounds that cross', () => {
    const problem = problemWith({
      horizon: 10,
      tasks: [task('a', 3), { id: 'b', modes: [mode([2, 4])] }],
      lags: [after('a', 'b')],
    });
    const order = planOrder(problem, {
      choices: [],
      tasks: [
        { start: 0, end: 3 },
        { start: 3, end: 7 },
      ],
    });
    expect(earliestTimes(order, Int32Array.of(0, 6, 0, 0, 0))).toBeNull();
    expect([...earliestTimes(order, Int32Array.of(0, 5, 0, 0, 0))!]).toEqual([0, 5, 8, 8, 10]);
    expect(latestTimes(order, Int32Array.of(0, 10, 10, 10, 4))).toBeNull();
    expect([...latestTimes(order, Int32Array.of(0, 10, 10, 10, 6))!]).toEqual([0, 1, 4, 4, 6]);
  });
});

describe('the order inside the plans of the demo', () => {
  const kitchens = demoKitchens();
  const components = demoComponents();
  const cases = demoSessions().flatMap((session) =>
    session.kitchens.map((kitchen) => ({ session, kitchen: byId(kitchens, kitchen) })),
  );
  it.each(cases.map((each) => [`${each.session.id} in ${each.kitchen.id}`, each] as const))(
    'is kept, and enough: %s',
    (_name, { session, kitchen }) => {
      const translated = sessionToProblem({ session, kitchen, components });
      if (!translated.ok) throw new Error('the demo is refused');
      const outcome = solve(translated.problem, { seed: 1, effort: 60_000 });
      if (outcome.kind !== 'proven' && outcome.kind !== 'bounded') throw new Error('no plan');
      expectOrder(translated.problem, outcome.solution, 1, 2);
    },
  );
});
