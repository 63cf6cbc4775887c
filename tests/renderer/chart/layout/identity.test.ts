import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { componentOwners, letterFor, ownerOf } from '../../../../renderer/chart/layout/identity.ts';
import { supper } from '../../../support/supper.ts';

describe('dishes are told apart by a letter', () => {
  test.each([
    { name: 'Pot greens', taken: '', letter: 'P' },
    { name: 'Pot greens', taken: 'P', letter: 'G' },
    { name: 'Pot greens', taken: 'PG', letter: 'O' },
    { name: 'Ærter', taken: '', letter: 'Æ' },
    { name: '7', taken: '', letter: 'A' },
  ])('$name with $taken taken is $letter', ({ name, taken, letter }) => {
    expect(letterFor(name, new Set(taken))).toBe(letter);
  });

  test('up to 26 dishes never share one', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z ]{1,12}$/), { maxLength: 26 }), (names) => {
        const taken = new Set<string>();
        for (const name of names) taken.add(letterFor(name, taken));
        expect(taken.size).toBe(names.length);
      }),
    );
  });

  test('owners come in the order of the dishes; kitchen work has a pictogram', () => {
    const owners = componentOwners(supper);
    expect([...owners.keys()]).toEqual(supper.session.dishes.map((dish) => dish.component));
    expect(owners.get('chicken')).toMatchObject({ letter: 'C', tone: 1 });
    expect(owners.get('croutons')).toMatchObject({ letter: 'R', tone: 2 });
    const wash = supper.steps.find((step) => step.kind === 'wash')!;
    expect(ownerOf(wash, owners)).toMatchObject({ kind: 'work', glyph: 'wash' });
  });
});
