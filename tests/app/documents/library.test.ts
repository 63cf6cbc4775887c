import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { createLibrary } from '../../../app/documents/library.ts';
import { demoSource, fileSource, folderSource } from '../../../app/documents/sources.ts';
import { gatherSession } from '../../../app/documents/gather-session.ts';
import { documentText } from '../../../app/documents/write-document.ts';
import { STRICTEST_BUILT_IN } from '../../../solver/safety/rules-in-force.ts';
import { component, on, session as sessionOf, smallKitchen, step } from '../../support/documents.ts';
import { DEMO } from '../../support/demo-documents.ts';
import { emptyFolder } from '../../support/folder.ts';

const roots = component('roots', [step('peel', [on(5)])]);
const cook = sessionOf([roots], { id: 'cook' });
const small = smallKitchen();

async function folderWith(files: Readonly<Record<string, string>>): Promise<string> {
  const folder = await emptyFolder();
  await Promise.all(Object.entries(files).map(([name, text]) => writeFile(join(folder, name), text)));
  return folder;
}
const sound = {
  'roots.component.json': documentText(roots),
  'cook.session.json': documentText(cook),
  'small.kitchen.json': documentText(small),
};

describe('a library', () => {
  test('lists every document of the demo, all of them sound', async () => {
    const entries = await createLibrary([demoSource]).list();
    const files = (await readdir(DEMO, { recursive: true })).filter((name) => name.endsWith('.json'));
    expect(entries).toHaveLength(files.length);
    expect(entries.filter(({ faults }) => faults.length > 0)).toEqual([]);
    expect(entries.every(({ demo, file }) => demo && file.startsWith('demo/'))).toBe(true);
  });

  test('lists a broken file by its name, with its faults, beside the sound ones', async () => {
    const folder = await folderWith({ ...sound, 'bad.kitchen.json': '{"kind": "kitchen",' });
    const entries = await createLibrary([folderSource(folder)]).list();
    expect(entries.map(({ kind, id, faults }) => [kind, id, faults.length])).toEqual([
      ['session', 'cook', 0],
      ['kitchen', 'bad', 1],
      ['kitchen', 'small', 0],
      ['component', 'roots', 0],
    ]);
  });

  test('has no documents where there is no folder', async () => {
    expect(await createLibrary([folderSource('/no/such/folder')]).list()).toEqual([]);
  });

  test('passes over files and folders that are none of ours', async () => {
    const folder = await folderWith({ ...sound, 'notes.txt': 'x', 'package.json': '{}' });
    await mkdir(join(folder, 'old.session.json'));
    const entries = await createLibrary([folderSource(folder)]).list();
    expect(entries.filter(({ faults }) => faults.length === 0)).toHaveLength(3);
    expect(entries.find(({ id }) => id === 'old')?.faults[0]?.found).toBe('no file but a folder or device');
  });

  test('takes a document of an earlier source for one of the same id in a later', async () => {
    const mine = await folderWith({ 'roots.component.json': documentText({ ...roots, name: 'my roots' }) });
    const theirs = await folderWith(sound);
    const library = createLibrary([folderSource(mine), folderSource(theirs)]);
    expect(await library.find('component', 'roots')).toMatchObject({ ok: true, value: { name: 'my roots' } });
    expect((await library.list()).filter(({ id }) => id === 'roots')).toHaveLength(1);
  });

  test('tells two files of one folder with the same id', async () => {
    const folder = await folderWith({
      'a.component.json': documentText(roots),
      'b.component.json': documentText(roots),
    });
    const entries = await createLibrary([folderSource(folder)]).list();
    expect(entries.map(({ file, faults }) => [file, faults[0]?.found])).toEqual([
      ['a.component.json', undefined],
      ['b.component.json', '"roots", which a.component.json has too'],
    ]);
  });

  test('reads a file again once it has changed', async () => {
    const folder = await folderWith(sound);
    const library = createLibrary([folderSource(folder)]);
    await library.list();
    await writeFile(join(folder, 'roots.component.json'), documentText({ ...roots, name: 'new roots' }));
    expect(await library.find('component', 'roots')).toMatchObject({ ok: true, value: { name: 'new roots' } });
  });

  test('says which ids there are where one is not', async () => {
    const answer = await createLibrary([folderSource(await folderWith(sound))]).find('kitchen', 'smal');
    expect(answer).toEqual({
      ok: false,
      faults: [
        {
          document: 'kitchen smal',
          path: '',
          found: 'no kitchen with the id "smal"',
          wanted: 'one of small',
          mend: 'correct the id, or put smal.kitchen.json into the data folder',
        },
      ],
    });
  });

  test('refuses text that is not UTF-8, and files that are not there', async () => {
    const folder = await emptyFolder();
    await writeFile(join(folder, 'latin.session.json'), Buffer.from([0x22, 0xe9, 0x22]));
    const founds = (
      await createLibrary([
        fileSource(join(folder, 'latin.session.json')),
        fileSource(join(folder, 'none.session.json')),
      ]).list()
    ).map(({ faults }) => faults[0]?.found);
    expect(founds).toEqual(['bytes that are no UTF-8 text', 'no such file']);
  });
});

describe('a session gathered', () => {
  test('comes with its first kitchen and the components of its dishes', async () => {
    const library = createLibrary([folderSource(await folderWith(sound))]);
    expect(await gatherSession(library, { session: 'cook' })).toEqual({
      ok: true,
      value: { session: cook, kitchen: small, components: [roots], rules: STRICTEST_BUILT_IN },
    });
  });

  test('names every document that is missing by its place in the session', async () => {
    const library = createLibrary([
      folderSource(await folderWith({ 'cook.session.json': sound['cook.session.json'] })),
    ]);
    const answer = await gatherSession(library, { session: 'cook' });
    expect(answer.ok ? [] : answer.faults.map(({ document, path }) => [document, path])).toEqual([
      ['session cook', 'kitchens[0]'],
      ['session cook', 'dishes[0].component'],
    ]);
  });

  test('gives the faults of a component that is broken as that file’s own', async () => {
    const library = createLibrary([folderSource(await folderWith({ ...sound, 'roots.component.json': '{' }))]);
    const answer = await gatherSession(library, { session: 'cook' });
    expect(answer.ok ? [] : answer.faults.map(({ document, path }) => [document, path])).toEqual([
      ['roots.component.json', 'line 1, column 2'],
    ]);
  });
});
