import { describe, expect, it } from 'vitest';
import { Restarts } from '../../../../solver/engine/learning/core.ts';
import { Learner } from '../../../../solver/engine/learning/learner.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';
import type { Solution } from '../../../../solver/engine/outcome.ts';
import { jobShopProblem } from '../../../benchmarks/readers/shops.ts';
import { bruteForce } from '../../../support/brute-force.ts';
import { randomProblem, smallShape, tinyShape } from '../../../support/random-problem.ts';
import { seeded } from '../../../support/seeded.ts';

const CONFLICTS = 3000;

/** Every variable's value in each of some plans, as the model of this seed assigns them. */
function assignments(problem: Problem, plans: readonly Solution[]): Int32Array[] {
  return plans.flatMap((plan) => {
    const { model } = new Learner(problem, 1);
    const { core } = model;
    const verdict = core.solve(model.literalsOf(plan), model.branching, CONFLICTS, Infinity, undefined);
    // A plan that stands against the order of interchangeable work is not one of the model's.
    if (verdict !== 'solution') return [];
    core.adoptGuide();
    return [Int32Array.from(core.guide)];
  });
}

/** All plans met on the way to the proof. */
function plansOnTheWay(problem: Problem): Solution[] {
  const learner = new Learner(problem, 3);
  const plans: Solution[] = [];
  for (let slice = 0; slice < 40 && !learner.done && !learner.impossible && !learner.model.tooLarge; slice++)
    if (learner.improve({ conflicts: CONFLICTS }) === 'improved' && learner.best !== null) plans.push(learner.best);
  return plans;
}

/**
 * Solves once more and holds every reason used, and every clause learned, against the plans: a plan that satisfies a reason satisfies
 * what it implies, and every plan satisfies every learned clause, for none of them rests on an assumption.
 */
function audit(problem: Problem, plans: readonly Solution[]): { checked: number; wrong: string[] } {
  const known = assignments(problem, plans);
  const learner = new Learner(problem, 2);
  const { core } = learner.model;
  const { trail } = core;
  const wrong: string[] = [];
  let checked = 0;
  const holds = (values: Int32Array, slot: number, value: number): boolean =>
    ((slot & 1) === 0 ? values[slot >> 1]! : -values[slot >> 1]!) >= value;
  core.analysis.audit = (reason, slot, value) => {
    for (const values of known) {
      checked++;
      let all = true;
      for (let k = 0; k < reason.size && all; k++) all = holds(values, reason.slots[k]!, reason.values[k]!);
      if (all && (slot < 0 || !holds(values, slot, value))) wrong.push(`a reason for slot ${slot} at ${value}`);
    }
  };
  core.watch = (clause, size) => {
    for (const values of known) {
      let some = false;
      for (let k = 0; k < size && !some; k++) some = holds(values, trail.slotOf(clause[k]!), trail.valueOf(clause[k]!));
      if (!some) wrong.push(`a learned clause of ${size} literals`);
    }
  };
  for (let slice = 0; slice < 10 && !learner.done && !learner.impossible && wrong.length === 0; slice++) {
    learner.improve({ conflicts: CONFLICTS });
    if (learner.best !== null) learner.aim(learner.bounds[learner.tier] ?? 0, { conflicts: 50 }, new Restarts());
  }
  return { checked, wrong };
}

describe('reasons and learned clauses of the learning engine', () => {
  it('hold in the optimum of tiny problems by complete enumeration, and in every plan on the way', () => {
    let checked = 0;
    for (let seed = 20_000; seed < 20_250; seed++) {
      const problem = randomProblem(seed, tinyShape);
      const truth = bruteForce(problem);
      if (truth.kind !== 'optimal') continue;
      const result = audit(problem, [truth.solution, ...plansOnTheWay(problem)]);
      expect(result.wrong, `problem ${seed}`).toEqual([]);
      checked += result.checked;
    }
    expect(checked).toBeGreaterThan(1000);
  });

  it('hold in every plan found for larger problems of all features', () => {
    let checked = 0;
    for (let seed = 30_000; seed < 30_060; seed++) {
      const problem = randomProblem(seed, smallShape);
      const plans = plansOnTheWay(problem);
      if (plans.length === 0) continue;
      const result = audit(problem, plans);
      expect(result.wrong, `problem ${seed}`).toEqual([]);
      checked += result.checked;
    }
    expect(checked).toBeGreaterThan(1000);
  });

  // A reason of a precedence set once kept no member at all when the first start alone reached the goal. It took a job shop of
  // ten jobs to show, as a proof of 1030 where 1005 is possible.
  it('hold in every plan found for job shops, where sets of ordered tasks push each other', () => {
    let checked = 0;
    for (let seed = 0; seed < 4; seed++) {
      const chance = seeded(seed);
      const machines = 6;
      const ops = Array.from({ length: 8 }, () =>
        chance.shuffle([...Array(machines).keys()]).map((machine) => [machine, chance.int(1, 99)] as const),
      );
      const problem = jobShopProblem({ name: `random ${seed}`, jobs: 8, machines, ops });
      const result = audit(problem, plansOnTheWay(problem));
      expect(result.wrong, `job shop ${seed}`).toEqual([]);
      checked += result.checked;
    }
    expect(checked).toBeGreaterThan(1000);
  });
});
