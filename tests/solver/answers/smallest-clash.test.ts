import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { smallestClash, type Verdict } from '../../../solver/answers/smallest-clash.ts';

/** Items clash when they hold every member of one of the given sets. */
const clashing =
  (sets: readonly (readonly number[])[]) =>
  (kept: readonly number[]): Verdict =>
    sets.some((set) => set.every((member) => kept.includes(member))) ? 'clash' : 'fits';

describe('a smallest clash', () => {
  test('is found among items where only two clash', () => {
    expect(smallestClash([1, 2, 3, 4], clashing([[2, 4]]))).toEqual({ members: [2, 4], minimal: true });
  });

  test('is empty where nothing that is named is to blame', () => {
    expect(smallestClash([1, 2], () => 'clash')).toEqual({ members: [], minimal: true });
  });

  // The property is the definition, held against sets of which it is known what clashes.
  test('clashes, and no longer does without any one member', () => {
    const sets = fc.array(fc.uniqueArray(fc.nat(11), { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(sets, (given) => {
        const verdict = clashing(given);
        const { members, minimal } = smallestClash(
          Array.from({ length: 12 }, (_, item) => item),
          verdict,
        );
        expect(minimal).toBe(true);
        expect(verdict(members)).toBe('clash');
        for (const member of members) expect(verdict(members.filter((other) => other !== member))).toBe('fits');
      }),
    );
  });

  test('stays a clash where some sets cannot be decided, and says that it may be larger than it need be', () => {
    const sets = fc.array(fc.uniqueArray(fc.nat(7), { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(sets, fc.func(fc.boolean()), (given, isHard) => {
        const sure = clashing(given);
        const items = Array.from({ length: 8 }, (_, item) => item);
        const { members, minimal } = smallestClash(items, (kept) =>
          kept.length < items.length && isHard(kept) ? 'unknown' : sure(kept),
        );
        expect(sure(members)).toBe('clash');
        if (minimal)
          for (const member of members) expect(sure(members.filter((other) => other !== member))).toBe('fits');
      }),
    );
  });
});
