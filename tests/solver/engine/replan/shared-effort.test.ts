import { describe, expect, it } from 'vitest';
import type { Problem, Task, Use } from '../../../../solver/engine/problem.ts';
import { OPEN, type ReplanAsked } from '../../../../solver/engine/replan/asked.ts';
import { replan } from '../../../../solver/engine/replan/replan.ts';

const HANDS: Use = { resource: 'ada', amount: 1 };
const task = (id: string, minutes: number, ...uses: readonly Use[]): Task => ({
  id,
  modes: [{ shortest: minutes, longest: minutes, uses }],
});

/**
 * Ada soaks beans, rests, and at 5 was to lift them out within the minute; then she cuts and packs, one after the other. The beans stay in
 * until 12, so the lift stands in the way of the cutting and the old order leads nowhere. All invented.
 */
function lateBeans(more: Partial<ReplanAsked> = {}): ReplanAsked {
  const tasks = [task('beans', 12), task('cut', 4, HANDS), task('lift', 1, HANDS), task('pack', 3, HANDS)];
  const old = [
    [0, 5],
    [6, 10],
    [5, 6],
    [10, 13],
  ].map(([start, end]) => ({ start: start!, end: end! }));
  const facts = new Int32Array(1 + 2 * tasks.length).fill(OPEN);
  [facts[1], facts[2]] = [0, 12];
  const problem: Problem = {
    format: 'afterheat.problem',
    version: 1,
    name: 'invented',
    horizon: 60,
    choices: [],
    tasks,
    resources: [{ id: 'ada', capacity: 1 }],
    states: [],
    reservoirs: [],
    lags: [
      { from: { task: 'beans', at: 'end' }, to: { task: 'lift', at: 'start' }, least: 0 },
      { from: { task: 'lift', at: 'start' }, to: { task: 'beans', at: 'end' }, least: -1 },
      // The cutting cannot wait until they are out.
      { from: { task: 'cut', at: 'start' }, to: 'origin', least: -7 },
    ],
    forbidden: [],
    totals: [],
    tiers: [],
  };
  return {
    problem,
    old: { choices: [], tasks: old },
    units: tasks.map(({ id }, index) => ({ id, tasks: [index] })),
    facts,
    now: 5,
    frozenUntil: 5,
    finish: tasks.map((_, index) => 2 + 2 * index),
    penalty: 2,
    seed: 1,
    effort: 30_000,
    ...more,
  };
}

describe('the effort of a replan', () => {
  it('is counted from the first move on, and bounds all of it', () => {
    const outcome = replan(lateBeans());
    expect('solution' in outcome && outcome.solution.tasks[1]!.start).toBeLessThanOrEqual(7);
    expect(outcome.work).toBeGreaterThan(0);
    expect(outcome.work).toBeLessThanOrEqual(30_000);
  });

  it('is the smaller one where what has begun has met soil that it avoids', () => {
    const soiled = (avoids: boolean): ReplanAsked => {
      const question = lateBeans({ effortIfSoiled: 0 });
      const [beans, ...rest] = question.problem.tasks;
      const board = { resource: 'board', amount: 0 };
      const bread = task('bread', 3, { ...board, leaves: ['gluten'] });
      const soaked = task('beans', 12, { ...board, ...(avoids ? { avoids: ['gluten'] } : {}) });
      expect(beans!.id).toBe(soaked.id);
      const facts = new Int32Array(question.facts.length + 2).fill(OPEN);
      facts.set(question.facts);
      [facts[facts.length - 2], facts[facts.length - 1]] = [0, 3];
      return {
        ...question,
        problem: {
          ...question.problem,
          tasks: [soaked, ...rest, bread],
          resources: [...question.problem.resources, { id: 'board', capacity: 1 }],
        },
        old: { choices: [], tasks: [...question.old.tasks, { start: 0, end: 3 }] },
        facts,
      };
    };
    expect(replan(soiled(false))).toMatchObject({ kind: 'proven' });
    expect(replan(soiled(true))).toMatchObject({ stopped: true, work: 0 });
  });
});
