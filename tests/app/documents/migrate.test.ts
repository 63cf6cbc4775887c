import { expect, test } from 'vitest';
import { MIGRATIONS, migrate, type MigrationStep } from '../../../app/documents/migrate.ts';

/** Two invented steps: a key renamed, then a unit changed. */
const steps: readonly MigrationStep[] = [
  ({ litres, ...rest }) => ({ ...rest, volumeL: litres }),
  ({ volumeL, ...rest }) => ({ ...rest, volumeMl: Number(volumeL) * 1000 }),
];

test('a document of the first version goes through every step in order', () => {
  expect(migrate({ version: 1, litres: 2 }, steps)).toEqual({
    kind: 'current',
    document: { version: 3, volumeMl: 2000 },
  });
});

test('a document of a later version goes only through the steps after it', () => {
  expect(migrate({ version: 2, volumeL: 3 }, steps)).toEqual({
    kind: 'current',
    document: { version: 3, volumeMl: 3000 },
  });
});

test('a document of the newest version is left as it is', () => {
  const document = { version: 3, volumeMl: 5 };
  expect(migrate(document, steps)).toEqual({ kind: 'current', document });
});

test('a document of the future and one without a version are told apart', () => {
  expect(migrate({ version: 4 }, steps)).toEqual({ kind: 'newer', known: 3 });
  expect(migrate({ version: 'two' }, steps)).toEqual({ kind: 'no-version', known: 3 });
});

test('every kind of document has one version so far', () => {
  expect(Object.values(MIGRATIONS).map((known) => known.length + 1)).toEqual([1, 1, 1, 1, 1]);
});
