/**
 * Allergens of the foods of the table, by key. A food that is not here has none by its nature; what a maker adds or its factory
 * may leave on it is on the packet alone.
 *
 * @source what each food is made of: its description in the USDA National Nutrient Database for Standard Reference, Release 28;
 *   which groups count: Regulation (EU) No 1169/2011, Annex II. That sauces and breads are made as is usual: common practice
 */
import type { Allergen, GlutenCereal } from '../../kitchen/values.ts';

export interface FoodAllergens {
  readonly allergens: readonly Allergen[];
  /** Of the gluten; absent: none, or any. */
  readonly cereals?: readonly GlutenCereal[];
}

const wheat: FoodAllergens = { allergens: ['gluten'], cereals: ['wheat'] };
const barley: FoodAllergens = { allergens: ['gluten'], cereals: ['barley'] };
const oats: FoodAllergens = { allergens: ['gluten'], cereals: ['oats'] };
const of = (...allergens: readonly Allergen[]): FoodAllergens => ({ allergens });

export const FOOD_ALLERGENS: ReadonlyMap<string, FoodAllergens> = new Map([
  ['salmon-farmed-raw', of('fish')],
  ['salmon-farmed-cooked', of('fish')],
  ['cod-raw', of('fish')],
  ['cod-cooked', of('fish')],
  ['tuna-canned-water', of('fish')],
  ['egg-raw', of('eggs')],
  ['egg-hard-boiled', of('eggs')],
  ['tofu-firm-casulfate', of('soybeans')],
  ['tofu-firm-nigari', of('soybeans')],
  ['pasta-dry', wheat],
  ['pasta-cooked', wheat],
  ['pasta-wholewheat-dry', wheat],
  ['pasta-wholewheat-cooked', wheat],
  ['egg-noodles-dry', { allergens: ['gluten', 'eggs'], cereals: ['wheat'] }],
  ['egg-noodles-cooked', { allergens: ['gluten', 'eggs'], cereals: ['wheat'] }],
  ['couscous-dry', wheat],
  ['couscous-cooked', wheat],
  ['bulgur-dry', wheat],
  ['bulgur-cooked', wheat],
  ['barley-pearled-dry', barley],
  ['barley-pearled-cooked', barley],
  ['oats-rolled-dry', oats],
  ['flour-white', wheat],
  ['bread-white', wheat],
  ['bread-wholewheat', wheat],
  ['pita-white', wheat],
  ['tortilla-flour', wheat],
  ['celery-raw', of('celery')],
  ['yogurt-plain-whole', of('milk')],
  ['yogurt-greek-whole', of('milk')],
  ['yogurt-greek-nonfat', of('milk')],
  ['milk-whole', of('milk')],
  ['butter-salted', of('milk')],
  ['cheese-feta', of('milk')],
  ['cheese-cheddar', of('milk')],
  ['cheese-mozzarella', of('milk')],
  ['cheese-parmesan', of('milk')],
  ['tahini', of('sesame')],
  ['hummus-commercial', of('sesame')],
  ['peanut-butter', of('peanuts')],
  ['almonds', of('nuts')],
  ['walnuts', of('nuts')],
  ['cashews', of('nuts')],
  ['sesame-seeds', of('sesame')],
  // Brewed of soya and wheat.
  ['soy-sauce', { allergens: ['soybeans', 'gluten'], cereals: ['wheat'] }],
  ['mustard-yellow', of('mustard')],
]);
