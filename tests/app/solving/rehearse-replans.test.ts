import { describe, expect, test } from 'vitest';
import { rehearseReplans } from '../../../app/solving/rehearse-replans.ts';
import { runPlan, type ReplanOptions, type RunningPlan } from '../../../solver/answers/replan/replan.ts';
import { planSession } from '../../../solver/translate/plan-session.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../support/demo-documents.ts';

const made = planSession({
  session: byId(demoSessions(), 'weeknight-roast'),
  kitchen: byId(demoKitchens(), 'lane-cottage'),
  components: demoComponents(),
  seed: 1,
  effort: 3_000,
});
if (made.kind !== 'planned') throw new Error(`no plan: ${made.kind}`);
const { plan } = made;

/** A running plan that notes what it is asked. */
function noting(): { readonly running: RunningPlan; readonly asked: ReplanOptions[]; readonly kinds: string[] } {
  const [asked, kinds] = [[] as ReplanOptions[], [] as string[]];
  const real = runPlan(plan);
  const running: RunningPlan = {
    plan,
    replan: (options) => {
      const result = real.replan(options);
      asked.push(options);
      kinds.push(result.kind);
      return result;
    },
  };
  return { running, asked, kinds };
}

describe('rehearsing the replans of a running plan', () => {
  test('a replan after it is the replan without it', () => {
    const ask = {
      now: 20,
      events: [{ kind: 'waiting', step: plan.steps.find(({ start }) => start > 15)!.id }],
    } as const;
    const before = runPlan(plan).replan(ask);
    const running = runPlan(plan);
    expect(rehearseReplans(running, () => false, 4)).toBe(true);
    expect(running.replan(ask)).toEqual(before);
    expect(runPlan(plan).replan(ask)).toEqual(before);
  });

  test('it tells of steps late, shorter, done and not begun, from its first step to its last, and hardly ever what no cook could tell', () => {
    const { running, asked, kinds } = noting();
    expect(rehearseReplans(running, () => false)).toBe(true);
    const told = asked.flatMap(({ events }) => events);
    expect(new Set(told.map(({ kind }) => kind))).toEqual(new Set(['late', 'done', 'waiting']));
    // An oven that heats is not told of.
    const first = Math.min(...plan.steps.flatMap(({ kind, start }) => (kind === 'preheat' ? [] : [start])));
    const thirds = new Set(asked.map(({ now }) => Math.floor((3 * (now - first)) / (plan.allAwayMinutes - first))));
    expect(thirds).toEqual(new Set([0, 1, 2]));
    expect(kinds.filter((kind) => kind === 'refused').length).toBeLessThan(kinds.length / 10);
  });

  test('another turn asks at other minutes', () => {
    const minutes = (turn: number): readonly number[] => {
      const { running, asked } = noting();
      rehearseReplans(running, () => false, 3, turn);
      return [...new Set(asked.map(({ now }) => now))];
    };
    const first = minutes(0);
    expect(minutes(0.5).filter((minute) => first.includes(minute))).toEqual([]);
  });

  test('it asks nothing more once somebody waits', () => {
    const { running, asked } = noting();
    expect(rehearseReplans(running, () => asked.length >= 2)).toBe(false);
    expect(asked.length).toBe(2);
  });
});
