import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { packLists, placesOf } from '../../../solver/engine/sparse-lists.ts';

describe('sparse lists', () => {
  it('of places have every index under its key, ascending', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 5 }), { maxLength: 30 }), (keys) => {
        const byKey = [0, 1, 2, 3, 4, 5].map((key) => keys.flatMap((of, index) => (of === key ? [index] : [])));
        expect(placesOf(6, keys)).toEqual(packLists(byKey));
      }),
    );
  });
});
