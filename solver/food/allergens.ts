/**
 * Allergens as two laws list them, what an ingredient has of them, and what an eater avoids. What a label declares by law is the
 * ingredient's own; what a food may have met in the kitchen is told apart from it (`solver/boxes/`).
 */
import type { Ingredient } from '../kitchen/component.ts';
import {
  GLUTEN_CEREALS,
  type Allergen,
  type AllergenMark,
  type Avoidable,
  type GlutenCereal,
} from '../kitchen/values.ts';
import { FOOD_ALLERGENS } from './data/food-allergens.ts';
import type { Source } from '../source.ts';

export interface EuGroup {
  readonly id: Allergen;
  /** As a label says it. */
  readonly name: string;
  /** The foods that the Annex names one by one; absent: all of the kind. */
  readonly namely?: readonly string[];
  /** What the Annex excepts: such an ingredient is written without the group. */
  readonly except: readonly string[];
}

/** Source of `EU_GROUPS`, of which `name` is plain English of our own. */
export const EU_SOURCE: Source = {
  standing: 'published',
  cite: 'Regulation (EU) No 1169/2011 on the provision of food information to consumers, Annex II',
  region: 'European Union',
};

const DISTILLATES = 'for alcoholic distillates including ethyl alcohol of agricultural origin';

/** The fourteen groups of the Annex, in its order, with its exceptions. */
export const EU_GROUPS: readonly EuGroup[] = [
  {
    id: 'gluten',
    name: 'cereals containing gluten',
    namely: ['wheat (such as spelt and khorasan wheat)', 'rye', 'barley', 'oats', 'their hybridised strains'],
    except: [
      'wheat-based glucose syrups including dextrose',
      'wheat-based maltodextrins',
      'glucose syrups based on barley',
      `cereals used ${DISTILLATES}`,
    ],
  },
  { id: 'crustaceans', name: 'crustaceans', except: [] },
  { id: 'eggs', name: 'eggs', except: [] },
  {
    id: 'fish',
    name: 'fish',
    except: [
      'fish gelatine used as carrier for vitamin or carotenoid preparations',
      'fish gelatine or isinglass used as fining agent in beer and wine',
    ],
  },
  { id: 'peanuts', name: 'peanuts', except: [] },
  {
    id: 'soybeans',
    name: 'soya beans',
    except: [
      'fully refined soybean oil and fat',
      'natural mixed tocopherols (E306) and natural D-alpha tocopherol, its acetate and succinate, from soybean sources',
      'phytosterols and phytosterol esters of vegetable oils from soybean sources',
      'plant stanol ester of vegetable oil sterols from soybean sources',
    ],
  },
  { id: 'milk', name: 'milk', except: [`whey used ${DISTILLATES}`, 'lactitol'] },
  {
    id: 'nuts',
    name: 'nuts',
    namely: [
      'almonds',
      'hazelnuts',
      'walnuts',
      'cashews',
      'pecan nuts',
      'Brazil nuts',
      'pistachio nuts',
      'macadamia or Queensland nuts',
    ],
    except: [`nuts used ${DISTILLATES}`],
  },
  { id: 'celery', name: 'celery', except: [] },
  { id: 'mustard', name: 'mustard', except: [] },
  { id: 'sesame', name: 'sesame', except: [] },
  { id: 'sulphites', name: 'sulphur dioxide and sulphites', except: [] },
  { id: 'lupin', name: 'lupin', except: [] },
  { id: 'molluscs', name: 'molluscs', except: [] },
];

/** Sulphites count above this much in the food as eaten, mg per kg or per litre, as total SO2. Same Annex, point 12. */
export const SULPHITES_ABOVE_MG = 10;

export const US_ALLERGENS = [
  'milk',
  'eggs',
  'fish',
  'crustacean-shellfish',
  'tree-nuts',
  'peanuts',
  'wheat',
  'soybeans',
  'sesame',
] as const;
export type UsAllergen = (typeof US_ALLERGENS)[number];

/** Source of `US_ALLERGENS`. */
export const US_SOURCE: Source = {
  standing: 'secondary',
  cite: 'Federal Food, Drug, and Cosmetic Act, section 201(qq) (21 U.S.C. 321(qq)): eight by the Food Allergen Labeling and Consumer Protection Act of 2004, sesame by the FASTER Act of 2021, in force from 1 January 2023',
  region: 'United States',
};

/**
 * The mark that the United States name stands for. Wheat is one cereal of the Union's first group; shellfish there are
 * crustaceans alone; celery, mustard, sulphites, lupin, molluscs, and rye, barley and oats are not on that list.
 */
export function markOfUs(allergen: UsAllergen): AllergenMark {
  switch (allergen) {
    case 'crustacean-shellfish':
      return 'crustaceans';
    case 'tree-nuts':
      return 'nuts';
    default:
      return allergen;
  }
}

/** The one of the nine that a mark is declared as; null: it is not on the list. Gluten alone says nothing of wheat: its cereals do. */
export function usOf(mark: AllergenMark): UsAllergen | null {
  return US_ALLERGENS.find((allergen) => markOfUs(allergen) === mark) ?? null;
}

/** The mark an eater avoids by any of the names that a session may use. */
export function markAvoided(name: Avoidable): AllergenMark {
  return name === 'tree-nuts' || name === 'crustacean-shellfish' ? markOfUs(name) : name;
}

/** The group of the Annex that a mark belongs to. */
export function groupOf(mark: AllergenMark): Allergen {
  return isCereal(mark) ? 'gluten' : mark;
}

const CEREALS: ReadonlySet<string> = new Set(GLUTEN_CEREALS);
export const isCereal = (mark: string): mark is GlutenCereal => CEREALS.has(mark);

/** As `Ingredient`, as far as allergens go. */
type Allergenic = Pick<Ingredient, 'allergens' | 'cereals' | 'food' | 'becomes'>;

/**
 * Groups that the foods an ingredient names have, by the program's own table.
 *
 * @returns those of its `food` and of what it `becomes`; empty where it names none or the table knows of none
 */
export function allergensOfFood({ food, becomes }: Pick<Allergenic, 'food' | 'becomes'>): ReadonlySet<Allergen> {
  return new Set([food, becomes].flatMap((key) => FOOD_ALLERGENS.get(key ?? '')?.allergens ?? []));
}

/** Groups of the Annex in an ingredient: those written down, and those of its food. */
export function allergensOfIngredient(ingredient: Allergenic): ReadonlySet<Allergen> {
  return new Set([...ingredient.allergens, ...allergensOfFood(ingredient)]);
}

/** Cereals with gluten that the foods an ingredient names are of, by the same table. */
export function cerealsOfFood({ food, becomes }: Pick<Allergenic, 'food' | 'becomes'>): readonly GlutenCereal[] {
  return [food, becomes].flatMap((key) => FOOD_ALLERGENS.get(key ?? '')?.cereals ?? []);
}

/** Cereals that an ingredient's gluten is of: those written or of its food; where neither says, any may be. */
function cerealsOf(ingredient: Allergenic): readonly GlutenCereal[] {
  if (!allergensOfIngredient(ingredient).has('gluten')) return [];
  const known = [...(ingredient.cereals ?? []), ...cerealsOfFood(ingredient)];
  return known.length > 0 ? known : GLUTEN_CEREALS;
}

const marksKnown = new WeakMap<Allergenic, ReadonlySet<AllergenMark>>();

/**
 * All that soil tells apart of an ingredient's allergens: the groups, and the cereals of its gluten. Asked for again and again, so
 * remembered as long as the ingredient is, which does not change.
 */
export function marksOfIngredient(ingredient: Allergenic): ReadonlySet<AllergenMark> {
  let marks = marksKnown.get(ingredient);
  if (marks === undefined) {
    marks = new Set<AllergenMark>([...allergensOfIngredient(ingredient), ...cerealsOf(ingredient)]);
    marksKnown.set(ingredient, marks);
  }
  return marks;
}
