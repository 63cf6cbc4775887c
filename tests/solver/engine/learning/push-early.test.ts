import { expect, it } from 'vitest';
import { Learner } from '../../../../solver/engine/learning/learner.ts';
import type { Solution } from '../../../../solver/engine/outcome.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';
import { jobShopProblem } from '../../../benchmarks/readers/shops.ts';
import { seeded } from '../../../support/seeded.ts';

const JOBS = 5;
const MACHINES = 4;

/** An invented shop in which a job keeps its machine until the next one takes it. */
function blockingShop(seed: number): Problem {
  const chance = seeded(seed);
  const ops = Array.from({ length: JOBS }, () => {
    const first = chance.int(0, MACHINES - 1);
    return Array.from({ length: MACHINES }, (_, k) => [(first + k) % MACHINES, chance.int(1, 30)] as const);
  });
  return jobShopProblem({ name: 'invented', jobs: JOBS, machines: MACHINES, ops }, true);
}

/** The finish when every order of a plan is kept and everything is as early as can be, by rounds over all bounds until none moves. */
function earliestFinish(problem: Problem, plan: Solution): number {
  const n = problem.tasks.length;
  const shortest = problem.tasks.map(({ modes }) => modes[0]!.shortest);
  const isLast = (t: number): boolean => (t + 1) % MACHINES === 0;
  const machine = (t: number): string => problem.tasks[t]!.modes[0]!.uses[0]!.resource;
  const starts = new Array<number>(n).fill(0);
  const end = (t: number): number => (isLast(t) ? starts[t]! + shortest[t]! : starts[t + 1]!);
  for (let moved = true; moved;) {
    moved = false;
    for (let t = 0; t < n; t++) {
      const before = t % MACHINES === 0 ? 0 : starts[t - 1]! + shortest[t - 1]!;
      const others = Array.from({ length: n }, (_, u) => u).filter(
        (u) => u !== t && machine(u) === machine(t) && plan.tasks[u]!.end <= plan.tasks[t]!.start,
      );
      const earliest = Math.max(before, ...others.map(end));
      if (earliest <= starts[t]!) continue;
      starts[t] = earliest;
      moved = true;
    }
  }
  return Math.max(...starts.map((start, t) => start + shortest[t]!));
}

it('a plan that is found is as early as its own orders let it be', () => {
  let found = 0;
  for (const seed of [1, 2, 3, 4, 5, 6]) {
    const problem = blockingShop(seed);
    const learner = new Learner(problem, seed);
    for (let slice = 0; slice < 200 && !learner.done; slice++) {
      if (learner.improve({ conflicts: 250 }) !== 'improved') continue;
      found++;
      expect(learner.values[0], `seed ${seed}`).toBe(earliestFinish(problem, learner.best!));
    }
    expect(learner.done, `seed ${seed}`).toBe(true);
  }
  expect(found).toBeGreaterThan(6);
});
