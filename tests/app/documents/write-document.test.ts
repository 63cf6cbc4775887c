import fc from 'fast-check';
import { readFile, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readDocument } from '../../../app/documents/read-document.ts';
import { documentText, writeText } from '../../../app/documents/write-document.ts';
import { randomSession } from '../../support/random-session.ts';
import { emptyFolder } from '../../support/folder.ts';

test('a text is written into folders that were not there', async () => {
  const path = join(await emptyFolder(), 'a', 'b', 'x.session.json');
  expect(await writeText(path, 'one')).toEqual({ ok: true, value: path });
  expect(await readFile(path, 'utf8')).toBe('one');
});

test('the file before is kept beside the new one, and nothing else is left', async () => {
  const folder = await emptyFolder();
  const path = join(folder, 'x.session.json');
  await writeText(path, 'one');
  await writeText(path, 'two');
  expect(await readFile(path, 'utf8')).toBe('two');
  expect(await readFile(`${path}.bak`, 'utf8')).toBe('one');
  expect(await readdir(folder)).toHaveLength(2);
});

test('a text that cannot be written is kept elsewhere, and the fault says where', async () => {
  const folder = await emptyFolder();
  const refuge = await emptyFolder();
  await writeFile(join(folder, 'file'), '');
  const answer = await writeText(join(folder, 'file', 'x.session.json'), 'typed with care', refuge);
  const [kept] = await readdir(refuge);
  expect(await readFile(join(refuge, kept!), 'utf8')).toBe('typed with care');
  expect(answer.ok ? '' : answer.faults[0]!.mend).toContain(join(refuge, kept!));
});

test('a text that can be kept nowhere changes nothing and says so', async () => {
  const folder = await emptyFolder();
  await writeFile(join(folder, 'file'), 'as it was');
  const answer = await writeText(join(folder, 'file', 'x.session.json'), 'new', join(folder, 'none'));
  expect(answer.ok ? '' : answer.faults[0]!.mend).toMatch(/^mend the folder/);
  expect(await readFile(join(folder, 'file'), 'utf8')).toBe('as it was');
});

test('the documents of a random session are read back as they were written', () => {
  fc.assert(
    fc.property(fc.nat(1_000_000), (seed) => {
      const { session, kitchen, components } = randomSession(seed);
      for (const document of [session, kitchen, ...components])
        expect(readDocument('x.json', documentText(document), document.kind)).toEqual({ ok: true, value: document });
    }),
    { numRuns: 50 },
  );
});
