import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pathWords, typedNumber, valueAt, withAt } from '../../../renderer/places/draft-paths.ts';

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

  test('gives back what was set, whatever the path', () => {
    const step = fc.oneof(fc.constantFrom('a', 'b', 'c'), fc.nat(3));
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 5 }), fc.integer(), (path, value) => {
        expect(valueAt(withAt(null, path, value), path)).toBe(value);
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
