import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alike, pathWords, typedNumber, valueAt, withAt } from '../../../renderer/places/draft-paths.ts';

const kitchen = { name: 'K', ovens: [{ id: 'a', readings: { toHeat: [{ minutes: 12, celsius: 200 }] } }] };

test('a path is written as faults write it', () => {
  expect(pathWords(['ovens', 0, 'readings', 'toHeat', 1, 'celsius'])).toBe('ovens[0].readings.toHeat[1].celsius');
});

describe('a document with another value at a place', () => {
  test('has it there, and everything else as it was', () => {
    const changed = withAt(kitchen, ['ovens', 0, 'readings', 'toHeat', 0, 'minutes'], 13);
    expect(changed).toEqual({
      name: 'K',
      ovens: [{ id: 'a', readings: { toHeat: [{ minutes: 13, celsius: 200 }] } }],
    });
    expect(kitchen.ovens[0]!.readings.toHeat[0]!.minutes).toBe(12);
  });

  test('gets what is missing on the way', () => {
    expect(withAt({ ovens: [{ id: 'a' }] }, ['ovens', 0, 'readings', 'afterOff', 0, 'minutes'], 20)).toEqual({
      ovens: [{ id: 'a', readings: { afterOff: [{ minutes: 20 }] } }],
    });
  });

  test('loses what is set to nothing, a row of a list too', () => {
    expect(withAt({ a: 1, b: 2 }, ['a'], undefined)).toEqual({ b: 2 });
    expect(withAt({ rows: [1, 2, 3] }, ['rows', 1], undefined)).toEqual({ rows: [1, 3] });
  });

  test('loses with the last of its parts what is empty then, up to the row of a list', () => {
    const read = { ovens: [{ id: 'a', readings: { toHeat: [{ minutes: 12 }] } }] };
    expect(withAt(read, ['ovens', 0, 'readings', 'toHeat', 0], undefined)).toEqual({ ovens: [{ id: 'a' }] });
    // A row that is being filled in stays, though a field of it is emptied.
    expect(withAt(read, ['ovens', 0, 'readings', 'toHeat', 0, 'minutes'], undefined)).toEqual({
      ovens: [{ id: 'a', readings: { toHeat: [{}] } }],
    });
  });

  test('gives back what was set, whatever the path', () => {
    const step = fc.oneof(fc.constantFrom('a', 'b', 'c'), fc.nat(3));
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 5 }), fc.integer(), (path, value) => {
        expect(valueAt(withAt(null, path, value), path)).toBe(value);
      }),
    );
  });
});

describe('two documents', () => {
  test('are alike in whatever order their keys are', () => {
    expect(alike({ a: 1, b: { c: [1, 2] } }, { b: { c: [1, 2] }, a: 1 })).toBe(true);
  });

  test.each([
    ['a number', { a: 1 }, { a: 2 }],
    ['a key', { a: 1 }, { a: 1, b: 2 }],
    ['the order of a list', [1, 2], [2, 1]],
    ['a list for an object', { 0: 1 }, [1]],
    ['the kind of a value', { a: 1 }, { a: '1' }],
  ])('differ by %s', (_, one, other) => {
    expect([alike(one, other), alike(other, one)]).toEqual([false, false]);
  });

  test('are alike just where their JSON with sorted keys is', () => {
    const sorted = (value: unknown): unknown =>
      Array.isArray(value)
        ? ['list', ...value.map(sorted)]
        : typeof value === 'object' && value !== null
          ? Object.entries(value)
              .sort(([a], [b]) => (a < b ? -1 : 1))
              .reduce<unknown[]>((parts, [key, each]) => [...parts, [key, sorted(each)]], ['object'])
          : value;
    const small = fc.letrec((tie) => ({
      any: fc.oneof(
        { maxDepth: 2 },
        fc.constantFrom(0, 1, '', null),
        fc.array(tie('any'), { maxLength: 2 }),
        tie('object'),
      ),
      object: fc.dictionary(fc.constantFrom('a', 'b'), tie('any'), { maxKeys: 2 }),
    })).object;
    fc.assert(
      fc.property(small, small, (one, other) => {
        expect(alike(one, other)).toBe(JSON.stringify(sorted(one)) === JSON.stringify(sorted(other)));
      }),
    );
  });
});

test.each([
  ['12', 12],
  [' 3,5 ', 3.5],
  ['', undefined],
  ['a dozen', 'a dozen'],
])('typed %j is read as %j', (text, value) => {
  expect(typedNumber(text)).toBe(value);
});
