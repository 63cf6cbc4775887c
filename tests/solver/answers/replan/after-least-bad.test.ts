import { describe, expect, it } from 'vitest';
import type { LiveEvent } from '../../../../solver/answers/replan/events.ts';
import { runPlan } from '../../../../solver/answers/replan/replan.ts';
import { checkPlan } from '../../../../solver/checker/check-plan.ts';
import { planSession } from '../../../../solver/translate/plan-session.ts';
import { component, inOven, off, on, session, smallKitchen, step } from '../../../support/documents.ts';

/** Roots that roast for 20 minutes; the oven is someone else's from minute 40 to 80. All invented. */
const roots = component('roots', [
  step('peel', [on(5)]),
  step('roast', [on(1), off(20), on(1)], [inOven(100)], { after: [{ step: 'peel' }] }),
]);
const made = planSession({
  session: session([roots], { absences: [{ what: 'oven', from: 'PT40M', until: 'PT80M' }] }),
  kitchen: smallKitchen(),
  components: [roots],
  seed: 1,
  effort: 20_000,
});
if (made.kind !== 'planned') throw new Error(made.kind);
const plan = made.plan;

describe('cooks who go on by a least bad plan', () => {
  const roast = plan.steps.find(({ id }) => id === 'roots/roast')!;
  const now = roast.start + 5;
  const late: LiveEvent = { kind: 'late', step: 'roots/roast', remaining: 30 };
  const first = runPlan(plan).replan({ now, events: [late] });
  if (first.kind === 'refused' || first.kind === 'replanned') throw new Error(first.kind);
  const offered = first.leastBad!;

  it('have the oven while it is someone else’s, and are told so', () => {
    expect(first.broken.map(({ message }) => message).join()).toContain('is not there');
    expect(checkPlan(offered)).toEqual(first.broken);
  });

  it('are told so again when they ask once more, and can go on', () => {
    const again = runPlan(offered).replan({ now: now + 1, events: [] });
    if (again.kind === 'refused' || again.kind === 'replanned') throw new Error(again.kind);
    expect(again.leastBad).not.toBeNull();
    expect(again.broken).toEqual(checkPlan(again.leastBad!));
    expect(again.broken.map(({ message }) => message).join()).toContain('is not there');
  });

  it('are within every limit again once the roast turns out to be quicker', () => {
    const quicker: LiveEvent = { kind: 'late', step: 'roots/roast', remaining: 38 - now - 2 };
    const again = runPlan(offered).replan({ now: now + 2, events: [quicker] });
    if (again.kind !== 'replanned') throw new Error(again.kind);
    expect(again.broken).toEqual([]);
    expect(checkPlan(again.plan)).toEqual([]);
  });
});
