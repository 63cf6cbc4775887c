/**
 * What a component and a box hold: nutrients and energy as a label in the European Union declares them, from the table of foods.
 *
 * Of each ingredient the row counts that `weighIngredient` chooses: what it becomes, or the food raw. What has no row, or no weight, is
 * not counted and is named; a sum is then "at least". The table's protein is USDA's, mostly but not always nitrogen × 6.25.
 */
import type { Component, Ingredient } from '../kitchen/component.ts';
import type { Per100g } from './foods.ts';
import { DECLARED, ENERGY_OF, REFERENCE_INTAKE, SALT_PER_SODIUM, type Declared } from './reference-intakes.ts';
import { weighIngredient } from './weigh.ts';

/** Energy in kJ and kcal, nutrients in g. */
export type Amounts = Readonly<Record<Declared | 'energyKJ' | 'energyKcal', number>>;

export interface NotCounted {
  /** Name of the ingredient; of a box, with its component. */
  readonly what: string;
  readonly why: string;
}

export interface Nutrition {
  readonly amounts: Amounts;
  /** Weight as given of the ingredients that are counted, and of those that are not as far as they have one (a mL as 1 g); g. */
  readonly countedG: number;
  readonly leftOutG: number;
  /** Ingredients that are left out of all sums, and why. */
  readonly notCounted: readonly NotCounted[];
  /** Ingredients whose row has no figure of a nutrient, which is then counted as none of it. */
  readonly without: readonly { readonly nutrient: Declared; readonly what: string }[];
}

const NOTHING: Amounts = {
  ...{ energyKJ: 0, energyKcal: 0, fat: 0, saturates: 0, carbohydrate: 0, sugars: 0, fibre: 0, protein: 0, salt: 0 },
};
const KEYS = Object.keys(NOTHING) as readonly (keyof Amounts)[];
const map = (of: (key: keyof Amounts) => number): Amounts =>
  Object.fromEntries(KEYS.map((key) => [key, of(key)])) as unknown as Amounts;

/** Amounts times a number. */
export const times = (amounts: Amounts, factor: number): Amounts => map((key) => amounts[key] * factor);
const sum = (all: readonly Amounts[]): Amounts => map((key) => all.reduce((total, each) => total + each[key], 0));

/** Declared nutrients of 100 g; null where the row has no figure. Without fibre, carbohydrate is all that there is by difference. */
export function declaredPer100g(row: Per100g): Readonly<Record<Declared, number | null>> {
  return {
    fat: row.fat,
    saturates: row.saturates,
    carbohydrate: Math.max(0, row.carbohydrate - (row.fibre ?? 0)),
    sugars: row.sugars,
    fibre: row.fibre,
    protein: row.protein,
    salt: row.sodium === null ? null : row.sodium * SALT_PER_SODIUM,
  };
}

/** Energy of nutrients by the factors of the European Union. */
export function energyOf(grams: Pick<Amounts, 'carbohydrate' | 'protein' | 'fat' | 'fibre'>): {
  readonly energyKJ: number;
  readonly energyKcal: number;
} {
  const by = (unit: 'kJ' | 'kcal'): number =>
    (['carbohydrate', 'protein', 'fat', 'fibre'] as const).reduce(
      (total, part) => total + grams[part] * ENERGY_OF[part][unit],
      0,
    );
  return { energyKJ: by('kJ'), energyKcal: by('kcal') };
}

/** Water brought to the dish holds nothing that is declared. */
export const isWater = (ingredient: Ingredient): boolean => ingredient.group === 'water';

function ofIngredient(ingredient: Ingredient): Nutrition {
  const leftOutG = ingredient.massG ?? ingredient.volumeMl ?? 0;
  if (isWater(ingredient)) return { amounts: NOTHING, countedG: 0, leftOutG: 0, notCounted: [], without: [] };
  const weighed = weighIngredient(ingredient);
  const what = ingredient.name;
  if (!weighed.counted)
    return { amounts: NOTHING, countedG: 0, leftOutG, notCounted: [{ what, why: weighed.why }], without: [] };
  const row = declaredPer100g(weighed.food.per100g);
  const grams = Object.fromEntries(
    DECLARED.map((nutrient) => [nutrient, ((row[nutrient] ?? 0) * weighed.grams) / 100]),
  ) as Record<Declared, number>;
  return {
    amounts: { ...grams, ...energyOf(grams) },
    countedG: weighed.givenGrams,
    leftOutG: 0,
    notCounted: [],
    without: DECLARED.filter((nutrient) => row[nutrient] === null).map((nutrient) => ({ nutrient, what })),
  };
}

const scaled = (nutrition: Nutrition, factor: number): Nutrition => ({
  ...nutrition,
  amounts: times(nutrition.amounts, factor),
  countedG: nutrition.countedG * factor,
  leftOutG: nutrition.leftOutG * factor,
});

/** Share of the weight that is counted, 0–1; 0 where nothing has a weight. */
export const countedShare = ({ countedG, leftOutG }: Nutrition): number =>
  countedG === 0 ? 0 : countedG / (countedG + leftOutG);

/** What a component holds in all, as its document makes it. */
export function nutritionOf(component: Pick<Component, 'ingredients'>): Nutrition {
  return together(component.ingredients.map(ofIngredient));
}

/** Several together; names of what is not counted stay as they are. */
export function together(all: readonly Nutrition[]): Nutrition {
  return {
    amounts: sum(all.map(({ amounts }) => amounts)),
    countedG: all.reduce((total, { countedG }) => total + countedG, 0),
    leftOutG: all.reduce((total, { leftOutG }) => total + leftOutG, 0),
    notCounted: all.flatMap(({ notCounted }) => notCounted),
    without: all.flatMap(({ without }) => without),
  };
}

/** One portion of a component. */
export function nutritionOfPortion(component: Pick<Component, 'ingredients' | 'makes'>): Nutrition {
  return scaled(nutritionOf(component), 1 / component.makes.portions);
}

/** 100 g of a component as it is done; null where its document gives no weight done. */
export function nutritionPer100g(component: Pick<Component, 'ingredients' | 'makes'>): Nutrition | null {
  const { massG } = component.makes;
  if (massG === 0) return null;
  return scaled(nutritionOf(component), 100 / massG);
}

/** Of a component so many portions. */
export interface Helping {
  readonly component: Pick<Component, 'name' | 'ingredients' | 'makes'>;
  readonly portions: number;
}

/** Helpings of several components together; what is not counted is named with its component. */
export function nutritionOfHelpings(helpings: readonly Helping[]): Nutrition {
  return together(
    helpings.map(({ component, portions }) => {
      const helping = scaled(nutritionOfPortion(component), portions);
      const within = <T extends { readonly what: string }>(each: T): T => ({
        ...each,
        what: `${each.what} (${component.name})`,
      });
      return { ...helping, notCounted: helping.notCounted.map(within), without: helping.without.map(within) };
    }),
  );
}

/** Shares of the reference intakes of an average adult, 1 for all of a day. */
export function sharesOfIntake(amounts: Amounts): Readonly<Record<keyof typeof REFERENCE_INTAKE, number>> {
  const keys = Object.keys(REFERENCE_INTAKE) as readonly (keyof typeof REFERENCE_INTAKE)[];
  return Object.fromEntries(keys.map((key) => [key, amounts[key] / REFERENCE_INTAKE[key]])) as Record<
    keyof typeof REFERENCE_INTAKE,
    number
  >;
}
