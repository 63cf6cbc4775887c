import { describe, expect, it } from 'vitest';
import { Budget } from '../../../../solver/engine/budget.ts';
import { priorityRules } from '../../../../solver/engine/search/priority-rules.ts';
import { prepare, Workshop } from '../../../../solver/engine/search/workshop.ts';
import { sessionToProblem } from '../../../../solver/translate/session-to-problem.ts';
import { jobShopProblem } from '../../../benchmarks/readers/shops.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../../support/demo-documents.ts';
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
        workshop.planByRule(rule, { failLimit: 200, whim: 25, strides: seed === 2 });
        dives++;
        expect(workshop.store.cells, `${problem.name}, ${rule.name}`).toEqual(before);
      }
    }
    expect(dives).toBeGreaterThan(30);
  });
});

describe('dives in strides', () => {
  it('take less work for each plan of two cooks and one oven', () => {
    const session = byId(demoSessions(), 'harbour-sunday');
    const kitchen = byId(demoKitchens(), 'harbour-one-oven');
    const translated = sessionToProblem({ session, kitchen, components: demoComponents(), crew: 'two' });
    if (!translated.ok) throw new Error(JSON.stringify(translated.faults));
    const { problem } = translated;
    const workFor = (strides: boolean): number => {
      const budget = new Budget(10_000_000, undefined);
      const workshop = new Workshop(problem, budget, { seed: 1 }, prepare(problem, budget)!);
      const plans = Array.from({ length: 6 }, () => priorityRules)
        .flat()
        .filter(({ direction }) => direction === 'backward')
        .map((rule) => workshop.planByRule(rule, { failLimit: 30, shapeWhim: 50, strides }))
        .filter((plan) => plan !== null);
      expect(plans.length).toBeGreaterThan(10);
      return workshop.store.work / plans.length;
    };
    expect(workFor(true)).toBeLessThan(workFor(false));
  });
});
