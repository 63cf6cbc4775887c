/** `replan` and `sure`, on a plan made by `plan`. */
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { readArguments } from '../../../app/cli/arguments.ts';
import { documentText } from '../../../app/documents/write-document.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { replanText } from '../../../app/cli/text/replan.ts';
import { harmCautions } from '../../../solver/safety/harm-cautions.ts';
import { STRICTEST_BUILT_IN } from '../../../solver/safety/rules-in-force.ts';
import { component, inOven, off, on, session as sessionOf, smallKitchen, step } from '../../support/documents.ts';
import { emptyFolder } from '../../support/folder.ts';
import { inTerminal } from './in-terminal.ts';

/** Peeled 5 min, roasted 40; dressed within 10 min of coming out. Invented. */
const roots = component('roots', [
  step('peel', [on(5)], [{ use: 'board' }]),
  step('roast', [on(1, { name: 'into the oven' }), off(40), on(1, { name: 'take out' })], [inOven(200)], {
    after: [{ step: 'peel' }],
  }),
  step('dress', [on(2)], [], { after: [{ step: 'roast', longest: 'PT10M' }] }),
]);
const cook = sessionOf([roots], { id: 'cook', name: 'Sunday roots' });

let folder: string;
beforeEach(async () => {
  folder = await emptyFolder();
  for (const document of [roots, cook, smallKitchen()])
    await writeFile(join(folder, `${document.id}.${document.kind}.json`), documentText(document));
  await afterheat('plan', 'cook.session.json', '--effort', '50000', '--out', 'cook.plan.json');
});

const afterheat = (...args: readonly string[]) => inTerminal(folder, [...args, '--data', folder]);

const planAt = async (file: string): Promise<Plan> => JSON.parse(await readFile(join(folder, file), 'utf8')) as Plan;
const startOf = (plan: Plan, id: string): number => plan.steps.find((each) => each.id === id)!.start;

describe('replan', () => {
  test('pushes right what waits for a step that runs late, and the plan written passes the checker', async () => {
    const before = await planAt('cook.plan.json');
    const now = startOf(before, 'roots/roast') + 10;
    const told = ['--now', `PT${now}M`, '--late', 'roots/roast=PT45M', '--out', 'later.plan.json'];
    const { code, out } = await afterheat('replan', 'cook.plan.json', ...told);
    expect(code).toBe(0);
    // Told while it roasts: 45 min more, then taken out.
    expect(out).toContain('14 min later');
    expect(out).toContain('goes on until 11:13, 14 min longer than planned.');
    const after = await planAt('later.plan.json');
    expect(startOf(after, 'roots/dress')).toBe(now + 45 + 1);
    expect(after.lived).toEqual({ now, steps: [{ step: 'roots/roast', minutes: [null, 54, null] }] });
    expect((await afterheat('check', 'later.plan.json')).code).toBe(0);
  });

  test('prints what is left of the running order, and from when what has moved', async () => {
    const before = await planAt('cook.plan.json');
    const now = startOf(before, 'roots/roast') + 10;
    const { code, out } = await afterheat('replan', 'cook.plan.json', '--now', `PT${now}M`, '--late', 'Roast=PT45M');
    expect(code).toBe(0);
    expect(out).not.toContain('peel');
    expect(out).toMatch(/\d\d:\d\d–\d\d:\d\d {2}dress .*\(was \d\d:\d\d\)/);
    const shorter = await afterheat('replan', 'cook.plan.json', '--now', `PT${now}M`, '--late', 'roots/roast=PT5M');
    expect(shorter.out).toContain('shorter than planned.');
    const unknown = await afterheat('replan', 'cook.plan.json', '--now', `PT${now}M`, '--late', 'mash=PT5M');
    expect(unknown.err).toContain('under way now: roots/roast (roast)');
  });

  test('keeps what is over, goes on from a plan replanned before, and is told in JSON', async () => {
    const before = await planAt('cook.plan.json');
    const now = startOf(before, 'roots/roast') + 10;
    await afterheat(
      'replan',
      'cook.plan.json',
      '--now',
      `PT${now}M`,
      '--late',
      'roots/roast=PT45M',
      '--out',
      'a.plan.json',
    );
    const again = await afterheat(
      'replan',
      'a.plan.json',
      '--now',
      `PT${now + 5}M`,
      '--late',
      'roots/roast=PT20M',
      '--json',
    );
    expect(again.code).toBe(0);
    expect(JSON.parse(again.out)).toMatchObject({ status: 'proven', changed: [], finishMinutes: now + 5 + 20 + 1 + 2 });
  });

  test('tells that a step over early pulls the rest forward', async () => {
    const before = await planAt('cook.plan.json');
    const now = startOf(before, 'roots/roast') + 30;
    const { code, out } = await afterheat(
      'replan',
      'cook.plan.json',
      '--now',
      `PT${now}M`,
      '--done',
      'roots/roast',
      '--json',
    );
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ finishMinutes: now + 2 });
  });

  test('leaves a step out', async () => {
    const { code, out } = await afterheat(
      'replan',
      'cook.plan.json',
      '--now',
      'PT1M',
      '--skip',
      'roots/dress',
      '--out',
      'b.plan.json',
    );
    expect(code).toBe(0);
    expect(out).toContain('2 min earlier');
    expect((await afterheat('check', 'b.plan.json')).code).toBe(0);
  });

  test('says which limit cannot be kept, and the least bad way to go on', async () => {
    const before = await planAt('cook.plan.json');
    const now = before.finishMinutes + 30;
    const { code, out } = await afterheat('replan', 'cook.plan.json', '--now', `PT${now}M`, '--waiting', 'roots/dress');
    expect(code).toBe(1);
    expect(out).toContain('least bad');
    expect(out).toContain('must begin within 10 min');
  });

  test('says why there is no plan at all, and what to do against the harm that would come of going on', async () => {
    const before = await planAt('cook.plan.json');
    const message = 'Ada comes to “dress” (roots) at 11:20 with raw-meat on the hands.';
    const none = {
      kind: 'impossible',
      reason: 'too late',
      requirements: [],
      leastBad: null,
      broken: [],
      against: [{ rule: 8, message, steps: ['roots/dress'], harm: 'raw-food' }],
      inTheWay: [],
      toldAhead: [],
      cautions: harmCautions(['raw-food'], STRICTEST_BUILT_IN),
      stopped: false,
      work: 0,
    } as const;
    const text = replanText(before, none, 60, []);
    expect(text).toContain('this must not be:\n  Rule 8: ' + message);
    // source: USDA FSIS, soap and water for 20 s after raw meat or poultry, as cited in the built-in rules.
    expect(text).toContain('wash hands with soap for 20 s or longer');
    expect(text).toContain('Local food-safety rules come first.');
    expect(text).not.toContain('least bad');
    const wayless = replanText(before, { ...none, against: [], cautions: [], inTheWay: ['roots/roast'] }, 60, []);
    expect(wayless).toContain('stand in each other’s way, whatever limits of time are let go:\n  roast');
    const ahead = replanText(
      before,
      { ...none, toldAhead: [{ step: 'roots/dress', waitsFor: ['roots/roast'] }] },
      60,
      [],
    );
    expect(ahead).toContain('Where it is, tell it first (--done):\n  roast (');
    expect(ahead).toContain('): roots/roast\n');
  });

  test('says what the past has broken and what to do about it, and still gives the running order', async () => {
    const fish = component('fish', [step('cool', [off(20, 60), on(1, { name: 'flake' })], [], { readyToEat: true })]);
    const bread = component('bread', [step('cut', [on(5)])], {
      ingredients: [{ id: 'bread', name: 'bread', massG: 500, allergens: ['gluten'] }],
    });
    const supper = sessionOf([fish, bread], {
      id: 'supper',
      eaters: [{ id: 'eve', name: 'Eve', avoids: ['gluten'], boxes: 2, eats: ['fish'] }],
      pins: [{ component: 'bread', step: 'cut', start: 'PT5M' }],
    });
    for (const document of [fish, bread, supper])
      await writeFile(join(folder, `${document.id}.${document.kind}.json`), documentText(document));
    await afterheat('plan', 'supper.session.json', '--effort', '20000', '--out', 'supper.plan.json');
    const told = ['--now', 'PT10M', '--done', 'fish/cool', '--out', 'after.plan.json'];
    const { code, out } = await afterheat('replan', 'supper.plan.json', ...told);
    expect(code).toBe(1);
    expect(out).toContain('As planned and as told, the past has broken this:\n  Rule 8: Ada comes to “cool” (fish)');
    expect(out).toContain('with gluten on the hands from “cut” (bread)');
    expect(out).toMatch(/What to do now:\n {2}fish may have met gluten: leave it out of what Eve is given/);
    expect(out).toContain('  Before food that must stay free of an allergen, wash hands');
    expect(out).toContain('Local food-safety rules come first.');
    const summary = await afterheat('replan', 'after.plan.json', '--now', 'PT10M', '--json');
    expect(JSON.parse(summary.out)).toMatchObject({ broken: [{ rule: 8, harm: 'allergen' }] });
    expect((JSON.parse(summary.out) as { cautions: string[] }).cautions).toHaveLength(3);
  });

  test.each([
    ['--late', 'roots/dress=PT5M', 'a step that has begun'],
    ['--late', 'roots/mash=PT5M', 'the id of a step of this plan'],
    ['--done', 'roots/peel=PT99M', 'a minute up to now'],
  ])('refuses %s %s', async (option, value, wanted) => {
    const { code, err } = await afterheat('replan', 'cook.plan.json', '--now', 'PT10M', option, value);
    expect(code).toBe(2);
    expect(err).toContain(wanted);
  });
});

describe('sure', () => {
  test('prints the chances on the clock and where the risk lies', async () => {
    const { code, out } = await afterheat('sure', 'cook.plan.json', '--by', 'PT90M');
    expect(code).toBe(0);
    expect(out).toMatch(/half of the time done by \d\d:\d\d, nine times in ten by \d\d:\d\d/);
    expect(out).toMatch(/done by 11:30: /);
    expect(out).toMatch(/roast \(roots\): brings \d\.\d min/);
  });

  test('gives the same answer for the same seed, as JSON', async () => {
    const ask = ['sure', 'cook.plan.json', '--json', '--samples', '300', '--seed', '9'];
    const [first, second] = [await afterheat(...ask), await afterheat(...ask)];
    expect(first.out).toBe(second.out);
    expect(JSON.parse(first.out)).toMatchObject({ samples: 300 });
  });
});

describe('their arguments', () => {
  const wrong = (...args: readonly string[]): string => {
    const read = readArguments(args);
    return read.kind === 'wrong' ? read.problem : read.kind;
  };
  test.each([
    [['replan', 'p'], 'afterheat replan takes --now, a time such as PT40M from the start, not ""'],
    [['replan', 'p', '--now', '40'], 'afterheat replan takes --now, a time such as PT40M from the start, not "40"'],
    [
      ['replan', 'p', '--now', 'PT4M', '--late', 'a/b'],
      '--late is a step and how many minutes from now it still takes, such as lentils/boil=PT10M, not "a/b"',
    ],
    [['replan', 'p', '--now', 'PT4M', '--skip', 'a=PT1M'], '--skip is a step that is left out, not "a=PT1M"'],
    [['sure', 'p', '--samples', '0'], '--samples is a whole number from 1 to 1000000, not "0"'],
    [['sure', 'p', '--now', 'PT4M'], 'afterheat sure takes no --now'],
  ])('%j', (args, problem) => {
    expect(wrong(...args)).toBe(problem);
  });
});
