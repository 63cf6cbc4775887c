/** In which order boxes are filled. All invented. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fillingOrder, type Filling } from '../../../solver/boxes/filling-order.ts';
import { ALLERGENS, type Allergen } from '../../../solver/kitchen/values.ts';

const boxes = (name: string, avoids: readonly Allergen[], contains: readonly Allergen[]) => ({
  name,
  avoids: new Set(avoids),
  contains: new Set(contains),
});

describe('boxes', () => {
  test('without gluten are filled before those with it, and nothing is washed', () => {
    const turns = fillingOrder([boxes('anna', [], ['gluten']), boxes('eve', ['gluten'], ['milk'])]);
    expect(turns.map(({ boxes: { name }, washBefore }) => [name, washBefore])).toEqual([
      ['eve', false],
      ['anna', false],
    ]);
    expect([...turns[1]!.met]).toEqual(['milk']);
  });

  test('of two who avoid what the other has need one wash, whichever comes first', () => {
    const turns = fillingOrder([boxes('sam', ['milk'], ['gluten']), boxes('eve', ['gluten'], ['milk'])]);
    expect(turns.map(({ washBefore }) => washBefore)).toEqual([false, true]);
    expect([...turns[1]!.met]).toEqual([]);
  });

  test('never meet what their eater avoids, and are each filled once, for any eaters', () => {
    const some = fc.subarray(ALLERGENS.slice(0, 5)).map((list): ReadonlySet<Allergen> => new Set(list));
    const filling = fc.record<Filling>({ avoids: some, contains: some });
    fc.assert(
      fc.property(fc.array(filling, { maxLength: 9 }), (all) => {
        const turns = fillingOrder(all);
        expect(new Set(turns.map((turn) => turn.boxes)).size).toBe(all.length);
        let sinceWash = new Set<string>();
        for (const { boxes: each, washBefore, met } of turns) {
          if (washBefore) sinceWash = new Set();
          expect([...sinceWash].sort()).toEqual([...met].sort());
          expect([...each.avoids].filter((mark) => sinceWash.has(mark))).toEqual([]);
          for (const mark of each.contains) sinceWash.add(mark);
        }
      }),
    );
  });
});
