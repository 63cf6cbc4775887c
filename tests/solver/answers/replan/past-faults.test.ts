import { describe, expect, it } from 'vitest';
import type { LiveEvent } from '../../../../solver/answers/replan/events.ts';
import { runPlan } from '../../../../solver/answers/replan/replan.ts';
import type { Answered } from '../../../../solver/answers/replan/result.ts';
import { boxContents } from '../../../../solver/boxes/box-contents.ts';
import { checkPlan } from '../../../../solver/checker/check-plan.ts';
import type { Violation } from '../../../../solver/checker/violation.ts';
import type { Component } from '../../../../solver/kitchen/component.ts';
import type { Plan } from '../../../../solver/kitchen/plan.ts';
import type { Session } from '../../../../solver/kitchen/session.ts';
import { planSession } from '../../../../solver/translate/plan-session.ts';
import { component, off, on, session, smallKitchen, step } from '../../../support/documents.ts';
import { randomSession } from '../../../support/random-session.ts';
import { seeded } from '../../../support/seeded.ts';

/** Fish that cools for 20 to 60 minutes and is then flaked by hand; bread cut meanwhile. Eve must not have gluten. All invented. */
const fish = component('fish', [step('cool', [off(20, 60), on(1, { name: 'flake' })], [], { readyToEat: true })]);
const bread = component('bread', [step('cut', [on(5)])], {
  ingredients: [{ id: 'bread', name: 'bread', massG: 500, allergens: ['gluten'] }],
});

function planOf(components: readonly Component[], more: Partial<Session> = {}): Plan {
  const made = planSession({
    session: session(components, {
      eaters: [{ id: 'eve', name: 'Eve', avoids: ['gluten'], boxes: 2, eats: ['fish', 'salad'] }],
      ...more,
    }),
    kitchen: smallKitchen(),
    components,
    seed: 1,
    effort: 20_000,
  });
  if (made.kind !== 'planned') throw new Error(JSON.stringify(made));
  return made.plan;
}

const cutAt = (minute: number): Partial<Session> => ({
  pins: [
    { component: 'fish', step: 'cool', start: 'PT0M' },
    { component: 'bread', step: 'cut', start: `PT${minute}M` },
  ],
});

function answered(plan: Plan, now: number, ...events: readonly LiveEvent[]): Answered {
  const result = runPlan(plan).replan({ now, events });
  if (result.kind === 'refused') throw new Error(JSON.stringify(result));
  return result;
}

function replanned(plan: Plan, now: number, ...events: readonly LiveEvent[]) {
  const result = answered(plan, now, ...events);
  if (result.kind !== 'replanned') throw new Error(JSON.stringify(result));
  return result;
}

const messages = (violations: readonly Violation[]): readonly string[] => violations.map(({ message }) => message);
const done = (at: number): LiveEvent => ({ kind: 'done', step: 'fish/cool', at });

describe('a wait told to be done, whose hand came to it with soil on', () => {
  const plan = planOf([fish, bread], cutAt(5));
  const told = replanned(plan, 10, done(10));

  it('is told as broken, with the harm of it', () => {
    expect(told.broken).toMatchObject([{ rule: 8, harm: 'allergen', minute: 10, steps: ['bread/cut', 'fish/cool'] }]);
    expect(told.broken[0]!.message).toContain('with gluten on the hands from “cut” (bread)');
    expect(messages(told.broken)).toEqual(messages(checkPlan(told.plan)));
  });

  it('is told with what to do: who avoids it is given something else', () => {
    expect(told.cautions.join(' ')).toContain('not for who avoids it');
    expect(told.cautions.at(-1)).toContain('Local food-safety rules come first.');
  });

  it('stays told, however often the rest is planned again', () => {
    for (const now of [10, 12]) {
      const later = replanned(told.plan, now);
      expect(messages(later.broken)).toEqual(messages(told.broken));
      expect(later.cautions).toEqual(told.cautions);
    }
  });

  it('breaks nothing when the cooks say that it was done before the hands were soiled', () => {
    const clean = replanned(plan, 10, done(4));
    expect(clean.broken).toEqual([]);
    expect(clean.cautions).toEqual([]);
    expect(checkPlan(clean.plan)).toEqual([]);
  });

  it('breaks nothing when what soils the hands begins only then', () => {
    const clean = replanned(planOf([fish, bread], cutAt(10)), 10, done(10));
    expect(clean.plan.steps.find(({ id }) => id === 'bread/cut')!.start).toBe(10);
    expect(clean.broken).toEqual([]);
    expect(checkPlan(clean.plan)).toEqual([]);
  });
});

describe('a step told to be over sooner than it takes from the first minute on', () => {
  it('began with the session and was quicker, and the rest goes on', () => {
    const told = replanned(planOf([fish, bread], cutAt(30)), 4, { kind: 'done', step: 'bread/cut', at: 3 });
    expect(told.plan.steps.find(({ id }) => id === 'bread/cut')).toMatchObject({ start: 0, end: 3 });
    expect(told.plan.lived?.steps).toEqual([{ step: 'bread/cut', minutes: [3] }]);
    expect(messages(checkPlan(told.plan))).toEqual(messages(told.broken));
  });
});

describe('a step that was left out', () => {
  it('is not told of any more: the fault names it and the mend', () => {
    const plan = planOf([fish, bread], cutAt(30));
    const without = replanned(plan, 10, { kind: 'skipped', step: 'bread/cut' });
    const result = runPlan(without.plan).replan({ now: 12, events: [{ kind: 'done', step: 'bread/cut', at: 12 }] });
    expect(result).toMatchObject({
      kind: 'refused',
      faults: [
        {
          path: 'events[0]',
          found: 'bread/cut, which was left out',
          mend: 'if it was cooked all the same, replan from the plan before that',
        },
      ],
    });
  });
});

describe('harm that the past has done', () => {
  it('does not stand against the least bad way to go on, and is told beside what that breaks', () => {
    const soup = component('soup', [
      step('boil', [on(1), off(10), on(1)]),
      step('season', [on(1)], [], { after: [{ step: 'boil', longest: 'PT5M' }] }),
    ]);
    const plan = planOf([fish, bread, soup], cutAt(5));
    const boil = plan.steps.find(({ id }) => id === 'soup/boil')!;
    const now = Math.max(10, boil.end + 20);
    const soiled = answered(plan, now, done(10), { kind: 'waiting', step: 'soup/season' });
    if (soiled.kind === 'replanned') throw new Error('the seasoning was in time');
    expect(soiled.leastBad).not.toBeNull();
    expect(soiled.against).toEqual([]);
    expect(messages(soiled.broken)).toEqual(messages(checkPlan(soiled.leastBad!)));
    expect(soiled.broken.map(({ rule }) => rule)).toEqual([2, 8]);
    expect(soiled.cautions.join(' ')).toContain('not for who avoids it');
  });
});

describe('an allergen that a dish has met and would carry on', () => {
  const portioned = component('fish', [
    ...fish.steps,
    step('portion', [on(2)], [{ use: 'board' }], { after: [{ step: 'cool' }], readyToEat: true }),
  ]);
  const salad = component('salad', [step('chop', [on(2)], [{ use: 'board' }], { readyToEat: true })]);
  const plan = planOf([portioned, bread, salad], {
    pins: [...cutAt(5).pins!, { component: 'salad', step: 'chop', start: 'PT40M' }],
  });
  const told = replanned(plan, 10, done(10));
  const at = (id: string) => told.plan.steps.find((each) => each.id === id)!;

  it('is washed off hands and board before the next food comes to them, so that there is a plan', () => {
    const [portion, chop] = [at('fish/portion'), at('salad/chop')];
    const washes = told.plan.steps.filter(
      ({ kind, start, end }) => kind === 'wash' && start >= portion.end && end <= chop.start,
    );
    expect(portion.end).toBeLessThan(chop.start);
    expect(washes.map(({ id }) => id)).toContainEqual(expect.stringMatching(/^wash\/board\.\d$/));
  });

  it('is told as broken where it came to the dish, and nowhere else', () => {
    expect(told.broken.map(({ minute }) => minute)).toEqual([10]);
    expect(messages(told.broken).join()).toContain('with gluten on the hands');
    expect(messages(checkPlan(told.plan))).toEqual(messages(told.broken));
  });

  it('is planned around within the one effort that was asked, however small', () => {
    for (const effort of [2_000, 8_000]) {
      const result = runPlan(plan).replan({ now: 10, events: [done(10)], effort });
      if (result.kind === 'refused') throw new Error(JSON.stringify(result));
      // The last check of a plan that was begun is ended.
      expect(result.work).toBeLessThan(effort + 1_000);
    }
  });

  it('is told with the dish and with who must not have it any more', () => {
    expect(told.cautions[0]).toBe(
      'fish may have met gluten: leave it out of what Eve is given, boxes too, and keep it from other food.',
    );
    expect(told.cautions.at(-1)).toContain('Local food-safety rules come first.');
  });

  it('is on the labels of the boxes of who avoids it', () => {
    const packing: Session['packing'] = { name: 'fill the boxes', boxes: 2, work: { fixed: 'PT2M' } };
    const boxed = replanned(planOf([portioned, bread, salad], { pins: cutAt(5).pins!, packing }), 10, done(10));
    const eve = boxContents(boxed.plan).find(({ eater }) => eater?.id === 'eve')!;
    expect([...eve.mayHaveMet]).toContain('gluten');
    expect(eve.shares.map(({ component: { id } }) => id)).toContain('fish');
  });

  it('is carried, and told, in every later replan too', () => {
    const later = replanned(told.plan, at('fish/portion').start + 1, {
      kind: 'late',
      step: 'fish/portion',
      remaining: 3,
    });
    expect(messages(checkPlan(later.plan))).toEqual(messages(later.broken));
    expect(later.broken.map(({ minute }) => minute)).toEqual([10]);
    expect(later.cautions).toEqual(told.cautions);
  });

  it('gives no plan that brings it to other food, where it cannot be washed off in time: that is told with what to do', () => {
    const both = component('fish', [
      ...fish.steps,
      step('portion', [on(2)], [{ use: 'board' }], { after: [{ step: 'cool', longest: 'PT0M' }], readyToEat: true }),
    ]);
    const tight = planOf([both, bread, salad], {
      pins: [...cutAt(5).pins!, { component: 'salad', step: 'chop', start: 'PT13M' }],
      longest: 'PT1H',
    });
    const spread = answered(tight, 10, done(10));
    const offered = spread.kind === 'replanned' ? spread.plan : spread.leastBad;
    const harm =
      offered === null ? [] : checkPlan(offered).filter((each) => each.harm !== undefined && each.minute! > 10);
    expect(harm).toEqual([]);
    expect(spread.cautions.join(' ')).toContain('Before food that must stay free of an allergen, wash hands');
  });
});

describe('random sessions of which steps are told to be done out of turn', () => {
  it('are answered with plans that break nothing but what is told, and tell what to do wherever that harms', () => {
    const faults: string[] = [];
    const seen = { plans: 0, broken: 0 };
    for (let seed = 200; seed < 224; seed++) {
      const chance = seeded(seed);
      const made = planSession({ ...randomSession(seed, 1), seed: 1, effort: 3_000 });
      if (made.kind !== 'planned') continue;
      const running = runPlan(made.plan);
      for (let turn = 0; turn < 5; turn++) {
        const now = chance.int(2, made.plan.allAwayMinutes);
        const work = made.plan.steps.filter(({ kind, end }) => kind !== 'preheat' && end > now);
        if (work.length === 0) continue;
        const { id } = chance.pick(work.slice(0, 6));
        const events = [
          { kind: chance.pick(['done', 'done', 'started'] as const), step: id, at: now - chance.int(0, 2) },
        ];
        const result = running.replan({ now, events, effort: 1_000 });
        if (result.kind === 'refused') continue;
        const name = `seed ${seed} at ${now}, ${JSON.stringify(events)}`;
        const plan = result.kind === 'replanned' ? result.plan : result.leastBad;
        const told = [...result.broken, ...(result.kind === 'replanned' ? [] : result.against)];
        if (told.some(({ harm }) => harm !== undefined) !== result.cautions.length > 0)
          faults.push(`${name}: harm without a caution, or a caution without harm`);
        if (plan === null) continue;
        seen.plans++;
        if (result.broken.length > 0) seen.broken++;
        for (const { message, harm, minute } of checkPlan(plan)) {
          if (!messages(result.broken).includes(message)) faults.push(`${name}: not told: ${message}`);
          if (harm !== undefined && minute! > now) faults.push(`${name}: harm ahead: ${message}`);
        }
        // Asked once more in the same minute, the past is what it was.
        const again = runPlan(plan).replan({ now, events: [], effort: 1_000 });
        if (again.kind === 'refused') faults.push(`${name}: refused when asked again`);
        else if (again.kind === 'replanned')
          for (const { message, harm } of result.broken)
            if (harm !== undefined && !messages(again.broken).includes(message))
              faults.push(`${name}: no longer told: ${message}`);
      }
    }
    expect(faults).toEqual([]);
    expect(seen.plans).toBeGreaterThan(25);
    expect(seen.broken).toBeGreaterThan(3);
  });
});
