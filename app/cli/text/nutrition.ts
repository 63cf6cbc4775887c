/** Nutrients of the components and boxes of a session, in lines. */
import type { BoxNutrition } from '../../../solver/boxes/box-nutrition.ts';
import {
  countedShare,
  nutritionOfPortion,
  sharesOfIntake,
  type Amounts,
  type Nutrition,
} from '../../../solver/food/nutrition.ts';
import type { Component } from '../../../solver/kitchen/component.ts';
import type { Session } from '../../../solver/kitchen/session.ts';

/** Shown under every nutrient. */
export const NUTRITION_CAUTION =
  'Figures of foods: USDA National Nutrient Database for Standard Reference, Release 28; energy and reference intakes of an average adult: Regulation (EU) No 1169/2011. They are averages of such foods, for planning at home, and neither a label of food for sale nor advice to someone on a diet for their health. What is not counted comes on top.';

const COLUMNS: readonly (readonly [title: string, key: keyof Amounts, digits: number])[] = [
  ['kJ', 'energyKJ', 0],
  ['kcal', 'energyKcal', 0],
  ['fat g', 'fat', 1],
  ['saturates g', 'saturates', 1],
  ['carbohydrate g', 'carbohydrate', 1],
  ['sugars g', 'sugars', 1],
  ['fibre g', 'fibre', 1],
  ['protein g', 'protein', 1],
  ['salt g', 'salt', 2],
];
/** Wide enough for a name of a dish; a longer one pushes its figures to the right. */
const NAME = 30;

const heading = (name: string): string => [name.padEnd(NAME), ...COLUMNS.map(([title]) => title)].join('  ');
const figures = (name: string, amounts: Amounts): string =>
  [
    name.padEnd(NAME),
    ...COLUMNS.map(([title, key, digits]) => amounts[key].toFixed(digits).padStart(title.length)),
  ].join('  ');

/** What a sum leaves out, a line a reason, and how much of the weight it counts where that is not nearly all. */
function leftOut(nutrition: Nutrition): readonly string[] {
  const { notCounted, without } = nutrition;
  const counted = Math.floor(countedShare(nutrition) * 100);
  const reasons = [...new Set(notCounted.map(({ why }) => why))];
  const nutrients = [...new Set(without.map(({ nutrient }) => nutrient))];
  return [
    ...(counted < 95 ? [`   at least: ${counted} % of the weight is counted`] : []),
    ...reasons.map(
      (why) =>
        `   not counted: ${notCounted.flatMap((each) => (each.why === why ? [each.what] : [])).join(', ')} (${why})`,
    ),
    ...nutrients.map(
      (nutrient) =>
        `   ${nutrient} not known of ${without.flatMap((each) => (each.nutrient === nutrient ? [each.what] : [])).join(', ')}`,
    ),
  ];
}

function dayText(amounts: Amounts): string {
  const { energyKJ, fat, saturates, carbohydrate, sugars, protein, salt } = sharesOfIntake(amounts);
  const shares = { energy: energyKJ, fat, saturates, carbohydrate, sugars, protein, salt };
  const told = Object.entries(shares).map(([name, share]) => `${name} ${Math.round(share * 100)} %`);
  return `   of an adult's day: ${told.join(', ')}`;
}

function boxText({ eater, boxes, helpings, nutrition }: BoxNutrition): readonly string[] {
  const name = `${eater?.name ?? 'For anybody'}, ${boxes} ${boxes === 1 ? 'box' : 'boxes'}`;
  const parts = helpings.map(({ component, portions }) =>
    portions === 1 ? component.name : `${component.name} (${portions.toFixed(2)} of a portion)`,
  );
  return [
    figures(name, nutrition.amounts),
    `   ${parts.join(', ')}`,
    dayText(nutrition.amounts),
    ...leftOut(nutrition),
  ];
}

/** A portion of each dish, then a box of each eater. */
export function nutritionText(
  session: Session,
  components: readonly Component[],
  boxes: readonly BoxNutrition[],
): string {
  return [
    session.name,
    '',
    heading('One portion'),
    ...components.flatMap((component) => {
      const nutrition = nutritionOfPortion(component);
      return [figures(component.name, nutrition.amounts), ...leftOut(nutrition)];
    }),
    ...(boxes.length === 0 ? [] : ['', heading('One box')]),
    ...boxes.flatMap(boxText),
    '',
    NUTRITION_CAUTION,
  ].join('\n');
}
