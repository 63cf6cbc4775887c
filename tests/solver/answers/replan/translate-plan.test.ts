import { beforeAll, describe, expect, it } from 'vitest';
import { translatePlan } from '../../../../solver/answers/replan/translate-plan.ts';
import type { LivedStep, Plan } from '../../../../solver/kitchen/plan.ts';
import { checkPlan } from '../../../../solver/checker/check-plan.ts';
import { planSession } from '../../../../solver/translate/plan-session.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../../support/demo-documents.ts';

const DEMO = `${process.cwd()}/app/demo/`;
let plan: Plan;

beforeAll(() => {
  const session = byId(demoSessions(DEMO), 'harbour-sunday');
  const kitchen = byId(demoKitchens(DEMO), session.kitchens[0]!);
  const made = planSession({ session, kitchen, components: demoComponents(DEMO), seed: 1, effort: 60_000 });
  if (made.kind !== 'planned') throw new Error(made.kind);
  plan = made.plan;
});

describe('a plan that is translated again and again', () => {
  it('is the same problem and solution every time as documents read for the first time give, whatever was told between', () => {
    const told = plan.steps
      .filter(({ kind }) => kind === 'step')
      .filter((_, index) => index % 4 === 0)
      .map(({ id, segments }): LivedStep => ({
        step: id.replace(/~\d+$/, ''),
        minutes: segments.map(({ start, end }) => end - start + 3),
      }));
    expect(told.length).toBeGreaterThan(5);
    for (const lived of told.map((step) => ({ now: 10, steps: [step] }))) {
      const again = translatePlan(plan, undefined, lived);
      const anew = translatePlan(structuredClone(plan), undefined, lived);
      if (!again.ok || !anew.ok) throw new Error('refused');
      expect(again.translated.problem).toEqual(anew.translated.problem);
      expect(again.planned).toEqual(anew.planned);
    }
  });

  it('is checked alike the second time', () => {
    const late = { ...plan, steps: plan.steps.map((step) => ({ ...step, start: step.start + 1 })) };
    const first = checkPlan(late);
    expect(first.length).toBeGreaterThan(0);
    expect(checkPlan(late)).toEqual(first);
    expect(checkPlan(structuredClone(late))).toEqual(first);
  });
});
