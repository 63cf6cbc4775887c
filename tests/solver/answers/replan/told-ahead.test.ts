/** Steps told to have begun or to be over before what they wait for. */
import { describe, expect, it } from 'vitest';
import type { LiveEvent } from '../../../../solver/answers/replan/events.ts';
import { runPlan } from '../../../../solver/answers/replan/replan.ts';
import type { ToldAhead } from '../../../../solver/answers/replan/told-ahead.ts';
import type { Plan } from '../../../../solver/kitchen/plan.ts';
import { planSession } from '../../../../solver/translate/plan-session.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../../support/demo-documents.ts';

function demoPlan(): Plan {
  const session = byId(demoSessions(), 'weeknight-roast');
  const kitchen = byId(demoKitchens(), session.kitchens[0]!);
  const made = planSession({ session, kitchen, components: demoComponents(), seed: 1, effort: 5_000 });
  if (made.kind !== 'planned') throw new Error(made.kind);
  return made.plan;
}

const plan = demoPlan();
const running = runPlan(plan);

function aheadAt(now: number, events: readonly LiveEvent[]): readonly ToldAhead[] {
  const result = running.replan({ now, events });
  if (result.kind === 'refused') throw new Error(JSON.stringify(result.faults));
  return result.kind === 'replanned' || result.leastBad !== null ? [] : result.toldAhead;
}

/** The steps of a dish that one waits for by its component, directly or not, and that are planned to end after a minute. */
function waitsFor(id: string, now: number): Set<string> {
  const step = plan.steps.find((each) => each.id === id)!;
  const written = plan.components.find((component) => component.id === step.component)!.steps;
  const names = written.find((each) => each.id === step.step)!.after?.map((after) => after.step) ?? [];
  const before = plan.steps.filter(
    (each) => each.component === step.component && names.includes(each.step ?? '') && each.end >= now,
  );
  return new Set(before.flatMap((each) => [each.id, ...waitsFor(each.id, now)]));
}

describe('a step told ahead of what it waits for', () => {
  const now = 2;
  const late = plan.steps.filter(
    ({ kind, component, start, id }) =>
      kind !== 'preheat' && component === 'mustard-pork' && start > now && waitsFor(id, now).size > 0,
  );

  it('is told with all of these, in the order in which they are planned', () => {
    expect(late.length).toBeGreaterThan(1);
    for (const { id } of late) {
      const ahead = aheadAt(now, [{ kind: 'done', step: id, at: now }]);
      expect(ahead.map(({ step }) => step)).toEqual([id]);
      expect(new Set(ahead[0]!.waitsFor)).toEqual(waitsFor(id, now));
      const starts = ahead[0]!.waitsFor.map((each) => plan.steps.find((step) => step.id === each)!.start);
      expect(starts).toEqual([...starts].sort((a, b) => a - b));
    }
  });

  it('is ahead of nothing once these are told to be over', () => {
    const { id } = late.at(-1)!;
    const [ahead] = aheadAt(now, [{ kind: 'done', step: id, at: now }]);
    const all = [...ahead!.waitsFor, id].map((step): LiveEvent => ({ kind: 'done', step, at: now }));
    expect(aheadAt(now, all)).toEqual([]);
  });

  it('is not one that waits for nothing', () => {
    const first = plan.steps.find(
      ({ id, kind, component, start }) =>
        kind === 'step' && component !== undefined && start > now && waitsFor(id, now).size === 0,
    )!;
    expect(aheadAt(now, [{ kind: 'started', step: first.id, at: now }])).toEqual([]);
  });
});
