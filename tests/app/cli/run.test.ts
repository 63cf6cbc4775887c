/** The verbs, run on files in a folder of their own, with the solver in this thread. */
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { readDocument } from '../../../app/documents/read-document.ts';
import { documentText } from '../../../app/documents/write-document.ts';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import { component, inOven, off, on, session as sessionOf, smallKitchen, step } from '../../support/documents.ts';
import { emptyFolder } from '../../support/folder.ts';
import { supper } from '../../support/supper.ts';
import { inTerminal } from './in-terminal.ts';

/** Peeled, then roasted 40 min; the oven of the small kitchen takes 18 min to 200 °C. */
const roots = component('roots', [
  step('peel', [on(5)], [{ use: 'board' }]),
  step('roast', [on(1, { name: 'into the oven' }), off(40), on(1, { name: 'take out' })], [inOven(200)], {
    after: [{ step: 'peel' }],
  }),
]);
const cook = sessionOf([roots], { id: 'cook', name: 'Sunday roots' });

let folder: string;
beforeEach(async () => {
  folder = await emptyFolder();
  const documents = [roots, cook, smallKitchen(), smallKitchen({ id: 'no-oven', name: 'Camp kitchen', ovens: [] })];
  for (const document of documents)
    await writeFile(join(folder, `${document.id}.${document.kind}.json`), documentText(document));
  await writeFile(join(folder, 'supper.plan.json'), documentText(supper));
});

async function afterheat(...args: readonly string[]) {
  const verb = args[0];
  const takesData = verb !== undefined && verb !== 'schema' && !verb.startsWith('-');
  return inTerminal(folder, takesData ? [...args, '--data', folder] : args);
}

describe('plan', () => {
  test('prints what each person does when, the oven’s dial, and the figures', async () => {
    const { code, out } = await afterheat('plan', 'cook.session.json', '--effort', '100000');
    expect(code).toBe(0);
    expect(out).toMatch(/^Sunday roots\nSmall kitchen, 2026-03-08 10:00 Europe\/Lisbon\nfinish after 1 h/);
    expect(out).toMatch(/Ada\n {2}\d\d:\d\d–\d\d:\d\d {2}peel \(roots\) · .*board/);
    expect(out).toMatch(/roast: take out \(roots\)/);
    expect(out).toMatch(/dial\n {2}10:00 {8}200 °C conventional/);
    expect(out).toMatch(/finish: 60 min, proven/);
  });

  test('prints the cautions, and under whose safety rules the plan was made', async () => {
    const { out } = await afterheat('plan', 'cook.session.json', '--effort', '100000');
    expect(out).toMatch(/Cautions\n {2}A probe thermometer decides/);
    expect(out).toContain('the strictest built-in rules hold');
    const british = await afterheat('plan', 'cook', '--authority', 'united-kingdom', '--effort', '100000');
    expect(british.out).toContain('Made under the safety rules “United Kingdom”');
  });

  test('takes safety rules from a file, and tells of an authority that nobody knows', async () => {
    const rules = { kind: 'safety-rules', version: 1, id: 'canteen', name: 'Our canteen' };
    const file = join(folder, 'rules-of-ours.json');
    await writeFile(file, JSON.stringify({ ...rules, region: 'nowhere', authority: 'invented', rules: [] }));
    const ours = await afterheat('plan', 'cook', '--authority', 'rules-of-ours.json', '--effort', '100000');
    expect(ours.out).toContain('“Our canteen” (invented; nowhere)');
    const unknown = await afterheat('plan', 'cook', '--authority', 'atlantis');
    expect(unknown.code).toBe(2);
    expect(unknown.err).toContain('no safety rules with the id "atlantis"');
  });

  test('prints a summary in minutes as JSON, and no document', async () => {
    const { code, out } = await afterheat('plan', 'cook', '--json', '--effort', '100000');
    const summary = JSON.parse(out) as Record<string, unknown>;
    expect(code).toBe(0);
    // Heating 18 min, in 1, roasting 40, out 1.
    expect(summary).toMatchObject({
      status: 'proven',
      finishMinutes: 60,
      boundMinutes: 60,
      handsOnMinutes: 7,
      kitchen: 'small',
      crew: ['ada'],
    });
    expect(Object.keys(summary)).toEqual(
      expect.arrayContaining(['tiers', 'allAwayMinutes', 'solveMs', 'steps', 'ovens', 'pools']),
    );
    expect(summary['steps']).toContainEqual(
      expect.objectContaining({
        id: 'roots/roast',
        component: 'roots',
        start: 18,
        end: 60,
        hands: [
          { person: 'ada', start: 18, end: 19 },
          { person: 'ada', start: 59, end: 60 },
        ],
      }),
    );
    expect(summary['ovens']).toMatchObject([
      { oven: 'oven', settings: [{ minute: 0, celsius: 200 }, { celsius: null }] },
    ]);
    expect(out).not.toContain('"components"');
  });

  test('writes the plan document with what it was made from, which is valid', async () => {
    const { code } = await afterheat('plan', 'cook', '--out', 'roots.plan.json', '--effort', '100000');
    expect(code).toBe(0);
    const read = readDocument('roots.plan.json', await readFile(join(folder, 'roots.plan.json'), 'utf8'), 'plan');
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    expect([read.value.session, read.value.kitchen, read.value.components]).toEqual([cook, smallKitchen(), [roots]]);
    expect(checkPlan(read.value)).toEqual([]);
  });

  test('gives the same plan for the same seed and effort', async () => {
    const plans = [];
    for (const file of ['a.plan.json', 'b.plan.json']) {
      await afterheat('plan', 'cook', '--seed', '5', '--effort', '20000', '--out', file);
      plans.push(await readFile(join(folder, file), 'utf8'));
    }
    expect(plans[0]).toBe(plans[1]);
  });

  test('takes a kitchen by its file or its id, and says what it lacks', async () => {
    for (const kitchen of ['no-oven.kitchen.json', 'no-oven']) {
      const { code, err } = await afterheat('plan', 'cook', '--kitchen', kitchen);
      expect(code).toBe(2);
      expect(err).toContain('steps[1].needs');
      expect(err).toContain('no-oven');
    }
  });

  test('ends with 1 and the reason where no plan is possible', async () => {
    await writeFile(join(folder, 'cook.session.json'), documentText({ ...cook, longest: 'PT30M' }));
    const told = await afterheat('plan', 'cook');
    expect(told).toMatchObject({ code: 1, out: '' });
    expect(told.err).toMatch(/^No plan is possible/);
    const { code, out } = await afterheat('plan', 'cook', '--json');
    expect(code).toBe(1);
    expect(JSON.parse(out)).toMatchObject({ status: 'impossible' });
  });

  test('ends with 2 and every fault where the input is bad', async () => {
    await writeFile(join(folder, 'cook.session.json'), JSON.stringify({ ...cook, longest: 'long', people: [] }));
    const { code, err, out } = await afterheat('plan', 'cook.session.json');
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('cook.session.json, longest: found "long"\n    wanted: an ISO 8601 duration');
    expect(err).toContain('cook.session.json, people: found an empty list');
    expect((await afterheat('plan', 'none.session.json')).err).toContain('none.session.json: found no such file');
    expect((await afterheat('plan', 'nowhere')).err).toContain('no session with the id "nowhere"');
  });

  test('prefers the components beside the session’s file to those of the data folder', async () => {
    const other = await emptyFolder();
    await writeFile(join(other, 'cook.session.json'), documentText(cook));
    await writeFile(join(other, 'roots.component.json'), documentText({ ...roots, steps: [step('peel', [on(9)])] }));
    const { out } = await afterheat('plan', join(other, 'cook.session.json'), '--json');
    expect(JSON.parse(out)).toMatchObject({ finishMinutes: 9 });
  });
});

describe('check', () => {
  test('says that a valid plan keeps the rules', async () => {
    expect(await afterheat('check', 'supper.plan.json')).toMatchObject({
      code: 0,
      out: `${supper.name}: all ten rules hold (${supper.steps.length} steps)`,
    });
  });

  test('ends with 1 and names each violation', async () => {
    await writeFile(join(folder, 'broken.plan.json'), documentText({ ...supper, steps: supper.steps.slice(1) }));
    const { code, out } = await afterheat('check', 'broken.plan.json');
    expect(code).toBe(1);
    expect(out).toMatch(/^Rule \d+: /);
    const json = await afterheat('check', 'broken.plan.json', '--json');
    expect(JSON.parse(json.out)).toMatchObject({ valid: false });
  });

  test('ends with 2 where there is no plan', async () => {
    expect((await afterheat('check', 'cook.session.json')).err).toContain('wanted: "plan"; give a plan document here');
    expect((await afterheat('check', 'cook.session.json')).code).toBe(2);
  });
});

describe('improve', () => {
  test('tells how many minutes each help gains, and names what gains nothing', async () => {
    const { code, out } = await afterheat('improve', 'cook.session.json', '--effort', '2000000');
    expect(code).toBe(0);
    // 18 min of heating, then 1 + 40 + 1 in the oven: only what shortens those helps.
    expect(out).toMatch(/^Work takes 1 h \(proven the least\)/);
    expect(out).toMatch(/5 min sooner, proven {2}roast \(roots\), 5 min shorter/);
    expect(out).toMatch(/Proven to gain nothing\n {2}another board;/);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
  });

  test('prints the same as JSON, in minutes', async () => {
    const { code, out } = await afterheat('improve', 'cook.session.json', '--effort', '2000000', '--json');
    const told = JSON.parse(out) as { answers: { help: { id: string }; gain: number; proven: boolean }[] };
    expect(code).toBe(0);
    expect(told).toMatchObject({ status: 'answered', measure: 'finish', finish: 60, bound: 60, open: 0 });
    expect(told.answers[0]).toMatchObject({ help: { id: 'by-itself roots/roast' }, gain: 5, proven: true });
  });

  test('of a session without a plan says so and ends with 1; of a kitchen without an oven with 2', async () => {
    await writeFile(join(folder, 'cook.session.json'), documentText({ ...cook, longest: 'PT30M' }));
    expect(await afterheat('improve', 'cook.session.json')).toMatchObject({
      code: 1,
      err: expect.stringContaining('No plan is possible') as string,
    });
    expect((await afterheat('improve', 'cook.session.json', '--kitchen', 'no-oven')).code).toBe(2);
  });
});

describe('a session that cannot be planned', () => {
  test('is told with what clashes, where it is written, and what alone mends it', async () => {
    await writeFile(join(folder, 'cook.session.json'), documentText({ ...cook, longest: 'PT30M' }));
    const { code, err } = await afterheat('plan', 'cook.session.json');
    expect(code).toBe(1);
    // 42 min in the oven alone are more than 30.
    expect(err).toMatch(/^No plan is possible, for this cannot be:\n/);
    expect(err).toMatch(/done within 30 min, by 10:30 {2}\[session cook, longest\]\n/);
    expect(err).toMatch(/This makes a plan possible:\n {2}let the session last at least 1 h, until 11:00$/);
  });

  test('has the same in its JSON', async () => {
    await writeFile(join(folder, 'cook.session.json'), documentText({ ...cook, longest: 'PT30M' }));
    const { code, out } = await afterheat('plan', 'cook.session.json', '--json');
    expect(code).toBe(1);
    expect(JSON.parse(out)).toMatchObject({
      status: 'impossible',
      clash: {
        minimal: true,
        members: [{ path: 'longest' }],
        singles: [{ document: 'session cook', path: 'longest' }],
      },
    });
  });
});

describe('compare', () => {
  test('prints the figures of each kitchen side by side', async () => {
    await writeFile(join(folder, 'slow.kitchen.json'), documentText(slow()));
    const { code, out } = await afterheat('compare', 'cook', '--kitchen', 'small', '--kitchen', 'slow.kitchen.json');
    expect(code).toBe(0);
    // The slow oven takes twice the 18 min to 200 °C.
    expect(out).toMatch(/finish +60 min +78 min \(\+18\)/);
  });

  test('ends with 2 where a kitchen cannot do it, and still tells the other', async () => {
    const { code, out, err } = await afterheat('compare', 'cook', '--kitchen', 'small', '--kitchen', 'no-oven');
    expect(code).toBe(2);
    expect(out).toMatch(/^Small kitchen: finish after 1 h/);
    expect(err).toMatch(/^no-oven: /);
  });

  test('needs two kitchens', async () => {
    expect((await afterheat('compare', 'cook')).code).toBe(2);
  });
});

/** The small kitchen with an oven that heats half as fast. */
function slow() {
  const small = smallKitchen({ id: 'slow', name: 'Slow kitchen' });
  const ovens = small.ovens.map((oven) => ({
    ...oven,
    heating: oven.heating!.map((row) => ({ ...row, minutes: row.minutes * 2 })),
  }));
  return { ...small, ovens };
}

describe('model', () => {
  test('prints the problem, which speaks of no food', async () => {
    const { code, out } = await afterheat('model', 'cook');
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ format: 'afterheat.problem', version: 1, name: 'cook', horizon: 180 });
  });

  test('writes it to a file', async () => {
    expect(await afterheat('model', 'cook', '--out', 'p.json')).toMatchObject({ code: 0, out: '' });
    expect(JSON.parse(await readFile(join(folder, 'p.json'), 'utf8'))).toMatchObject({ format: 'afterheat.problem' });
  });
});

describe('chart', () => {
  test('draws a plan into an SVG file, light or dark', async () => {
    await afterheat('plan', 'cook', '--out', 'roots.plan.json', '--effort', '20000');
    for (const args of [
      ['--out', 'light.svg'],
      ['--out', 'dark.svg', '--dark'],
    ])
      expect(await afterheat('chart', 'roots.plan.json', ...args)).toMatchObject({ code: 0, out: '', err: '' });
    const [light, dark] = await Promise.all(
      ['light.svg', 'dark.svg'].map((name) => readFile(join(folder, name), 'utf8')),
    );
    expect(light).toMatch(/^<svg [^>]*xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
    expect(light).toContain('Ada');
    expect(dark).not.toBe(light);
  });

  test('does not draw a plan that breaks a rule', async () => {
    await writeFile(join(folder, 'broken.plan.json'), documentText({ ...supper, steps: supper.steps.slice(1) }));
    const { code, out, err } = await afterheat('chart', 'broken.plan.json');
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(/\nRule \d+: /);
  });
});

describe('schema', () => {
  test('prints the JSON Schema of a kind', async () => {
    const { code, out } = await afterheat('schema', 'kitchen');
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ $schema: 'http://json-schema.org/draft-07/schema#' });
  });

  test('ends with 2 for another word', async () => {
    expect(await afterheat('schema', 'fridge')).toMatchObject({
      code: 2,
      err: 'KIND is one of kitchen, component, session, plan, safety-rules, not "fridge"',
    });
  });
});

test('help has an example of every verb', async () => {
  const { code, out } = await afterheat('--help');
  expect(code).toBe(0);
  for (const verb of ['plan', 'check', 'compare', 'model', 'chart'])
    expect(out.split('Examples:')[1]).toContain(`afterheat ${verb}`);
});

test('a wrong command ends with 2 and points to the help', async () => {
  expect(await afterheat()).toMatchObject({ code: 2, err: 'afterheat: no verb was given\nTry: afterheat --help' });
});

describe('account', () => {
  test('prints what a plan takes, who bears it, what sharing saved and what is not counted', async () => {
    const { code, out } = await afterheat('account', 'supper.plan.json');
    expect(code).toBe(0);
    expect(out).toMatch(/^Written by hand: \d\.\d\d kWh, 4\.0 L of water, \d\.\d\d EUR\n/);
    expect(out).toMatch(/\n {2}the oven: 0\.98 kWh, 0\.29 EUR\n/);
    expect(out).toMatch(/Sharing saved [^]*the pot of water serves [^]*, instead of 3 pots of water: /);
    expect(out).toMatch(/Not counted: /);
  });

  test('prints it as JSON', async () => {
    const { code, out } = await afterheat('account', 'supper.plan.json', '--json');
    const { currency, lines } = JSON.parse(out) as { currency: string; lines: readonly { by: string }[] };
    expect(code).toBe(0);
    expect(currency).toBe('EUR');
    expect(lines.map(({ by }) => by)).toEqual(['kept-hot', 'afterheat', 'one-boil']);
  });
});

describe('labels', () => {
  test('prints what each eater’s boxes hold, in the order of filling, with the caution', async () => {
    const { code, out } = await afterheat('labels', 'supper.plan.json');
    expect(code).toBe(0);
    expect(out).toMatch(/^Written by hand: 4 boxes, in the order of filling\n\n1\. Eve, 2 boxes\n {3}greens, 250 g\n/);
    expect(out).toMatch(/CONTAINS none of the fourteen allergens\n {3}kept free of gluten\n/);
    expect(out).toMatch(/2\. For anybody, 2 boxes[^]*CONTAINS cereals containing gluten \(US list: wheat\)/);
    expect(out).toMatch(/cooked 2026-03-08, use by 2026-03-10/);
    expect(out).toMatch(/no guarantee for someone with a severe allergy/);
  });

  test('prints them as JSON, one a box', async () => {
    const { code, out } = await afterheat('labels', 'supper.plan.json', '--json');
    const { labels } = JSON.parse(out) as { labels: readonly { eater: { id: string } | null; useBy: string }[] };
    expect(code).toBe(0);
    expect(labels.map(({ eater }) => eater?.id ?? null)).toEqual(['eve', 'eve', null, null]);
  });

  test('writes a page to print', async () => {
    const { code } = await afterheat('labels', 'supper.plan.json', '--out', 'labels.html');
    expect(code).toBe(0);
    expect(await readFile(join(folder, 'labels.html'), 'utf8')).toMatch(/^<!doctype html>[^]*Eve · 1 of 2/);
  });

  test('says of a box that may have met what its eater avoids that it is not for them, and fails', async () => {
    const plan = structuredClone(supper);
    plan.steps.splice(
      plan.steps.findIndex(({ id }) => id === 'wash/ada.1'),
      1,
    );
    await writeFile(join(folder, 'unwashed.plan.json'), documentText(plan));
    const { code, out } = await afterheat('labels', 'unwashed.plan.json');
    expect(code).toBe(1);
    expect(out).toMatch(
      /MAY HAVE MET cereals containing gluten \(US list: wheat\)\n {3}NOT FOR Eve, who avoids gluten/,
    );
  });

  test('says so where the session fills no boxes', async () => {
    const plan = structuredClone(supper);
    delete plan.session.packing;
    await writeFile(join(folder, 'bare.plan.json'), documentText(plan));
    expect(await afterheat('labels', 'bare.plan.json')).toMatchObject({ code: 0 });
  });
});
