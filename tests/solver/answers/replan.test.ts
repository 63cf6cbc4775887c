import { describe, expect, it } from 'vitest';
import * as v from 'valibot';
import type { LiveEvent } from '../../../solver/answers/replan/events.ts';
import { runPlan } from '../../../solver/answers/replan/replan.ts';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import { Plan, wholeId, type PlannedStep } from '../../../solver/kitchen/plan.ts';
import { planSession } from '../../../solver/translate/plan-session.ts';
import { randomSession } from '../../support/random-session.ts';
import { seeded, type Seeded } from '../../support/seeded.ts';

const EFFORT = 6_000;

/** What has begun before a minute, told segment by segment; what is under way without its end. */
function past(plan: Plan, now: number): readonly string[] {
  return plan.steps
    .filter(({ kind, start }) => kind !== 'preheat' && start < now)
    .flatMap((step) => [
      `${step.id} at ${step.start}`,
      ...step.segments
        .filter(({ start }) => start < now)
        .map(({ start, end, person }) => `${step.id}: ${start}–${end <= now ? end : '…'} ${person ?? ''}`),
      ...step.places.filter(({ from }) => from < now).map(({ kind, id, from }) => `${step.id}: ${kind} ${id} ${from}`),
    ])
    .sort();
}

/** Who begins a step, and what it has from its start on. */
const whoAndWhere = ({ segments, places, start }: PlannedStep): string =>
  JSON.stringify([
    segments[0]?.person,
    places.filter(({ from }) => from === start).map(({ kind, id }) => `${kind} ${id}`),
  ]);

const underWay = (plan: Plan, now: number): readonly PlannedStep[] =>
  plan.steps.filter(({ kind, start, end }) => kind !== 'preheat' && start < now && end > now);

/** One step under way takes longer, or ends now. */
function randomEvents(plan: Plan, now: number, chance: Seeded): readonly LiveEvent[] {
  const running = underWay(plan, now);
  if (running.length === 0 || chance.chance(0.2)) return [];
  const { id } = chance.pick(running);
  return [{ kind: 'late', step: id, remaining: chance.int(1, 15) }];
}

describe('replanning random sessions', () => {
  it('keeps the past, passes the checker, and is never worse than carrying on', () => {
    const faults: string[] = [];
    const seen = { replanned: 0, late: 0, better: 0, none: 0 };
    for (let seed = 0; seed < 40; seed++) {
      const chance = seeded(seed);
      const made = planSession({ ...randomSession(seed, seed % 8 === 7 ? 2 : 1), seed: 1, effort: 4_000 });
      if (made.kind !== 'planned') continue;
      const running = runPlan(made.plan);
      for (let turn = 0; turn < 2; turn++) {
        const now = chance.int(1, made.plan.allAwayMinutes);
        const events = randomEvents(made.plan, now, chance);
        const result = running.replan({ now, events, effort: EFFORT });
        const name = `seed ${seed} at ${now}, ${JSON.stringify(events)}`;
        if (result.kind === 'refused') {
          faults.push(`${name}: refused ${JSON.stringify(result.faults)}`);
          continue;
        }
        if (result.kind !== 'replanned') {
          seen.none++;
          continue;
        }
        seen.replanned++;
        if (events.length > 0) seen.late++;
        if (result.carriedOn === null || result.worth.total < result.carriedOn) seen.better++;
        if (result.carriedOn !== null && result.worth.total > result.carriedOn) faults.push(`${name}: worse`);
        if (result.bound > result.worth.total) faults.push(`${name}: bound above worth`);
        const { finish, changed, total } = result.worth;
        if (total !== finish + 2 * changed.length || new Set(changed).size < changed.length)
          faults.push(`${name}: the worth does not add up`);
        if (result.plan.finishMinutes !== finish)
          faults.push(`${name}: finish ${result.plan.finishMinutes}, not ${finish}`);
        // Who takes over a step makes it a changed one.
        for (const step of made.plan.steps) {
          const found = result.plan.steps.find(({ id }) => id === step.id);
          if (step.kind === 'preheat' || step.start < now || found === undefined || changed.includes(wholeId(step)))
            continue;
          if (found.segments[0]?.person !== step.segments[0]?.person)
            faults.push(`${name}: ${step.id} goes to another, and is not told as changed`);
        }
        // What is due within three minutes, and carrying on leaves there, is left alone.
        const carried = running.replan({ now, events, effort: 0 });
        if (carried.kind === 'replanned')
          for (const step of made.plan.steps) {
            if (step.kind === 'preheat' || step.start < now || step.start >= now + 3) continue;
            const [kept, found] = [carried.plan, result.plan].map((plan) =>
              plan.steps.find(({ id }) => id === step.id),
            );
            if (kept?.start === step.start && (found?.start !== step.start || whoAndWhere(found) !== whoAndWhere(step)))
              faults.push(`${name}: ${step.id} is due at ${step.start}, and is not left alone`);
          }
        const expected = past(made.plan, now).filter((line) => !events.some(({ step }) => line.startsWith(`${step}:`)));
        const kept = past(result.plan, now);
        for (const line of expected) if (!kept.includes(line)) faults.push(`${name}: ${line} is no longer`);
        faults.push(
          ...checkPlan(result.plan)
            .filter(({ message }) => result.broken.every((told) => told.message !== message))
            .map(({ rule, message }) => `${name}, rule ${rule}: ${message}`),
        );
        const issues = v.safeParse(Plan, result.plan).issues;
        if (issues !== undefined) faults.push(`${name}: ${issues[0].message}`);
      }
    }
    expect(faults).toEqual([]);
    expect(seen.replanned).toBeGreaterThan(50);
    expect(seen.late).toBeGreaterThan(15);
    expect(seen.better).toBeGreaterThan(0);
  });
});

describe('the least bad way to go on where random sessions run very late', () => {
  // Harm as the checker tells it: raw food, allergens and soil (rule 8), cooking through, toxins, and food kept too cool (rule 9).
  it('is late at most: no food of it is raw, soiled or too cool; where it would be, there is none, with the reason and what to do', () => {
    const faults: string[] = [];
    const seen = { offered: 0, none: 0 };
    for (let seed = 100; seed < 130; seed++) {
      const chance = seeded(seed);
      const made = planSession({ ...randomSession(seed, 1), seed: 1, effort: 3_000 });
      if (made.kind !== 'planned') continue;
      const running = runPlan(made.plan);
      for (let turn = 0; turn < 3; turn++) {
        const now = chance.int(1, made.plan.allAwayMinutes);
        const under = underWay(made.plan, now);
        if (under.length === 0) continue;
        const { id } = chance.pick(under);
        const events = [{ kind: 'late', step: id, remaining: chance.int(30, 120) } as const];
        const result = running.replan({ now, events, effort: EFFORT });
        if (result.kind !== 'impossible' && result.kind !== 'unknown') continue;
        const name = `seed ${seed} at ${now}, ${JSON.stringify(events)}`;
        if (result.leastBad === null) {
          seen.none++;
          if (
            [...result.broken, ...result.against].some(({ harm }) => harm !== undefined) !==
            result.cautions.length > 0
          )
            faults.push(`${name}: harm without a caution, or a caution without harm`);
          continue;
        }
        seen.offered++;
        faults.push(
          ...checkPlan(result.leastBad)
            .filter(({ rule, harm }) => rule === 8 || harm !== undefined)
            .map(({ rule, message }) => `${name}, rule ${rule}: ${message}`),
        );
      }
    }
    expect(faults).toEqual([]);
    expect(seen.offered).toBeGreaterThan(5);
  });
});
