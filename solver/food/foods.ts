/** The project's own table of foods: what 100 g of each hold. */
import type { Source } from '../source.ts';
import { figure, readTable } from './data/read-table.ts';
import { NUTRIENTS } from './data/nutrients.ts';

/** Nutrients that the table has, g per 100 g; null where the source has no value. */
export interface Per100g {
  readonly water: number;
  readonly protein: number;
  readonly fat: number;
  readonly saturates: number | null;
  /** By difference, fibre within. */
  readonly carbohydrate: number;
  readonly sugars: number | null;
  readonly fibre: number | null;
  readonly sodium: number | null;
}

export interface Food {
  /** Name in documents, such as `lentils-dry`. */
  readonly key: string;
  readonly name: string;
  /** Raw, dry, boiled, as sold… */
  readonly state: string;
  /** USDA's number of the food. */
  readonly ndb: string;
  readonly per100g: Per100g;
  /** USDA's printed energy, by its own factors; never mixed with energy by the factors of the European Union. */
  readonly usdaKcal: number;
  /** Share of the food as bought that is cut off and thrown away, 0–1; null where the table has none. */
  readonly refuse: number | null;
  readonly source: Source;
}

type Column =
  | 'key'
  | 'food'
  | 'state'
  | 'ndb'
  | 'description'
  | 'kcal'
  | 'water'
  | 'protein'
  | 'fat'
  | 'saturates'
  | 'carbohydrate'
  | 'sugars'
  | 'fibre'
  | 'sodium'
  | 'refuse';

const known = (cell: string): number => {
  const value = figure(cell);
  if (value === null) throw new Error('a figure that every food must have is missing');
  return value;
};

/** Every food of the table by its key. */
export const FOODS: ReadonlyMap<string, Food> = new Map(
  readTable<Column>(NUTRIENTS).map((row): [string, Food] => {
    const sodiumMg = figure(row.sodium);
    const refusePercent = figure(row.refuse);
    return [
      row.key,
      {
        key: row.key,
        name: row.food,
        state: row.state,
        ndb: row.ndb,
        per100g: {
          water: known(row.water),
          protein: known(row.protein),
          fat: known(row.fat),
          saturates: figure(row.saturates),
          carbohydrate: known(row.carbohydrate),
          sugars: figure(row.sugars),
          fibre: figure(row.fibre),
          sodium: sodiumMg === null ? null : sodiumMg / 1000,
        },
        usdaKcal: known(row.kcal),
        refuse: refusePercent === null ? null : refusePercent / 100,
        source: {
          standing: 'published',
          cite: `USDA National Nutrient Database for Standard Reference, Release 28, NDB ${row.ndb} (${row.description})`,
        },
      },
    ];
  }),
);

/** The food of a key; undefined where the table has none. */
export const foodOf = (key: string): Food | undefined => FOODS.get(key);

/**
 * Ash of 100 g, g: what is left beside water, protein, fat and carbohydrate, since carbohydrate is reckoned by difference.
 * @returns never below 0: rounding of the printed figures can leave a few hundredths less
 */
export function ashPer100g({ water, protein, fat, carbohydrate }: Per100g): number {
  return Math.max(0, 100 - water - protein - fat - carbohydrate);
}
