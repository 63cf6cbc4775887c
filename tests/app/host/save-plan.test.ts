import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readDocument } from '../../../app/documents/read-document.ts';
import { savePlan } from '../../../app/host/save-plan.ts';
import { emptyFolder } from '../../support/folder.ts';
import { supper } from '../../support/supper.ts';

test('a valid plan is written under its id and read back as it was', async () => {
  const folder = await emptyFolder();
  const answer = await savePlan(supper, folder);
  const file = `${supper.id}.plan.json`;
  expect(answer).toEqual({
    ok: true,
    value: { kind: 'plan', id: supper.id, name: supper.name, file, demo: false, faults: [] },
  });
  expect(readDocument(file, await readFile(join(folder, file), 'utf8'), 'plan')).toEqual({ ok: true, value: supper });
});

test('a plan that breaks a rule is not written', async () => {
  const folder = await emptyFolder();
  const broken = { ...supper, steps: supper.steps.slice(1) };
  const answer = await savePlan(broken, folder);
  expect(answer.ok ? '' : answer.faults.map(({ wanted }) => wanted)).toContain('a plan that keeps rule 1');
  expect(await readdir(folder)).toEqual([]);
});

test('what is no plan is not written', async () => {
  const folder = await emptyFolder();
  const answers = await Promise.all(
    [null, 'x', { ...supper, id: '../x' }, { kind: 'plan', version: 1 }].map((given) => savePlan(given, folder)),
  );
  expect(answers.map(({ ok }) => ok)).toEqual([false, false, false, false]);
  expect(await readdir(folder)).toEqual([]);
});
