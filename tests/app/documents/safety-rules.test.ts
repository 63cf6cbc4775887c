/** The user's own safety rules as documents; all invented. */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { gatherSession } from '../../../app/documents/gather-session.ts';
import { createLibrary } from '../../../app/documents/library.ts';
import { readDocument } from '../../../app/documents/read-document.ts';
import { folderSource } from '../../../app/documents/sources.ts';
import { documentText } from '../../../app/documents/write-document.ts';
import type { SafetyRules } from '../../../solver/kitchen/safety-rules.ts';
import { BUILT_IN_RULES } from '../../../solver/safety/built-in.ts';
import { hotHolding } from '../../../solver/safety/limits.ts';
import { STRICTEST_BUILT_IN } from '../../../solver/safety/rules-in-force.ts';
import { component, on, session as sessionOf, smallKitchen, step } from '../../support/documents.ts';
import { emptyFolder } from '../../support/folder.ts';

const roots = component('roots', [step('peel', [on(5)])]);
const canteen: SafetyRules = {
  kind: 'safety-rules',
  version: 1,
  id: 'canteen',
  name: 'our canteen',
  region: 'nowhere (invented)',
  authority: 'the canteen (invented)',
  and: ['united-kingdom'],
  rules: [
    {
      kind: 'hot-holding',
      id: 'hot',
      leastC: 70,
      source: { standing: 'invented', cite: 'invented for a test' },
      edition: 'invented',
    },
  ],
};

async function libraryWith(files: Readonly<Record<string, string>>) {
  const folder = join(await emptyFolder(), 'kitchen');
  await mkdir(folder);
  await Promise.all(Object.entries(files).map(([name, text]) => writeFile(join(folder, name), text)));
  return createLibrary([folderSource(folder)]);
}
const files = (session: object = {}) => ({
  'roots.component.json': documentText(roots),
  'cook.session.json': documentText(sessionOf([roots], { id: 'cook', ...session })),
  'small.kitchen.json': documentText(smallKitchen()),
});

describe('a document of safety rules', () => {
  test.each(BUILT_IN_RULES)('can be what is built in for the $name', (rules) => {
    expect(readDocument('rules', documentText(rules), 'safety-rules')).toEqual({ ok: true, value: rules });
  });

  test('is listed, and found by its id', async () => {
    const library = await libraryWith({ 'canteen.safety-rules.json': documentText(canteen) });
    expect(await library.list()).toMatchObject([{ kind: 'safety-rules', id: 'canteen', faults: [] }]);
    expect(await library.find('safety-rules', 'canteen')).toEqual({ ok: true, value: canteen });
  });

  test('is refused where hotter food is asked to hold longer, with the place', () => {
    const pairs = [
      { celsius: 70, holdSeconds: 10 },
      { celsius: 75, holdSeconds: 30 },
    ];
    const { source, edition } = canteen.rules[0]!;
    const broken = { ...canteen, rules: [{ kind: 'core', id: 'bird', food: 'poultry', pairs, source, edition }] };
    expect(readDocument('rules', JSON.stringify(broken), 'safety-rules')).toMatchObject({
      ok: false,
      faults: [{ path: 'rules[0].pairs[1]', found: '75 °C for 30 s after 70 °C for 10 s' }],
    });
  });
});

describe('a session is gathered with the rules in force', () => {
  test('the strictest built-in ones where nobody picks any', async () => {
    const gathered = await gatherSession(await libraryWith(files()), { session: 'cook' });
    expect(gathered.ok && gathered.value.rules).toEqual(STRICTEST_BUILT_IN);
  });

  test('those that the session names, and the user’s own on top of them', async () => {
    const library = await libraryWith({
      ...files({ authority: 'canteen' }),
      'canteen.safety-rules.json': documentText(canteen),
    });
    const gathered = await gatherSession(library, { session: 'cook' });
    expect(gathered.ok && hotHolding(gathered.value.rules)?.value).toBe(70);
    const asked = await gatherSession(library, { session: 'cook', authority: 'united-states' });
    expect(asked.ok && hotHolding(asked.value.rules)?.value).toBe(60);
  });

  test('and is refused where the authority is unknown, at the session’s own words', async () => {
    const gathered = await gatherSession(await libraryWith(files({ authority: 'atlantis' })), { session: 'cook' });
    expect(gathered).toMatchObject({
      ok: false,
      faults: [{ document: 'session cook', path: 'authority', found: 'no safety rules with the id "atlantis"' }],
    });
  });

  test('and is refused with the faults of the rules document that it names', async () => {
    const library = await libraryWith({
      ...files({ authority: 'canteen' }),
      'canteen.safety-rules.json': documentText({ ...canteen, name: '' }),
    });
    expect(await gatherSession(library, { session: 'cook' })).toMatchObject({
      ok: false,
      faults: [{ document: 'canteen.safety-rules.json', path: 'name' }],
    });
  });
});
