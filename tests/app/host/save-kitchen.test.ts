import { readFile, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readDocument } from '../../../app/documents/read-document.ts';
import { documentText } from '../../../app/documents/write-document.ts';
import { saveKitchen } from '../../../app/host/save-kitchen.ts';
import { smallKitchen } from '../../support/documents.ts';
import { emptyFolder } from '../../support/folder.ts';

const file = 'small.kitchen.json';

test('a kitchen is written under its id and read back as it was', async () => {
  const folder = await emptyFolder();
  const kitchen = smallKitchen();
  expect(await saveKitchen(kitchen, folder)).toEqual({
    ok: true,
    value: { kind: 'kitchen', id: 'small', name: kitchen.name, file, demo: false, faults: [] },
  });
  expect(readDocument(file, await readFile(join(folder, file), 'utf8'), 'kitchen')).toEqual({
    ok: true,
    value: kitchen,
  });
});

test('the kitchen that was there is kept beside it', async () => {
  const folder = await emptyFolder();
  const before = documentText(smallKitchen({ name: 'as it was' }));
  await writeFile(join(folder, file), before);
  await saveKitchen(smallKitchen(), folder);
  expect(await readFile(join(folder, `${file}.bak`), 'utf8')).toBe(before);
});

test('a kitchen with a fault changes nothing, and the fault names its place', async () => {
  const folder = await emptyFolder();
  const answer = await saveKitchen({ ...smallKitchen(), roomC: 'warm' }, folder);
  expect(answer.ok ? [] : answer.faults.map(({ path }) => path)).toEqual(['roomC']);
  expect(await readdir(folder)).toEqual([]);
});
