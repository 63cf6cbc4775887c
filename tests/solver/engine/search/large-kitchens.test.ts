/** First plans of large kitchens: generated sessions (invented), by effort counted, so that luck and the machine play no part. */
import { describe, expect, it } from 'vitest';
import { checkPlan } from '../../../../solver/checker/check-plan.ts';
import { Learner } from '../../../../solver/engine/learning/learner.ts';
import { solve } from '../../../../solver/engine/solve.ts';
import { solveTogether } from '../../../../solver/engine/together.ts';
import { sessionToProblem } from '../../../../solver/translate/session-to-problem.ts';
import { solutionToPlan } from '../../../../solver/translate/solution-to-plan.ts';
import { generatedSession, stockOf } from '../../../benchmarks/generated-sessions.ts';
import { byId, demoComponents, demoKitchens } from '../../../support/demo-documents.ts';

const stock = stockOf(byId(demoKitchens(), 'harbour-one-oven'), demoComponents());

describe('a first plan of a large kitchen', () => {
  // Without bringing forward what finds no place, seed 4 takes twice the effort given here.
  it.each([2, 4, 5])('comes with few dead ends and passes the checker, seed %i', (seed) => {
    const translated = sessionToProblem(generatedSession(stock, 160, seed));
    if (!translated.ok) throw new Error(JSON.stringify(translated.faults));
    const outcome = solve(translated.problem, { seed: 1, effort: 30_000 });
    if (!('solution' in outcome)) throw new Error(outcome.kind);
    const header = {
      id: 'test',
      name: 'test',
      seed: 1,
      effort: 30_000,
      kind: 'bounded',
      stopped: true,
      tiers: [],
    } as const;
    expect(checkPlan(solutionToPlan(translated, outcome.solution, header))).toEqual([]);
  });

  it('is left off within the first phase where the asker says stop', () => {
    const translated = sessionToProblem(generatedSession(stock, 160, 1));
    if (!translated.ok) throw new Error(JSON.stringify(translated.faults));
    let asked = 0;
    const outcome = solve(translated.problem, { seed: 1, effort: 1_000_000, shouldStop: () => ++asked > 3 });
    expect(outcome).toMatchObject({ kind: 'unknown', stopped: true, work: 0 });
    expect(asked).toBe(4);
  });

  it('is gone on from without a model where that would be huge', () => {
    const translated = sessionToProblem(generatedSession(stock, 320, 1));
    if (!translated.ok) throw new Error(JSON.stringify(translated.faults));
    const first = solve(translated.problem, { seed: 1, effort: 30_000 });
    if (!('solution' in first)) throw new Error(first.kind);
    const learner = new Learner(translated.problem, 1);
    expect(learner.offer(first.solution)).toBe(true);
    expect({ tooLarge: learner.model.tooLarge, done: learner.done }).toEqual({ tooLarge: true, done: false });
    const outcome = solveTogether(translated.problem, { seed: 1, effort: 800_000 });
    expect(outcome).toMatchObject({ kind: 'bounded', stopped: true });
    if (!('solution' in outcome)) throw new Error(outcome.kind);
    expect(outcome.tiers[0]?.value).toBeLessThan(first.tiers[0]?.value ?? 0);
  });
});
