import { describe, expect, test } from 'vitest';
import { wallOffsetOf } from '../../../app/solving/wall-offset.ts';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import type { TraceRow } from '../../../solver/engine/outcome.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { planSession, type PlanSessionInput } from '../../../solver/translate/plan-session.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../support/demo-documents.ts';

const session = byId(demoSessions(), 'harbour-sunday');
const wallOffset = wallOffsetOf(session.start);
const input: PlanSessionInput = {
  session,
  kitchen: byId(demoKitchens(), 'harbour-one-oven'),
  components: demoComponents(),
  wallOffset,
  seed: 1,
  effort: 1e12,
};

describe('a session that is told to stop at its second better plan', () => {
  const rows: TraceRow[] = [];
  const drafts: Plan[] = [];
  const result = planSession({
    ...input,
    shouldStop: () => drafts.length >= 2,
    onProgress: (row, draft) => {
      rows.push(row);
      if (draft !== null) drafts.push(draft());
    },
  });

  test('has told of each as a plan that keeps every rule, with its binding chain and the tiers of the row', () => {
    expect(drafts.length).toBeGreaterThanOrEqual(2);
    for (const [index, draft] of drafts.entries()) {
      expect(checkPlan(draft, { wallOffset })).toEqual([]);
      expect(draft.bindingChain?.length).toBeGreaterThan(0);
      expect(draft).toMatchObject({ status: 'bounded', stopped: true });
      const row = rows.filter(({ tiers }) => tiers !== undefined)[index]!;
      expect(draft.tiers.map(({ id, value, bound }) => ({ id, value, bound }))).toEqual(
        row.tiers!.map(({ id, value, bound }) => ({ id, value, bound })),
      );
    }
  });

  test('answers with the best of them, and says of each tier what is proven', () => {
    if (result.kind !== 'planned') throw new Error(result.kind);
    const last = drafts.at(-1)!;
    expect(result.plan.stopped).toBe(true);
    expect(result.plan.tiers.map(({ value }) => value)).toEqual(last.tiers.map(({ value }) => value));
    expect(result.plan.steps).toEqual(last.steps);
    expect(result.plan.tiers.map(({ proven }) => proven)).toContain(false);
  });
});

test('a session that is told to stop before it is begun answers without a plan', () => {
  expect(planSession({ ...input, shouldStop: () => true })).toEqual({
    kind: 'unknown',
    reason: 'stopped before a plan was found',
  });
});
