import { describe, expect, it } from 'vitest';
import { solveTogether } from '../../../solver/engine/together.ts';
import { verifySolution } from '../../../solver/engine/verify-solution.ts';
import { planToSolution, splitsShown } from '../../../solver/translate/plan-to-solution.ts';
import { sessionToProblem } from '../../../solver/translate/session-to-problem.ts';
import { solutionToPlan } from '../../../solver/translate/solution-to-plan.ts';
import { tightened } from '../../../solver/translate/tighten.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../support/demo-documents.ts';
import { randomSession } from '../../support/random-session.ts';
import { planSession } from '../../../solver/translate/plan-session.ts';

const kitchens = demoKitchens();
const components = demoComponents();

describe('a plan read as a solution', () => {
  it.each(demoSessions().map((session) => ({ name: session.id, session })))(
    'keeps every rule of its problem and gives the same plan again: $name',
    ({ session }) => {
      const input = { session, kitchen: byId(kitchens, session.kitchens[0]!), components };
      const translated = sessionToProblem(input);
      if (!translated.ok) throw new Error(JSON.stringify(translated.faults));
      const outcome = solveTogether(translated.problem, { seed: 1, effort: 60_000 });
      if (!('solution' in outcome)) throw new Error(outcome.kind);
      const frame = { id: 'x', name: 'x', seed: 1, effort: 1, kind: 'bounded', stopped: false, tiers: [] } as const;
      const plan = solutionToPlan(translated, tightened(translated, outcome.solution), frame);
      const again = sessionToProblem({ ...input, splits: splitsShown(plan), openThings: true });
      if (!again.ok) throw new Error(JSON.stringify(again.faults));
      const solution = planToSolution(again, plan);
      expect(verifySolution(again.problem, solution)).toEqual([]);
      expect(solutionToPlan(again, solution, frame)).toEqual(plan);
    },
  );

  it('keeps every rule of its problem: random sessions', () => {
    const faults: string[] = [];
    let read = 0;
    for (let seed = 0; seed < 60; seed++) {
      const input = randomSession(seed, seed % 8 === 7 ? 2 : 1);
      const result = planSession({ ...input, seed: 1, effort: 5_000 });
      if (result.kind !== 'planned') continue;
      const again = sessionToProblem({ ...input, splits: splitsShown(result.plan), openThings: true });
      if (!again.ok) throw new Error(JSON.stringify(again.faults));
      read++;
      const solution = planToSolution(again, result.plan);
      faults.push(...verifySolution(again.problem, solution).map((fault) => `seed ${seed}: ${fault}`));
    }
    expect(faults).toEqual([]);
    expect(read).toBeGreaterThan(45);
  });
});
