import { describe, expect, it } from 'vitest';
import { Budget } from '../../../../solver/engine/budget.ts';
import { priorityRules } from '../../../../solver/engine/search/priority-rules.ts';
import { prepare, Workshop } from '../../../../solver/engine/search/workshop.ts';
import { jobShopProblem } from '../../../benchmarks/readers/shops.ts';
import { seeded } from '../../../support/seeded.ts';

/** An invented shop where a job keeps its machine until the next takes it, so that dives run into the same dead ends again and again. */
function blockingShop(seed: number) {
  const chance = seeded(seed);
  const machines = [0, 1, 2, 3, 4];
  const ops = Array.from({ length: 20 }, () =>
    chance.shuffle(machines).map((machine): readonly [number, number] => [machine, chance.int(1, 20)]),
  );
  return jobShopProblem({ name: `blocking ${seed}`, jobs: ops.length, machines: machines.length, ops }, true);
}

describe('a dive', () => {
  it('leaves the store as it was, however often it had to go back', () => {
    let dives = 0;
    for (let seed = 0; seed < 3; seed++) {
      const problem = blockingShop(seed);
      const budget = new Budget(40_000_000, undefined);
      const workshop = new Workshop(problem, budget, { seed }, prepare(problem, budget)!);
      if (!workshop.consistent) continue;
      const before = workshop.store.cells.slice();
      for (const rule of priorityRules) {
        workshop.planByRule(rule, 200, 25);
        dives++;
        expect(workshop.store.cells, `${problem.name}, ${rule.name}`).toEqual(before);
      }
    }
    expect(dives).toBeGreaterThan(30);
  });
});
