import { describe, expect, it } from 'vitest';
import { validateProblem } from '../../../solver/engine/validate-problem.ts';
import { otherForms } from '../../support/other-forms.ts';
import { referenceProblem } from '../../support/random-problem-reference.ts';
import { bruteForce } from '../../support/brute-force.ts';
import { randomProblem, type ProblemShape } from '../../support/random-problem.ts';
import { faultsBetweenForms } from '../../support/same-optimum.ts';

const formNames = ['renamed', 'mirrored', 'roomier', 'scaled', 'split'];

// That the forms are what they claim to be is itself held against complete enumeration, which knows no engine.
describe('other forms of tiny problems', () => {
  const shape: ProblemShape = { tasks: [2, 4], horizon: [3, 6], length: 3 };

  it('have the optimum that is claimed, by complete enumeration of both', () => {
    const compared = new Map<string, number>();
    for (let seed = 60_000; seed < 60_120; seed++) {
      const problem = randomProblem(seed, shape);
      const first = bruteForce(problem, 300_000);
      if (first.kind === 'unfinished') continue;
      for (const form of otherForms(problem, seed)) {
        validateProblem(form.problem);
        const second = bruteForce(form.problem, 300_000);
        if (second.kind === 'unfinished') continue;
        const [name = ''] = form.name.split(' ');
        compared.set(name, (compared.get(name) ?? 0) + 1);
        expect(second.kind, `${form.name}, problem ${seed}`).toBe(first.kind);
        if (first.kind === 'optimal' && second.kind === 'optimal')
          expect(second.values, `${form.name}, problem ${seed}`).toEqual(
            first.values.map((value) => value * form.factor),
          );
      }
    }
    for (const name of formNames) expect(compared.get(name), name).toBeGreaterThan(15);
  });
});

// A sample; `npm run soak -- forms` takes them all.
describe('the engines on other forms of a problem', () => {
  it('prove nothing that stands against what they prove, or find, of the first form', () => {
    let proofs = 0;
    for (let k = 0; k < 15; k++) {
      const index = k * 20 + (k % 11);
      const told = faultsBetweenForms(referenceProblem(index), index, 0.05);
      expect(told.faults, `problem ${index}`).toEqual([]);
      proofs += told.proofs;
    }
    expect(proofs).toBeGreaterThan(100);
  });
});
