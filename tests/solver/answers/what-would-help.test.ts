import { describe, expect, test } from 'vitest';
import { carriedOver } from '../../../solver/answers/carry-over.ts';
import type { Help } from '../../../solver/answers/help.ts';
import { kitchenHelps } from '../../../solver/answers/kitchen-helps.ts';
import { LengthQuestions } from '../../../solver/answers/length-questions.ts';
import { shorter } from '../../../solver/answers/shorter.ts';
import { stepHelps } from '../../../solver/answers/step-helps.ts';
import { whatWouldHelp, type HelpAnswer, type WhatWouldHelp } from '../../../solver/answers/what-would-help.ts';
import type { Problem } from '../../../solver/engine/problem.ts';
import { solveTogether } from '../../../solver/engine/together.ts';
import type { Component } from '../../../solver/kitchen/component.ts';
import { sessionToProblem, type SessionInput } from '../../../solver/translate/session-to-problem.ts';
import { bruteForce } from '../../support/brute-force.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../support/demo-documents.ts';
import { component, inOven, linearOven, off, on, session, smallKitchen, step } from '../../support/documents.ts';
import { faultsOf } from '../../support/plain-check.ts';
import { seeded } from '../../support/seeded.ts';

const OPTIONS = { seed: 1, effort: 4_000_000 };
type Report = Extract<WhatWouldHelp, { kind: 'answered' }>;

function answered(input: SessionInput, options = OPTIONS): Report {
  const answer = whatWouldHelp(input, options);
  if (answer.kind !== 'answered') throw new Error(answer.kind);
  return answer;
}
const of = ({ answers }: Report, id: string): HelpAnswer => {
  const found = answers.find(({ help }) => help.id === id);
  if (found === undefined) throw new Error(`no ${id} among ${answers.map(({ help }) => help.id).join(', ')}`);
  return found;
};
const given = (
  components: readonly Component[],
  changes: Partial<SessionInput['session']> = {},
  kitchen: Partial<SessionInput['kitchen']> = {},
): SessionInput => ({ session: session(components, changes), kitchen: smallKitchen(kitchen), components });
const work = (id: string, minutes: number, needs: Parameters<typeof step>[2] = []): Component =>
  component(id, [step('work', [on(minutes)], needs)]);

describe('what would help, worked out by hand', () => {
  test('a second pair of hands halves two jobs that need nothing else', () => {
    const report = answered(given([work('one', 10), work('two', 10)]));
    expect(report).toMatchObject({ measure: 'finish', finish: 20, bound: 20, open: 0, stopped: false });
    expect(of(report, 'hands more')).toMatchObject({ finish: 10, gain: 10, mostGain: 10, proven: true });
    expect(report.answers[0]!.help.id).toBe('hands more');
  });

  test('more hands gain nothing while both jobs want the one board, and then a board alone gains nothing either', () => {
    const report = answered(given([work('one', 10, [{ use: 'board' }]), work('two', 10, [{ use: 'board' }])]));
    expect(of(report, 'hands more')).toMatchObject({ gain: 0, mostGain: 0, proven: true });
    expect(of(report, 'board board')).toMatchObject({ gain: 0, mostGain: 0, proven: true });
  });

  test('somebody of the session who does not cook is asked about by name', () => {
    const input = given([work('one', 10), work('two', 10)], {
      people: [
        { id: 'ada', name: 'Ada', can: [] },
        { id: 'bo', name: 'Bo', can: [] },
      ],
      crews: [{ id: 'alone', name: 'Ada alone', people: ['ada'] }],
    });
    const bo = of(answered(input), 'hands bo');
    expect(bo.help.words).toBe('Bo cooks as well');
    expect(bo).toMatchObject({ gain: 10, proven: true });
  });

  test('five minutes off what binds gain five, off what does not none; nothing gets shorter than a minute', () => {
    // Baked 1 + 30 + 1 after 18 minutes of heating; beside it there is time for a job of 3 minutes.
    const report = answered(
      given([component('tart', [step('bake', [on(1), off(30), on(1)], [inOven(200)])]), work('salad', 3)]),
    );
    expect(report.finish).toBe(18 + 32);
    expect(of(report, 'by-itself tart/bake')).toMatchObject({ gain: 5, proven: true });
    expect(of(report, 'by-itself tart/bake').help.words).toContain('5 min');
    expect(of(report, 'by-hand salad/work')).toMatchObject({ gain: 0, mostGain: 0, proven: true });
    expect(of(report, 'by-hand salad/work').help.words).toContain('2 min');
    // A part of one minute has nothing to give.
    expect(report.answers.some(({ help }) => help.id === 'by-hand tart/bake')).toBe(false);
  });

  test('work that is done in pieces can be shorter too', () => {
    const input = given([
      component('peas', [step('shell', [on(12)], [], { interruptible: {} })]),
      component('tart', [step('bake', [on(1), off(5), on(1)])]),
    ]);
    // 12 + 1 + 1 minutes by one person, and the five by itself fit in between. Seven minutes of peas are 4 + 3, for no piece is under 3:
    // the tart at 0 and at 6, peas from 1 to 5 and from 7 to 10.
    const report = answered(input);
    expect(report.finish).toBe(14);
    expect(of(report, 'by-hand peas/shell')).toMatchObject({ finish: 10, gain: 4, proven: true });
  });

  test('another rack and another oven, where two trays go in at two temperatures', () => {
    // One rack: 18 + 32, then 5 minutes on to 250 °C, 32 more. Another rack does not heat to two temperatures; another oven does,
    // and there hands are free in turn: 23 + 32 at the hotter one.
    const baked = (id: string, celsius: number): Component =>
      component(id, [step('bake', [on(1), off(30), on(1)], [inOven(celsius)])]);
    const report = answered(given([baked('bread', 200), baked('pizza', 250)], {}, { ovens: [linearOven('oven', 1)] }));
    expect(report.finish).toBe(18 + 32 + 5 + 32);
    expect(of(report, 'rack oven')).toMatchObject({ gain: 0, proven: true });
    expect(of(report, 'oven oven')).toMatchObject({ finish: 23 + 32, gain: 32, proven: true });
  });

  test('another oven hangs on the same circuit, which feeds only one', () => {
    const baked = (id: string, celsius: number): Component =>
      component(id, [step('bake', [on(1), off(30), on(1)], [inOven(celsius)])]);
    const report = answered(
      given(
        [baked('bread', 200), baked('pizza', 250)],
        {},
        {
          ovens: [linearOven('oven', 1)],
          power: [{ id: 'circuit', name: 'the oven circuit', limitW: 4000, members: ['oven'] }],
        },
      ),
    );
    // An oven is on for 18 + 32 minutes and then, or before, another for 23 + 32: longer than one that is turned up.
    expect(of(report, 'oven oven')).toMatchObject({ gain: 0, mostGain: 0, proven: true });
  });

  test('before a table time the gain is how much later work may begin', () => {
    const report = answered(
      given(
        [
          component('pie', [
            step('mix', [on(20)]),
            step('bake', [on(1), off(30), on(1)], [], { after: [{ step: 'mix' }] }),
          ]),
        ],
        {
          table: { at: 'PT100M', dishes: ['pie'] },
        },
      ),
    );
    expect(report).toMatchObject({ measure: 'latest-start', finish: 52, bound: 52 });
    expect(of(report, 'by-itself pie/bake')).toMatchObject({ finish: 47, gain: 5, proven: true });
  });

  test('time in the oven that cooks raw food through comes with a caution', () => {
    const chicken = component(
      'chicken',
      [
        step('roast', [on(1), off(40), on(2, { probe: true })], [inOven(200)], {
          cooksThrough: { raw: 'poultry', coreC: 75, holdSeconds: 30 },
        }),
      ],
      { ingredients: [{ id: 'thighs', name: 'thighs', massG: 800, allergens: [], raw: 'poultry' }] },
    );
    expect(of(answered(given([chicken])), 'by-itself chicken/roast').help.caution).toContain('probe');
  });
});

/** Tiny sessions: a few short jobs, some with a board or a bowl, in order, some interruptible or by themselves. All invented. */
function tinySession(seed: number): SessionInput {
  const chance = seeded(seed);
  const components = Array.from({ length: chance.int(1, 2) }, (_, index) => {
    const id = `dish-${index + 1}`;
    const first = step(
      'first',
      chance.chance(0.3) ? [on(1), off(chance.int(1, 3))] : [on(chance.int(1, 4))],
      chance.chance(0.5) ? [{ use: 'board' }] : [],
    );
    const second = step('second', [on(chance.int(1, 3))], chance.chance(0.3) ? [{ use: 'board' }] : [], {
      after: chance.chance(0.6) ? [{ step: 'first' }] : [],
    });
    return component(id, chance.chance(0.6) ? [first, second] : [first]);
  });
  return given(components, { longest: 'PT12M' });
}

const withHelp = (input: SessionInput, { relaxInput, relaxProblem }: Partial<Help>): Problem => {
  const translated = sessionToProblem({ ...(relaxInput?.(input) ?? input), intent: 'soonest' });
  if (!translated.ok) throw new Error(JSON.stringify(translated.faults));
  const problem = relaxProblem?.(translated.problem, translated.translation) ?? translated.problem;
  return { ...problem, tiers: problem.tiers.slice(0, 1) };
};
const helpsOf = (input: SessionInput): readonly Help[] => {
  const translated = sessionToProblem({ ...input, intent: 'soonest' });
  if (!translated.ok) throw new Error(JSON.stringify(translated.faults));
  return [...kitchenHelps(input), ...stepHelps(translated.translation)];
};

/** The least first tier of all plans; null where there are too many to enumerate. */
function optimum(problem: Problem): number | null {
  const found = bruteForce(problem, 400_000);
  return found.kind === 'optimal' ? found.values[0]! : null;
}

describe('what would help, beside complete enumeration', () => {
  // Reference: every plan of the problem without and with the help is enumerated (tests/support/brute-force.ts).
  test('every gain in tiny sessions is the difference of the two optima', () => {
    let compared = 0;
    for (let seed = 0; seed < 14; seed++) {
      const input = tinySession(seed);
      const without = optimum(withHelp(input, {}));
      const report = answered(input, { seed: 1, effort: 2_000_000 });
      if (without === null) continue;
      expect([seed, report.finish]).toEqual([seed, without]);
      for (const help of helpsOf(input)) {
        const problem = withHelp(input, help);
        // Enumeration has an end only for few tasks.
        const least = problem.tasks.length > 5 ? null : optimum(problem);
        if (least === null) continue;
        compared += 1;
        expect({ seed, asked: help.id, ...of(report, help.id) }).toMatchObject({
          finish: least,
          gain: without - least,
          mostGain: without - least,
          proven: true,
        });
      }
    }
    expect(compared).toBeGreaterThan(100);
  });
});

describe('a help only ever allows more', () => {
  const components = demoComponents();
  const inputs = ['weeknight-roast', 'ten-box-hour'].map((id): SessionInput => {
    const own = byId(demoSessions(), id);
    return { session: own, kitchen: byId(demoKitchens(), own.kitchens[0]!), components };
  });
  test.each(inputs)('a plan of $session.id is a plan with any of them', (input) => {
    const before = withHelp(input, {});
    const outcome = solveTogether(before, { seed: 1, effort: 100_000 });
    if (!('solution' in outcome)) throw new Error(outcome.kind);
    for (const help of helpsOf(input)) {
      const problem = withHelp(input, help);
      const carried = carriedOver(before, outcome.solution, problem);
      expect([help.id, carried === null ? ['not carried over'] : faultsOf(problem, carried)]).toEqual([help.id, []]);
    }
  });
});

describe('one learner for all shorter steps', () => {
  // Reference: each question on its own, by a search that knows nothing of the others.
  test('gives each the gain that it has when asked apart', () => {
    const own = byId(demoSessions(), 'weeknight-roast');
    const input: SessionInput = {
      session: own,
      kitchen: byId(demoKitchens(), own.kitchens[0]!),
      components: demoComponents(),
    };
    const report = answered(input);
    const steps = report.answers.filter(({ help }) => help.id.startsWith('by-'));
    expect(steps.length).toBeGreaterThan(10);
    for (const help of helpsOf(input)) {
      if (!help.id.startsWith('by-')) continue;
      const apart = shorter(withHelp(input, help), null, { seed: 5, effort: 300_000 });
      expect([help.id, apart.bound]).toEqual([help.id, apart.value]);
      expect([help.id, of(report, help.id).finish, of(report, help.id).proven]).toEqual([help.id, apart.value, true]);
    }
  });

  test('tells by one proof which of them it does not depend on', () => {
    const input = given([
      component('tart', [step('bake', [on(1), off(30), on(1)])]),
      component('cream', [step('chill', [on(1), off(8), on(1)])]),
    ]);
    const base = withHelp(input, {});
    const translated = sessionToProblem({ ...input, intent: 'soonest' });
    if (!translated.ok) throw new Error('refused');
    const helps = stepHelps(translated.translation);
    expect(helps.map(({ id }) => id)).toEqual(['by-itself tart/bake', 'by-itself cream/chill']);
    const questions = new LengthQuestions(
      base,
      helps.map(({ id, relaxProblem }) => ({
        name: id,
        open: (problem) => relaxProblem!(problem, translated.translation),
      })),
    );
    // The tart alone decides: 32 minutes, whatever the cream takes.
    expect(questions.ask([], 32, 1_000_000, undefined)).toMatchObject({
      solution: null,
      value: 32,
      proven: true,
      idle: ['by-itself cream/chill'],
    });
    expect(questions.ask(['by-itself tart/bake'], 32, 1_000_000, undefined)).toMatchObject({ value: 27, proven: true });
    expect(questions.ask(['by-itself cream/chill'], 32, 1_000_000, undefined)).toMatchObject({
      value: 32,
      proven: true,
    });
    expect(questions.ask([], 40, 1_000_000, undefined)).toMatchObject({ value: 32, proven: true });
  });
});

describe('asking', () => {
  const input = given([
    work('one', 10, [{ use: 'board' }]),
    work('two', 10),
    work('three', 5, [{ use: 'bowl', leastMl: 100 }]),
  ]);

  test('twice with the same seed and effort gives the same answer', () => {
    expect(answered(input)).toEqual(answered(input));
  });

  test('stopped early tells what it has, and that more is open', () => {
    let known = 0;
    const report = whatWouldHelp(input, {
      ...OPTIONS,
      shouldStop: () => known > 0,
      onProgress: (_, { answers }) => {
        known = answers.length;
      },
    });
    if (report.kind !== 'answered') throw new Error(report.kind);
    expect(report.stopped).toBe(true);
    expect(report.open).toBeGreaterThan(0);
    expect(report.answers.length).toBeGreaterThan(0);
  });

  test('with next to no effort claims no gain and proves nothing false', () => {
    const whole = answered(input);
    const report = whatWouldHelp(input, { seed: 1, effort: 400 });
    if (report.kind !== 'answered') throw new Error(report.kind);
    for (const answer of report.answers) {
      const sure = of(whole, answer.help.id);
      expect(answer.finish).toBeGreaterThanOrEqual(sure.finish);
      expect(answer.finish - (answer.mostGain - answer.gain)).toBeLessThanOrEqual(sure.finish);
    }
  });

  test('about a session without a plan is told so', () => {
    expect(whatWouldHelp({ ...input, session: { ...input.session, longest: 'PT12M' } }, OPTIONS).kind).toBe(
      'impossible',
    );
  });

  test('reports after each question, the answers sorted by gain', () => {
    const shares: number[] = [];
    whatWouldHelp(input, {
      ...OPTIONS,
      onProgress: (share, { answers }) => {
        shares.push(share);
        const gains = answers.map(({ gain }) => gain);
        expect(gains).toEqual([...gains].sort((a, b) => b - a));
      },
    });
    expect(shares.length).toBeGreaterThan(3);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });
});
