import { describe, expect, it } from 'vitest';
import { Learner } from '../../../../solver/engine/learning/learner.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';
import { bruteForce } from '../../../support/brute-force.ts';
import { seeded } from '../../../support/seeded.ts';
import { after, mode, problemWith, task, use, finish } from '../build-problem.ts';

/** An invented bench of two or three components in pieces, for one pair of hands or two to choose from, with rests between some pieces. */
function bench(seed: number): Problem {
  const chance = seeded(seed);
  const crew = chance.chance(0.5) ? ['ada', 'ben'] : ['ada'];
  const components = chance.int(2, 3);
  const count = chance.int(4, 5);
  const groups = Array.from({ length: count }, (_, k) => `component ${k % components}`);
  const choices = Array.from({ length: count }, (_, k) => ({ id: `who ${k}`, options: crew }));
  const tasks = groups.map((group, k) => {
    const length = chance.int(1, 2);
    const optional = chance.chance(0.15) ? [null] : [];
    const modes = [...crew.map((person) => mode(length, [use(person)])), ...optional];
    return modes.length === 1
      ? task(`t${k}`, length, [use('ada')], { group })
      : { id: `t${k}`, choice: `who ${k}`, modes, group };
  });
  const lags = groups.flatMap((group, k) => {
    const before = groups.lastIndexOf(group, k - 1);
    return k > 0 && before >= 0 && chance.chance(0.6) ? [after(`t${before}`, `t${k}`, chance.int(0, 3))] : [];
  });
  return problemWith({
    horizon: 12,
    tasks,
    lags,
    choices: choices
      .map((choice, k) => ({
        ...choice,
        options: tasks[k]!.modes.map((each, m) => (each === null ? 'none' : crew[m]!)),
      }))
      .filter((_, k) => tasks[k]!.modes.length > 1),
    resources: crew.map((id) => ({ id, capacity: 1 })),
    tiers: [finish(tasks), { kind: 'changes', id: 'calm', resources: crew }],
  });
}

describe('a count raised from below', () => {
  it('ends at the least number of changes, by complete enumeration, with a plan that has it', () => {
    let raised = 0;
    for (let seed = 0; seed < 80; seed++) {
      const problem = bench(seed);
      const truth = bruteForce(problem);
      const learner = new Learner(problem, seed);
      while (!learner.done && !learner.impossible && learner.tier === 0) learner.descend({ conflicts: 500 });
      expect(learner.impossible, `bench ${seed}`).toBe(truth.kind === 'infeasible');
      if (truth.kind !== 'optimal') continue;
      for (let slice = 0; slice < 400 && learner.raisable; slice++) {
        raised++;
        learner.raise({ conflicts: 7 });
        expect(learner.bounds[1], `bench ${seed}`).toBeLessThanOrEqual(truth.values[1] as number);
      }
      expect(learner.done, `bench ${seed}`).toBe(true);
      expect(learner.values, `bench ${seed}`).toEqual(truth.values);
    }
    expect(raised).toBeGreaterThan(50);
  });

  it('ends there too where search from above takes turns with it and is held to its sums', () => {
    let taken = 0;
    for (let seed = 0; seed < 80; seed++) {
      const problem = bench(seed);
      const truth = bruteForce(problem);
      if (truth.kind !== 'optimal') continue;
      const learner = new Learner(problem, seed);
      for (let slice = 0; slice < 800 && !learner.done; slice++) {
        if (!learner.raisable || slice % 4 === 0) learner.descend({ conflicts: 2 });
        else learner.raise({ conflicts: 7 });
        if (learner.tier === 1) taken++;
      }
      expect(learner.done, `bench ${seed}`).toBe(true);
      expect(learner.values, `bench ${seed}`).toEqual(truth.values);
    }
    expect(taken).toBeGreaterThan(50);
  });
});
