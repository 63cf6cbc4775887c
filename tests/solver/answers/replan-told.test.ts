import { describe, expect, it } from 'vitest';
import { runPlan, type ReplanResult } from '../../../solver/answers/replan/replan.ts';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import type { Plan, PlannedStep } from '../../../solver/kitchen/plan.ts';
import { planSession } from '../../../solver/translate/plan-session.ts';
import { generatedSession, stockOf } from '../../benchmarks/generated-sessions.ts';
import { byId, demoComponents, demoKitchens } from '../../support/demo-documents.ts';
import { supper } from '../../support/supper.ts';

const DEMO = `${process.cwd()}/app/demo/`;

/** Pots of the demo's bean stew alone: a step of three waits with a look in each, whose beans the toxin rule keeps at the boil. */
function stewPlan(): Plan {
  const kitchen = demoKitchens(DEMO)[0]!;
  const stew = byId(demoComponents(DEMO), 'white-bean-stew');
  const made = planSession({
    ...generatedSession(stockOf(kitchen, [stew]), 10, 1),
    seed: 1,
    effort: 20_000,
  });
  if (made.kind !== 'planned') throw new Error(made.kind);
  return made.plan;
}

const plan = stewPlan();
const running = runPlan(plan);
const cooking = plan.steps.find(({ step }) => step === 'cook')!;
const isLook = ({ check }: PlannedStep['segments'][number]): boolean => check === true;
const waits = (step: PlannedStep) => step.segments.filter((each) => each.hands === 'off');
const looks = (step: PlannedStep) => step.segments.filter(isLook);
const longest = waits(cooking).reduce((a, b) => (b.end - b.start > a.end - a.start ? b : a));
const look = looks(cooking).find(({ start }) => start >= longest.start && start < longest.end)!;

function replanned(result: ReplanResult): Extract<ReplanResult, { readonly kind: 'replanned' }> {
  if (result.kind !== 'replanned') throw new Error(`${result.kind}: ${JSON.stringify(result)}`);
  return result;
}

describe('a wait told to be shorter than its look asks', () => {
  it('leaves the looks of later waits where they are', () => {
    const now = look.end;
    const { plan: made } = replanned(
      running.replan({ now, events: [{ kind: 'late', step: cooking.id, remaining: 1 }] }),
    );
    const step = made.steps.find(({ id }) => id === cooking.id)!;
    const last = waits(step).at(-1)!;
    const after = looks(step).filter(({ start }) => start >= now);
    expect(looks(cooking).filter(({ start }) => start >= longest.end).length).toBeGreaterThan(0);
    expect(after).toHaveLength(looks(cooking).filter(({ start }) => start >= longest.end).length);
    for (const each of after) expect(each.start >= last.start && each.end <= last.end).toBe(true);
  });
});

describe('beans told to be done before they are safe', () => {
  // 30 minutes at the boil after a soak: US FDA, Bad Bug Book, chapter on phytohaemagglutinin, as reported by Ohio State University Extension (secondary).
  const now = look.end;
  const early = replanned(running.replan({ now, events: [{ kind: 'done', step: cooking.id, at: now }] }));

  it('are named as a rule of safety that is broken, and stay so', () => {
    expect(now - cooking.start).toBeLessThan(30 + longest.start - cooking.start);
    expect(early.broken.map(({ rule }) => rule)).toContain(9);
    expect(early.broken.map(({ message }) => message).join()).toContain('the safety rules ask for 30 min');
    const later = replanned(runPlan(early.plan).replan({ now: now + 1, events: [] }));
    expect(later.broken.map(({ rule }) => rule)).toContain(9);
  });

  it('are all that is named: what was told right breaks nothing', () => {
    expect(checkPlan(early.plan).filter(({ rule }) => rule !== 9)).toEqual([]);
    const late = replanned(running.replan({ now, events: [{ kind: 'late', step: cooking.id, remaining: 31 }] }));
    expect(late.broken).toEqual([]);
    expect(checkPlan(late.plan)).toEqual([]);
  });
});

/**
 * A plan worked out by hand, its salad chopped from minute 9 to 13 and from 16 to 20; without avoided allergens, of which the planner keeps
 * a wider margin than the checker.
 */
const byHand: Plan = {
  ...supper,
  session: { ...supper.session, eaters: supper.session.eaters?.map((eater) => ({ ...eater, avoids: [] })) },
  lived: { now: 1, steps: [] },
};

describe('a piece of interrupted work told to end sooner than the least of a piece', () => {
  const told = replanned(
    runPlan(byHand).replan({ now: 10, events: [{ kind: 'late', step: 'salad/chop~1', remaining: 1 }] }),
  );

  it('is kept as it was told, and noted as this very piece', () => {
    const pieces = told.plan.steps.filter(({ step }) => step === 'chop');
    expect(pieces[0]!.end - pieces[0]!.start).toBe(2);
    expect(told.plan.lived?.steps).toEqual([{ step: 'salad/chop', minutes: [6], pieces: [2, null] }]);
    expect(checkPlan(told.plan)).toEqual([]);
  });

  it('stays noted when the other is told of', () => {
    const { plan: later } = replanned(
      runPlan(told.plan).replan({ now: 17, events: [{ kind: 'late', step: 'salad/chop~2', remaining: 4 }] }),
    );
    expect(later.lived?.steps).toEqual([{ step: 'salad/chop', minutes: [7], pieces: [2, 5] }]);
    expect(checkPlan(later)).toEqual([]);
  });
});

describe('a piece of interrupted work told to be over before it was to begin', () => {
  const { plan: over } = replanned(
    runPlan(byHand).replan({ now: 14, events: [{ kind: 'done', step: 'salad/chop~2', at: 14 }] }),
  );

  it('ends the whole then, with all that was held for it', () => {
    const pieces = over.steps.filter(({ step }) => step === 'chop');
    expect(Math.max(...pieces.map(({ end }) => end))).toBe(14);
    expect(Math.max(...pieces.flatMap(({ places }) => places.map(({ until }) => until)))).toBe(14);
    expect(over.lived?.steps).toEqual([{ step: 'salad/chop', minutes: [4], pieces: [null, 0] }]);
  });

  it('leaves a plan that can be gone on by, however often the rest is planned again', () => {
    for (const now of [14, 15, 18]) {
      const later = replanned(runPlan(over).replan({ now, events: [] }));
      expect(later.plan.steps.filter(({ step }) => step === 'chop').every(({ end }) => end <= 14)).toBe(true);
      expect(checkPlan(later.plan).map(({ message }) => message)).toEqual(later.broken.map(({ message }) => message));
    }
  });
});
