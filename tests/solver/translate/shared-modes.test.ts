import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Mode, Use } from '../../../solver/engine/problem.ts';
import { SharedModes } from '../../../solver/translate/shared-modes.ts';

const marks = fc.subarray(['wheat', 'egg', 'eg', 'g'], { minLength: 1 });
const uses = fc.array(
  fc.record(
    {
      resource: fc.constantFrom('board', 'hands'),
      amount: fc.integer({ min: 0, max: 2 }),
      leaves: marks,
      avoids: marks,
      cleans: fc.constant(true),
    },
    { requiredKeys: ['resource', 'amount'] },
  ),
  { maxLength: 2 },
);
const amount = fc.integer({ min: 0, max: 1 });
const modes = fc.array(
  fc.option(
    fc.record(
      {
        shortest: amount,
        longest: fc.integer({ min: 1, max: 2 }),
        uses,
        state: fc.record({ state: fc.constantFrom('oven', 'other oven'), class: amount }),
        cost: fc.record({ fixed: amount, perMinute: amount }),
      },
      { requiredKeys: ['shortest', 'longest', 'uses'] },
    ),
  ),
  { minLength: 1, maxLength: 3 },
);

function sharedBy(shared: SharedModes, list: readonly (Mode | null)[]): readonly (Mode | null)[] {
  const use = ({ leaves, avoids, ...rest }: Use): Use =>
    shared.use({
      ...rest,
      ...(leaves === undefined ? {} : { leaves: shared.marks(leaves) }),
      ...(avoids === undefined ? {} : { avoids: shared.marks(avoids) }),
    });
  return shared.list(list.map((mode) => (mode === null ? null : { ...mode, uses: mode.uses.map(use) })));
}

describe('shared modes', () => {
  it('say what was said, and lists are one exactly where they say the same', () => {
    fc.assert(
      fc.property(fc.array(modes, { minLength: 2, maxLength: 12 }), (lists) => {
        const shared = new SharedModes();
        const given = lists.map((list) => sharedBy(shared, list));
        expect(given).toEqual(lists);
        const written = lists.map((list) =>
          JSON.stringify(
            list.map((mode) => mode && [mode.shortest, mode.longest, mode.state, mode.cost, mode.uses.map(inOrder)]),
          ),
        );
        given.forEach((list, a) => {
          given.forEach((other, b) => {
            expect(list === other, `${written[a]} beside ${written[b]}`).toBe(written[a] === written[b]);
          });
        });
      }),
    );
  });

  it('keep lists of marks apart that would be written alike', () => {
    const shared = new SharedModes();
    const pair = shared.marks(['a', 'b']);
    expect(shared.marks(['a', 'b'])).toBe(pair);
    expect(shared.marks(['ab'])).not.toBe(pair);
    expect(shared.marks(['a1:b'])).not.toBe(pair);
  });
});

const inOrder = ({ resource, amount: of, leaves, avoids, cleans }: Use): unknown[] => [
  resource,
  of,
  leaves ?? null,
  avoids ?? null,
  cleans ?? false,
];
