import { describe, expect, it } from 'vitest';
import { Core } from '../../../../solver/engine/learning/core.ts';
import { Learner } from '../../../../solver/engine/learning/learner.ts';
import { Model, sealedAtLeast } from '../../../../solver/engine/learning/model/model.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';
import { everySolution } from '../../../support/brute-force.ts';
import { plainTierValues } from '../../../support/plain-check.ts';
import { randomProblem, type ProblemShape } from '../../../support/random-problem.ts';

const nothingToDecide = { next: () => 0 };

describe('a sealed core that is built on', () => {
  it('keeps its facts, and takes new clauses without what the facts decide', () => {
    const core = new Core(20);
    const { trail } = core;
    const x = trail.variable(0, 10);
    core.seal();
    core.addFact(trail.atLeast(x, 4));
    const y = trail.variable(0, 10);
    core.clause(trail.atMost(x, 3), trail.atLeast(y, 7));
    core.clause(trail.atLeast(x, 2), trail.atMost(y, 1));
    core.seal();
    expect(core.dead).toBe(false);
    expect(trail.root[2 * x]).toBe(4);
    expect(trail.root[2 * y]).toBe(7);
    expect(-trail.root[2 * y + 1]!).toBe(10);
  });

  it('is dead when a new clause contradicts the facts', () => {
    const core = new Core(20);
    const { trail } = core;
    const x = trail.variable(0, 10);
    core.seal();
    core.addFact(trail.atLeast(x, 4));
    core.clause(trail.atMost(x, 3));
    core.seal();
    expect(core.dead).toBe(true);
  });

  it('pushes new variables through new arcs, and old ones no less than before', () => {
    const core = new Core(50);
    const { trail, arcs } = core;
    const x = trail.variable(0, 20);
    const off = trail.variable(0, 1);
    arcs.add(2 * x, 2 * trail.variable(0, 30), 3, trail.atLeast(off, 1));
    core.seal();
    core.addFact(trail.atMost(off, 0));
    const z = trail.variable(0, 40);
    arcs.add(2 * x, 2 * z, 5, trail.alwaysTrue);
    core.seal();
    core.addFact(trail.atLeast(x, 6));
    expect(trail.root[2 * z]).toBe(11);
    expect(trail.root[2 * (off + 1)]).toBe(0);
    expect(core.solve([trail.atMost(z, 10)], nothingToDecide, 10, Infinity, undefined)).toBe('refuted');
  });
});

describe('changes added to a model that has learned', () => {
  const shape: ProblemShape = { tasks: [3, 4], horizon: [3, 6], length: 3 };
  /** Problems with a tier that counts changes, and every plan there is. */
  const counted = Array.from({ length: 1500 }, (_, k) => 61_000 + k).flatMap((seed) => {
    const problem = randomProblem(seed, shape);
    const tier = problem.tiers.findIndex(({ kind }) => kind === 'changes');
    const plans = tier < 0 ? null : everySolution(problem, 400);
    return plans === null || plans.length === 0 ? [] : [{ seed, problem, tier, plans }];
  });

  /** Whether the model has the plan with the tier at most at the value. */
  const has = (model: Model, plan: Parameters<Model['literalsOf']>[0], tier: number, value: number): boolean => {
    const { core } = model;
    const { parts, least } = model.tiers[tier]!;
    const literals = model.literalsOf(plan);
    const atMost = sealedAtLeast(core.trail, parts[0]!.x, value - least + 1) ^ core.trail.negation;
    const asked = [...literals, atMost].filter((literal) => literal !== core.trail.alwaysTrue);
    return core.solve(asked, model.branching, 1000, Infinity, undefined) === 'solution';
  };

  /** The model of a learner that has had a little time, or all it wants. */
  const learned = (problem: Problem, seed: number): Model => {
    const learner = new Learner(problem, seed);
    learner.descend({ conflicts: 5 });
    return learner.model;
  };

  it('count in every plan what they count in a new model, by complete enumeration', () => {
    let asked = 0;
    for (const { seed, problem, tier, plans } of counted) {
      const fresh = new Model(problem, false, true);
      const grown = learned(problem, seed);
      grown.addChanges();
      expect(grown.tiers[tier]!.parts.length, `problem ${seed}`).toBe(fresh.tiers[tier]!.parts.length);
      if (fresh.tiers[tier]!.parts.length === 0) continue;
      expect(grown.core.trail.variables, `problem ${seed}`).toBe(fresh.core.trail.variables);
      for (const plan of plans) {
        const value = plainTierValues(problem, plan)[tier]!;
        expect(has(grown, plan, tier, value), `problem ${seed}`).toBe(has(fresh, plan, tier, value));
        expect(has(grown, plan, tier, value - 1), `problem ${seed} below`).toBe(false);
        asked++;
      }
    }
    expect(asked).toBeGreaterThan(1000);
  });
});
