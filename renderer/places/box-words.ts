/** Words of the box cards: allergens, days, nutrients. */
import type { BoxFigures } from '../../solver/answers/plan-figures.ts';
import type { AllergenMark } from '../../solver/kitchen/values.ts';

type Allergens = BoxFigures['label']['contains'];
type Amounts = BoxFigures['nutrition']['amounts'];

/** Allergens as the European list says them, with the names of the United States' list that they do not say already. */
export function allergenWords({ eu, us }: Allergens): string {
  if (eu.length === 0) return 'none of the fourteen allergens';
  const said = eu.join(' ').toLowerCase();
  const more = us.map((name) => name.replace('-', ' ')).filter((name) => !said.includes(name));
  return `${eu.join(', ')}${more.length === 0 ? '' : ` (US list: ${more.join(', ')})`}`;
}

export const avoidedWords = (marks: readonly AllergenMark[]): string => marks.join(', ');

/** `8 March 2026` of `2026-03-08`. */
export const longDay = (day: string): string =>
  new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' }).format(
    new Date(`${day}T00:00Z`),
  );

const ROWS = [
  ['energy', 'energyKJ', 'kJ', 0],
  ['fat', 'fat', 'g', 1],
  ['of which saturates', 'saturates', 'g', 1],
  ['carbohydrate', 'carbohydrate', 'g', 1],
  ['of which sugars', 'sugars', 'g', 1],
  ['fibre', 'fibre', 'g', 1],
  ['protein', 'protein', 'g', 1],
  ['salt', 'salt', 'g', 2],
] as const;

/** The nutrition declaration's rows in its order; a nutrient without a reference intake has no share. */
export function intakeRows(
  amounts: Amounts,
  intake: BoxFigures['intake'],
): readonly { readonly name: string; readonly amount: string; readonly share: string }[] {
  return ROWS.map(([name, key, unit, digits]) => ({
    name,
    amount: `${amounts[key].toFixed(digits)} ${unit}`,
    share: key in intake ? `${Math.round(intake[key as keyof typeof intake] * 100)} %` : '',
  }));
}
