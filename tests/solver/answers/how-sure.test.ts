import { describe, expect, it } from 'vitest';
import { howSure } from '../../../solver/answers/how-sure.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { planSession } from '../../../solver/translate/plan-session.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../support/demo-documents.ts';
import { randomSession } from '../../support/random-session.ts';

const NONE = { early: 0, late: 0 };
const SURE = { work: NONE, boiling: NONE, roasting: NONE, heating: NONE, cooling: NONE, resting: NONE };
const kitchens = demoKitchens();
const components = demoComponents();

function planned(id: string): Plan {
  const session = byId(demoSessions(), id);
  const result = planSession({
    session,
    kitchen: byId(kitchens, session.kitchens[0]!),
    components,
    seed: 1,
    effort: 20_000,
  });
  if (result.kind !== 'planned') throw new Error(result.kind);
  return result.plan;
}

const sure = (plan: Plan, options: Parameters<typeof howSure>[1] = {}) => {
  const result = howSure(plan, { samples: 500, ...options });
  if (result.kind !== 'sure') throw new Error(JSON.stringify(result.faults));
  return result;
};

const withSpreads = (plan: Plan, spreads: Plan['session']['spreads']): Plan => ({
  ...plan,
  session: { ...plan.session, spreads },
});

describe('how sure a plan is', () => {
  it('is certain where nothing varies: random sessions finish as planned and break no limit', () => {
    for (let seed = 0; seed < 15; seed++) {
      const made = planSession({ ...randomSession(seed), seed: 1, effort: 3_000 });
      if (made.kind !== 'planned') continue;
      const result = sure(withSpreads(made.plan, SURE), { samples: 3 });
      expect([result.p50, result.p90, result.anyLimit], `seed ${seed}`).toEqual([
        made.plan.finishMinutes,
        made.plan.finishMinutes,
        0,
      ]);
    }
  });

  it('tells chances that grow with the minute, and quantiles that lie in them', () => {
    const plan = planned('ten-box-hour');
    const { by, p50, p90 } = sure(plan, { by: Array.from({ length: 40 }, (_, k) => plan.finishMinutes - 10 + k) });
    for (const [index, { chance }] of by.entries())
      if (index > 0) expect(chance).toBeGreaterThanOrEqual(by[index - 1]!.chance);
    const at = (minute: number): number => by.find((each) => each.minute === minute)!.chance;
    expect(at(p50)).toBeGreaterThanOrEqual(0.5);
    expect(at(p50 - 1)).toBeLessThan(0.5);
    expect(at(p90)).toBeGreaterThanOrEqual(0.9);
    expect(at(p90 - 1)).toBeLessThan(0.9);
  });

  it('lays the risk on the kind of work that varies', () => {
    const plan = planned('weeknight-roast');
    const roasting = sure(withSpreads(plan, { ...SURE, roasting: { early: 0, late: 50 } }));
    expect(roasting.steps[0]?.step).toBe('mustard-pork/roast');
    expect(roasting.steps[0]!.delayMinutes).toBeGreaterThan(0);
    for (const { step, delayMinutes } of roasting.steps)
      if (step.startsWith('apple-cress')) expect(delayMinutes).toBe(0);
  });

  it('is later the more the work varies upwards', () => {
    const plan = planned('ten-box-hour');
    const means = [0, 25, 50, 100].map(
      (late) => sure(withSpreads(plan, { ...SURE, work: { early: 0, late } })).meanMinutes,
    );
    for (const [index, mean] of means.entries()) if (index > 0) expect(mean).toBeGreaterThan(means[index - 1]!);
  });

  it('counts a table time as a limit that may break', () => {
    const { limits } = sure(planned('weeknight-roast'));
    expect(limits.some(({ requirement }) => requirement?.endsWith('on the table in time') === true)).toBe(true);
  });

  it('leaves what is past as it is', () => {
    const plan = planned('ten-box-hour');
    const over = { ...plan, lived: { now: plan.allAwayMinutes + 1, steps: [] } };
    expect([sure(over).p50, sure(over).p90]).toEqual([plan.finishMinutes, plan.finishMinutes]);
  });
});
