/** Whether an ingredient names foods of the program's own table, and what it becomes can be reckoned. */
import { FOODS, foodOf } from '../../../solver/food/foods.ts';
import { cookedOf, yieldBetween } from '../../../solver/food/yields.ts';
import type { Ingredient } from '../../../solver/kitchen/component.ts';
import { pathText, valueText } from '../issue-faults.ts';
import { unknownId, type Finding } from './finding.ts';

type Keys = readonly (string | number)[];

const FOOD = 'a food of the table that comes with the program';
const LEAVE_OUT = 'leave the field out where the table does not have the food';

/** Findings of the food keys of an ingredient; empty: every one is there. */
export function foodFindings(ingredient: Ingredient, path: Keys): readonly Finding[] {
  const keys = [...FOODS.keys()];
  const unknown = [
    ...unknownId(ingredient.food, keys, FOOD, [...path, 'food']),
    ...unknownId(ingredient.becomes, keys, FOOD, [...path, 'becomes']),
  ].map((finding) => (finding.mend.startsWith('write') ? finding : { ...finding, mend: LEAVE_OUT }));
  return unknown.length > 0
    ? unknown
    : [...becomesFindings(ingredient, [...path, 'becomes']), ...boughtFindings(ingredient, [...path, 'asBought'])];
}

function becomesFindings({ food, becomes, yield: own }: Ingredient, path: Keys): readonly Finding[] {
  if (becomes === undefined || own !== undefined) return [];
  if (food !== undefined && yieldBetween(food, becomes) !== undefined) return [];
  const cooked = food === undefined ? [] : cookedOf(food);
  return [
    {
      path: pathText(path),
      found: valueText(becomes),
      wanted:
        cooked.length > 0
          ? `what ${food} becomes by a published yield: ${cooked.join(' or ')}`
          : 'a published yield from the food to what it becomes, and the table has none',
      mend: 'weigh it raw and done, and give the weight done of 1 g as "yield"; or leave "becomes" out',
    },
  ];
}

function boughtFindings({ food, asBought, becomes, yield: own }: Ingredient, path: Keys): readonly Finding[] {
  if (asBought !== true || food === undefined || foodOf(food)!.refuse !== null) return [];
  // A yield weighed on the food as bought has what is cut off within it.
  if (becomes !== undefined && (own !== undefined || yieldBetween(food, becomes)?.of === 'bought')) return [];
  return [
    {
      path: pathText(path),
      found: `${food} as bought`,
      wanted: 'a food whose waste the table has',
      mend: 'give the weight of what is eaten, and leave "asBought" out',
    },
  ];
}
