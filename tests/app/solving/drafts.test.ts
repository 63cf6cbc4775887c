import { describe, expect, test } from 'vitest';
import type { PlanProgress } from '../../../app/api.ts';
import { createDrafts, DRAFT_MS } from '../../../app/solving/drafts.ts';
import { wallOffsetOf } from '../../../app/solving/wall-offset.ts';
import type { TraceRow } from '../../../solver/engine/outcome.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { supper } from '../../support/supper.ts';

/** What a search may tell; invented. */
const row = (finish: number, bound: number): TraceRow => ({
  work: 25,
  value: finish,
  bound,
  tier: 0,
  tiers: [
    { id: 'finish', value: finish, bound, proven: false },
    { id: 'calm', value: 7, bound: 0, proven: false },
  ],
});

function drafting() {
  const told: PlanProgress[] = [];
  const clock = { now: 0 };
  let read = 0;
  const drafts = createDrafts({
    onProgress: (progress) => told.push(progress),
    now: () => clock.now,
    wallOffset: wallOffsetOf(supper.start),
    effort: 100,
  });
  const draft =
    (name: string, plan: Plan = supper) =>
    (): Plan => {
      read += 1;
      return { ...plan, name };
    };
  return { drafts, told, clock, draft, read: () => read, names: () => told.map(({ plan }) => plan?.name ?? null) };
}

describe('better plans on their way out of a job', () => {
  test('the first is handed on at once, with how every tier stands', () => {
    const { drafts, told, draft, names } = drafting();
    drafts.heard(row(70, 60), draft('first'));
    expect(names()).toEqual(['first']);
    expect(told[0]).toMatchObject({ value: 70, bound: 60, share: 0.25, tier: 'finish' });
    expect(told[0]!.tiers).toEqual([
      { id: 'finish', unit: 'min', value: 70, bound: 60, proven: false },
      { id: 'calm', unit: 'changes', value: 7, bound: 0, proven: false },
    ]);
  });

  test('those that follow soon are told of but not read, and the newest is handed on when its time has come', () => {
    const { drafts, clock, draft, names, read } = drafting();
    drafts.heard(row(70, 60), draft('first'));
    drafts.heard(row(69, 60), draft('second'));
    drafts.heard(row(68, 60), draft('third'));
    drafts.look();
    expect([names(), read()]).toEqual([['first', null, null], 1]);
    clock.now = DRAFT_MS;
    drafts.look();
    drafts.look();
    expect([names(), read()]).toEqual([['first', null, null, 'third'], 2]);
  });

  test('a bound that closes in brings no plan again', () => {
    const { drafts, clock, draft, names } = drafting();
    drafts.heard(row(70, 60), draft('first'));
    clock.now = 10 * DRAFT_MS;
    drafts.heard(row(70, 65), draft('the same'));
    expect(names()).toEqual(['first', null]);
  });

  test('before the first plan the bound alone is told', () => {
    const { drafts, told } = drafting();
    drafts.heard({ work: 50, value: null, bound: 40 }, null);
    expect(told).toEqual([{ value: null, bound: 40, share: 0.5 }]);
  });

  test('one that breaks a rule is told of, but not handed on', () => {
    const { drafts, draft, names } = drafting();
    drafts.heard(row(70, 60), draft('broken', { ...supper, steps: supper.steps.slice(1) }));
    expect(names()).toEqual([null]);
    expect(drafts.passed(supper)).toBe(false);
  });

  test('a plan that was found sound as a draft is known again, another is not', () => {
    const { drafts, draft } = drafting();
    drafts.heard(row(70, 60), draft('first'));
    expect(drafts.passed({ ...supper, tiers: [] })).toBe(true);
    expect(drafts.passed({ ...supper, steps: supper.steps.slice(1) })).toBe(false);
  });
});
