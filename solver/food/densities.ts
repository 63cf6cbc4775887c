/** The weight of a volume of food. */
import type { Source } from '../source.ts';
import { DENSITIES } from './data/densities.ts';
import { figure, readTable } from './data/read-table.ts';

export interface Density {
  /** Key of the table of foods. */
  readonly food: string;
  /** How it lies in the measure: chopped, sliced, cubes; `as measured` where that is not told. */
  readonly form: string;
  readonly gPerMl: number;
  readonly source: Source;
}

/** Every density of the table. */
export const DENSITY_TABLE: readonly Density[] = readTable<'food' | 'form' | 'g' | 'ml' | 'release'>(DENSITIES).map(
  (row) => ({
    food: row.food,
    form: row.form,
    gPerMl: figure(row.g)! / figure(row.ml)!,
    source: {
      standing: 'derived',
      cite: `${row.g} g in ${row.ml} mL: USDA National Nutrient Database for Standard Reference, household weights of Release ${row.release}`,
    },
  }),
);

/**
 * The density of a food.
 *
 * @param form as the ingredient writes it; decides where the table has several
 * @returns that of the form; else the only form there is, or the first `as measured`; undefined where the table has none, or several
 *   forms and none of that name
 */
export function densityOf(food: string, form?: string): Density | undefined {
  const rows = DENSITY_TABLE.filter((row) => row.food === food);
  const named = rows.find((row) => row.form === form);
  if (named !== undefined) return named;
  const forms = new Set(rows.map((row) => row.form));
  return forms.size === 1 ? rows[0] : rows.find((row) => row.form === 'as measured');
}
