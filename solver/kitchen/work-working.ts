/** The working of hands-on minutes. */
import type { Component } from './component.ts';
import { workAmounts, workMinutes } from './scaling.ts';
import type { Work } from './step.ts';
import { durationMinutes } from './values.ts';
import type { Source } from '../source.ts';
import type { Working, WorkingInput } from '../working.ts';

const FIXED_AND_GROWING: Source = {
  standing: 'published',
  cite: 'Hunter, Tang, Spies, SAE Technical Paper 2003-01-2542 (abstract): a fixed part plus a part that grows with the quantity',
};

/** Working of `workMinutes`; the minutes themselves are the document's. */
export function workWorking(
  work: Work,
  component: Pick<Component, 'ingredients' | 'makes'>,
  portions: number,
): Working {
  const { kg, pieces } = workAmounts(work, component, portions);
  const named =
    work.of === undefined
      ? 'all ingredients'
      : (component.ingredients.find(({ id }) => id === work.of)?.name ?? work.of);
  const parts: readonly {
    readonly symbol: string;
    readonly given: string | undefined;
    readonly by: WorkingInput | null;
  }[] = [
    { symbol: 'a', given: work.fixed, by: null },
    { symbol: 'b', given: work.perKg, by: { symbol: 'm', name: named, value: kg, unit: 'kg' } },
    { symbol: 'c', given: work.perPiece, by: { symbol: 'n', name: `pieces of ${named}`, value: pieces, unit: '1' } },
    { symbol: 'd', given: work.perPortion, by: { symbol: 'p', name: 'portions', value: portions, unit: '1' } },
  ];
  const there = parts.filter(({ given }) => given !== undefined);
  const per = { a: 'min', b: 'min/kg', c: 'min', d: 'min' } as const;
  const told = {
    a: 'whatever the amount',
    b: 'for each kilogram',
    c: 'for each piece',
    d: 'for each portion',
  } as const;
  return {
    name: 'Minutes of work by hand',
    value: workMinutes(work, component, portions),
    unit: 'min',
    formula: `t = ${there.map(({ symbol, by }) => (by === null ? symbol : `${symbol}·${by.symbol}`)).join(' + ') || '0'}, rounded up, at least 1`,
    inputs: there.flatMap(({ symbol, given, by }): WorkingInput[] => [
      {
        symbol,
        name: told[symbol as keyof typeof told],
        value: durationMinutes(given!),
        unit: per[symbol as keyof typeof per],
      },
      ...(by === null ? [] : [by]),
    ]),
    source: FIXED_AND_GROWING,
    caution: 'Minutes by hand are as quick as the cook; those of the recipe are where to begin.',
  };
}
