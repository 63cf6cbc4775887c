/** Malformed documents: each fault names file, place, what was found, what is wanted, and the mend; all of them at once. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { documentText } from '../../../app/documents/write-document.ts';
import { acceptDocument, readDocument } from '../../../app/documents/read-document.ts';
import { kitchen, session, supper, components } from '../../support/supper.ts';

const FILE = 'a.session.json';
const faultsOf = (text: string, kind?: 'kitchen' | 'component' | 'session' | 'plan') => {
  const read = readDocument(FILE, text, kind!);
  return read.ok ? [] : read.faults;
};
/** The session with some of its places changed. */
const sessionText = (changes: Record<string, unknown>): string => JSON.stringify({ ...session, ...changes });

describe('a document that is sound', () => {
  test.each([kitchen, ...components, session, supper].map((document) => [document.kind, document] as const))(
    'a %s comes back as it was written',
    (kind, document) => {
      expect(readDocument(FILE, documentText(document), kind)).toEqual({ ok: true, value: document });
    },
  );
});

describe('a document that is not', () => {
  test('broken JSON is told by line and column', () => {
    expect(faultsOf('{\n "kind": "session",\n "version": 1,,\n}')).toEqual([
      {
        document: FILE,
        path: 'line 3, column 15',
        found: '`,`',
        wanted: 'a key in `"`',
        mend: 'correct the JSON at line 3',
      },
    ]);
  });

  test('several faults are told at once, each with its place', () => {
    const dishes = session.dishes.map((dish, index) => (index === 0 ? { ...dish, portions: 'four' } : dish));
    const faults = faultsOf(sessionText({ longest: '2 hours', dishes, people: [] }));
    expect(faults.map(({ path, found, wanted }) => ({ path, found, wanted }))).toEqual(
      expect.arrayContaining([
        { path: 'longest', found: '"2 hours"', wanted: 'an ISO 8601 duration such as "PT45M" or "PT2M30S"' },
        { path: 'dishes[0].portions', found: '"four"', wanted: 'a number' },
        { path: 'people', found: 'an empty list', wanted: 'at least one person' },
      ]),
    );
    expect(faults).toHaveLength(3);
  });

  test('a place deep in a component is written as a path', () => {
    const [first] = components;
    const text = JSON.stringify({
      ...first,
      steps: [{ ...first!.steps[0], needs: [{ use: 'oven', function: 'fan', leastC: 'hot', mostC: 200, share: 50 }] }],
    });
    expect(faultsOf(text, 'component').map(({ path }) => path)).toContain('steps[0].needs[0].leastC');
  });

  test('a key that is missing is told by its name', () => {
    const { longest: _, ...rest } = session;
    expect(faultsOf(JSON.stringify(rest))).toEqual([
      { document: FILE, path: 'longest', found: 'nothing', wanted: 'the key "longest"', mend: 'add "longest"' },
    ]);
  });

  test('a misspelt key is told with the one that was meant', () => {
    const { longest, ...rest } = session;
    const faults = faultsOf(JSON.stringify({ ...rest, longset: longest }));
    expect(faults.find(({ path }) => path === 'longset')?.mend).toBe('write "longest"');
  });

  test('a picklist names what can be picked', () => {
    expect(faultsOf(sessionText({ intent: 'fastest' }))[0]).toMatchObject({
      path: 'intent',
      found: '"fastest"',
      wanted: 'one of soonest, freshest, thriftiest, calmest',
    });
  });

  test.each([
    { name: 'another kind than wanted', text: JSON.stringify(kitchen), found: '"kitchen"', wanted: '"session"' },
    { name: 'a kind that is not known', text: '{"kind": "recipe"}', found: '"recipe"', wanted: '"session"' },
    { name: 'no kind', text: '{}', found: 'nothing', wanted: '"session"' },
  ])('$name is told before anything else', ({ text, found, wanted }) => {
    const faults = faultsOf(text, 'session');
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ path: 'kind', found, wanted });
  });

  test('a version of the future is told as such', () => {
    expect(faultsOf(sessionText({ version: 7 }))).toEqual([
      {
        document: FILE,
        path: 'version',
        found: 'version 7, which is newer than this Afterheat knows',
        wanted: 'version 1',
        mend: 'open it with a newer Afterheat',
      },
    ]);
  });

  test.each([['"1"'], ['0'], ['1.5'], ['null']])('a version of %s is no version', (version) => {
    expect(faultsOf(`{"kind": "session", "version": ${version}}`)[0]).toMatchObject({
      path: 'version',
      mend: 'write "version": 1',
    });
  });

  test.each([['[]'], ['null'], ['"session"'], ['12']])('%s is no document', (text) => {
    expect(faultsOf(text)).toHaveLength(1);
  });
});

describe('properties', () => {
  test('no text whatever makes reading throw', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.json({ maxDepth: 2 })), (text) => {
        expect(readDocument(FILE, text).ok).toBe(false);
      }),
      { numRuns: 300 },
    );
  });

  test('a document with any of its values replaced is taken or refused with a place, and never throws', () => {
    const documents = [kitchen, components[0]!, session];
    fc.assert(
      fc.property(fc.constantFrom(...documents), fc.nat(), fc.jsonValue({ maxDepth: 1 }), (document, at, value) => {
        const places = placesIn(document);
        const path = places[at % places.length]!;
        const read = acceptDocument(FILE, replaced(document, path, value));
        if (!read.ok) for (const fault of read.faults) expect(fault.mend).not.toBe('');
      }),
      { numRuns: 1500 },
    );
  });
});

type Path = readonly (string | number)[];

/** Every place in a value, the whole apart. */
function placesIn(value: unknown, path: Path = []): readonly Path[] {
  if (typeof value !== 'object' || value === null) return path.length === 0 ? [] : [path];
  const within = Array.isArray(value)
    ? value.flatMap((item, index) => placesIn(item, [...path, index]))
    : Object.entries(value).flatMap(([key, item]) => placesIn(item, [...path, key]));
  return path.length === 0 ? within : [path, ...within];
}

function replaced(value: unknown, [key, ...rest]: Path, put: unknown): unknown {
  if (key === undefined) return put;
  if (Array.isArray(value))
    return value.map((item, index) => (index === key ? replaced(item, rest, put) : (item as unknown)));
  const object = value as Record<string, unknown>;
  return { ...object, [key]: replaced(object[key], rest, put) };
}
