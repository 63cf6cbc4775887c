import { describe, expect, it } from 'vitest';
import { Restarts } from '../../../../solver/engine/learning/restarts.ts';
import { Learner } from '../../../../solver/engine/learning/learner.ts';
import { solveByLearning } from '../../../../solver/engine/learning/prove.ts';
import type { Lag, Problem } from '../../../../solver/engine/problem.ts';
import { bruteForce } from '../../../support/brute-force.ts';
import { faultsOf } from '../../../support/plain-check.ts';
import { randomProblem, smallShape, tinyShape } from '../../../support/random-problem.ts';

const EFFORT = 20_000_000;

/** An invented bench: work of 3, 4 and 5 minutes for one pair of hands, a rest after the first, finish and waiting. */
function bench(lags: readonly Lag[] = []): Problem {
  const work = (id: string, length: number) => ({
    id,
    modes: [{ shortest: length, longest: length, uses: [{ resource: 'hands', amount: 1 }] }],
  });
  return {
    format: 'afterheat.problem',
    version: 1,
    name: 'bench',
    horizon: 40,
    choices: [],
    tasks: [work('a', 3), work('b', 4), work('c', 5), { id: 'rest', modes: [{ shortest: 6, longest: 20, uses: [] }] }],
    resources: [{ id: 'hands', capacity: 1 }],
    states: [],
    reservoirs: [],
    lags: [
      { from: { task: 'a', at: 'end' }, to: { task: 'rest', at: 'start' }, least: 0 },
      { from: { task: 'rest', at: 'end' }, to: { task: 'c', at: 'start' }, least: 0 },
      ...lags,
    ],
    forbidden: [],
    totals: [],
    tiers: [
      { kind: 'latest', id: 'finish', terms: ['a', 'b', 'c'].map((task) => ({ point: { task, at: 'end' as const } })) },
      {
        kind: 'waiting',
        id: 'waiting',
        terms: [{ weight: 2, from: { task: 'b', at: 'end' }, to: { task: 'c', at: 'start' }, free: 0 }],
      },
    ],
  };
}

describe('the learner', () => {
  it('proves one tier after the other', () => {
    // By hand: a at 0, rest 3–9, c at 9; b fits at 3–5 and at best ends at 9, as c starts.
    const outcome = solveByLearning(bench(), { seed: 1, effort: EFFORT });
    expect(outcome).toMatchObject({
      kind: 'proven',
      tiers: [
        { value: 14, bound: 14, proven: true },
        { value: 0, bound: 0, proven: true },
      ],
    });
  });

  it('takes a plan from outside, proves from there, and refuses plans that break a rule or are no better', () => {
    const learner = new Learner(bench(), 1);
    const plan = {
      choices: [],
      tasks: [
        { start: 0, end: 3 },
        { start: 20, end: 24 },
        { start: 10, end: 15 },
        { start: 3, end: 9 },
      ],
    };
    expect(learner.offer({ ...plan, tasks: plan.tasks.map(() => ({ start: 0, end: 3 })) })).toBe(false);
    expect(learner.offer(plan)).toBe(true);
    expect(learner.values[0]).toBe(24);
    expect(learner.offer(plan)).toBe(false);
    while (!learner.done) learner.improve({ conflicts: 100 });
    expect(learner.values).toEqual([14, 0]);
  });

  it('meets the optimum from below as from above', () => {
    for (let seed = 40_000; seed < 40_060; seed++) {
      const problem = randomProblem(seed, tinyShape);
      const truth = bruteForce(problem);
      const learner = new Learner(problem, 1);
      for (let slice = 0; slice < 500 && !learner.done && !learner.impossible; slice++)
        if (slice % 2 === 0) learner.aim(learner.bounds[learner.tier] ?? 0, { conflicts: 20 }, new Restarts());
        else learner.improve({ conflicts: 20 });
      expect(learner.impossible, `problem ${seed}`).toBe(truth.kind === 'infeasible');
      if (truth.kind !== 'optimal') continue;
      const outcomes = learner.outcomes();
      const proven = outcomes.filter((tier) => tier.proven).length;
      expect(proven, `problem ${seed}`).toBeGreaterThan(0);
      for (let k = 0; k < proven; k++) expect(outcomes[k]?.value, `problem ${seed}`).toBe(truth.values[k]);
    }
  });

  it('gives the same outcome to the same problem, seed and effort', () => {
    for (let seed = 0; seed < 8; seed++) {
      const problem = randomProblem(50_000 + seed, smallShape);
      const once = solveByLearning(problem, { seed: 7, effort: 400_000 });
      expect(solveByLearning(problem, { seed: 7, effort: 400_000 })).toEqual(once);
    }
  });

  it('stops when it is told to, with the best plan so far', () => {
    const problem = randomProblem(50_003, { tasks: [40, 40], horizon: [200, 200], length: 10, otherwise: 0 });
    const outcome = solveByLearning(problem, { seed: 1, effort: EFFORT, shouldStop: () => true });
    expect(outcome.stopped || outcome.kind === 'proven').toBe(true);
    if (outcome.kind === 'bounded') expect(faultsOf(problem, outcome.solution)).toEqual([]);
  });
});

describe('the clash of a problem without a plan', () => {
  const by = (task: string, until: number, requirement: string): Lag => ({
    from: { task, at: 'end' },
    to: 'origin',
    least: -until,
    requirement,
  });

  it('names requirements that cannot hold together, none of which could be left out', () => {
    // a and b by 6 need 7 minutes of the hands; c by 30 is no part of it.
    const problem = bench([by('a', 6, 'a by six'), by('b', 6, 'b by six'), by('c', 30, 'c by half past')]);
    const outcome = solveByLearning(problem, { seed: 1, effort: EFFORT });
    expect(outcome.kind).toBe('impossible');
    if (outcome.kind !== 'impossible') return;
    expect(outcome.clash.requirements).toEqual(['a by six', 'b by six']);
    for (const left of outcome.clash.requirements) {
      const rest = { ...problem, lags: problem.lags.filter((lag) => lag.requirement !== left) };
      expect(solveByLearning(rest, { seed: 1, effort: EFFORT }).kind).toBe('proven');
    }
  });

  it('names none when the problem fails by itself', () => {
    const problem = { ...bench([by('a', 30, 'a by half past')]), horizon: 13 };
    const outcome = solveByLearning(problem, { seed: 1, effort: EFFORT });
    expect(outcome).toMatchObject({ kind: 'impossible', clash: { kind: 'horizon', requirements: [] } });
  });

  it('tells a cycle of gaps from a chain that is too long', () => {
    const least: Lag = {
      from: { task: 'a', at: 'start' },
      to: { task: 'b', at: 'start' },
      least: 5,
      requirement: 'b late',
    };
    const most: Lag = {
      from: { task: 'b', at: 'start' },
      to: { task: 'a', at: 'start' },
      least: -4,
      requirement: 'b soon',
    };
    const outcome = solveByLearning(bench([least, most]), { seed: 1, effort: EFFORT });
    expect(outcome).toMatchObject({ kind: 'impossible', clash: { kind: 'cycle', requirements: ['b late', 'b soon'] } });
  });
});
