/**
 * How long food keeps, United States: rows of the storage-life open data set of the US Department of Agriculture, Food Safety and
 * Inspection Service, by item number, and of the cold food storage chart of the same government. Works of the United States
 * government are in the public domain. Freezer times are for quality; food kept at −18 °C stays safe.
 */
import type { RuleOf } from '../../kitchen/safety-rules.ts';

const CHART = 0;
const FRIDGE = 'fridge at or below 4 °C (40 °F), freezer at or below −18 °C (0 °F)';

/** @param item number in the data set, or the chart; days in the fridge and months in the freezer from and to; null: it does not freeze well, or no time is given */
function row(
  item: number,
  food: string,
  name: string,
  [least, most]: readonly [number, number],
  freezer: readonly [number, number] | null,
  broader?: string,
): RuleOf<'storage'> {
  return {
    kind: 'storage',
    id: `keeps-${food}`,
    food,
    name,
    ...(broader === undefined ? {} : { broader }),
    fridgeDays: { least, most },
    ...(freezer === null ? {} : { freezerMonths: { least: freezer[0], most: freezer[1] } }),
    source: {
      standing: 'published',
      cite:
        item === CHART
          ? `US government, FoodSafety.gov, Cold Food Storage Chart; ${FRIDGE}`
          : `USDA FSIS, storage-life open data set (data.gov), item ${item}; home refrigerator and freezer`,
      region: 'United States',
    },
    edition: 'undated copy',
  };
}

// prettier-ignore
export const STORAGE_LIFE_US: readonly RuleOf<'storage'>[] = [
  row(CHART, 'cooked-meat', 'Cooked meat or poultry leftovers', [3, 4], [2, 6], 'leftovers'),
  row(CHART, 'soup-or-stew', 'Soups and stews, vegetable or with meat', [3, 4], [2, 3], 'leftovers'),
  row(CHART, 'mixed-salad', 'Egg, chicken, ham, tuna or macaroni salads', [3, 4], null, 'leftovers'),
  row(CHART, 'raw-mince', 'Raw minced beef, pork, lamb, poultry', [1, 2], [3, 4]),
  row(CHART, 'raw-poultry-pieces', 'Raw chicken or turkey pieces', [1, 2], [9, 9]),
  row(CHART, 'raw-poultry-whole', 'Raw chicken or turkey, whole', [1, 2], [12, 12]),
  row(CHART, 'raw-meat-cuts', 'Raw beef, veal, lamb or pork steaks, chops, roasts', [3, 5], [4, 12]),
  row(CHART, 'raw-eggs', 'Raw eggs in shell', [21, 35], null),
  row(135, 'cooked-poultry', 'Cooked poultry dishes', [3, 4], [4, 6], 'leftovers'),
  row(140, 'poultry-in-gravy', 'Poultry pieces covered with gravy or broth', [3, 4], [1, 2], 'leftovers'),
  row(186, 'meat-in-gravy', 'Meats covered with gravy or broth', [3, 4], [6, 6], 'leftovers'),
  row(148, 'cooked-fish', 'Cooked fish, all', [3, 4], [1, 2], 'leftovers'),
  row(162, 'cooked-shellfish', 'Cooked shellfish, all', [3, 4], [1, 3], 'leftovers'),
  row(173, 'leftovers-with-meat', 'Leftovers with meat, fish, poultry or egg', [3, 4], [2, 3], 'leftovers'),
  row(174, 'leftovers', 'Leftovers without meat, fish, poultry or egg (cooked vegetables, rice, potatoes)', [3, 4], [1, 2]),
  row(177, 'cooked-pasta', 'Cooked pasta', [3, 5], [1, 2], 'leftovers'),
  row(178, 'cooked-rice', 'Cooked rice (US data set)', [4, 6], [6, 6], 'leftovers'),
  row(426, 'cooked-quinoa', 'Cooked quinoa', [6, 7], [6, 12], 'leftovers'),
  row(194, 'casserole', 'Casseroles', [3, 4], null, 'leftovers'),
  row(24, 'egg-dish', 'Egg dishes, baked', [3, 4], [2, 3], 'leftovers'),
  row(23, 'hard-boiled-eggs', 'Eggs, hard-boiled', [7, 7], null),
  row(211, 'quiche', 'Quiche, after opening or cooking', [3, 5], [2, 3], 'leftovers'),
  row(183, 'hummus', 'Hummus, traditional, no preservatives', [7, 7], null),
  row(33, 'yoghurt', 'Yogurt, from purchase', [7, 14], [1, 2]),
  row(353, 'pickles-opened', 'Pickles, after opening', [30, 90], null),
  row(416, 'tahini-opened', 'Tahini, after opening', [21, 21], null),
  row(168, 'tofu', 'Tofu, from purchase', [7, 7], [5, 5]),
  row(3, 'hard-cheese-opened', 'Cheese, hard (cheddar type), after opening', [21, 28], [6, 6]),
  row(484, 'broth', 'Broth, homemade', [3, 4], [2, 3], 'leftovers'),
  row(372, 'tinned-low-acid-opened', 'Canned low-acid food (beans, meat, fish, vegetables), after opening', [3, 4], null),
  row(373, 'tinned-high-acid-opened', 'Canned high-acid food (tomato, fruit, pickled), after opening', [5, 7], null),
  row(359, 'pasta-sauce-opened', 'Pasta sauce in jars, after opening', [4, 4], null),
  row(191, 'potato-salad', 'Potato salad', [3, 5], null, 'leftovers'),
  row(420, 'pasta-salad', 'Pasta salad', [3, 5], null, 'leftovers'),
  row(190, 'egg-salad', 'Egg salad', [3, 4], null, 'leftovers'),
  row(418, 'chicken-salad', 'Chicken salad', [3, 4], null, 'leftovers'),
  row(572, 'fresh-salsa', 'Salsa, fresh', [4, 7], null),
  row(624, 'vinaigrette', 'Vinaigrette, homemade', [14, 21], null),
  row(195, 'bread', 'Bread, rolls and flat breads', [14, 21], [3, 5]),
];
