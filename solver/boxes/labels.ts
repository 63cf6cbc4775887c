/** Labels for the boxes of a plan: what, for whom, cooked on, use by, reheated how, allergens stressed, weight. */
import { EU_GROUPS, groupOf, isCereal, usOf, type UsAllergen } from '../food/allergens.ts';
import { countedShare } from '../food/nutrition.ts';
import type { Plan } from '../kitchen/plan.ts';
import { GLUTEN_CEREALS, durationMinutes, type AllergenMark } from '../kitchen/values.ts';
import { boxContents, type BoxContents, type Share } from './box-contents.ts';
import { boxNutrition, type BoxNutrition } from './box-nutrition.ts';
import { dayAfter, earlier } from './days.ts';

export interface AllergenList {
  /** By the groups of Regulation (EU) No 1169/2011, the cereals of gluten named where they are known. */
  readonly eu: readonly string[];
  /** By the nine of the United States. */
  readonly us: readonly UsAllergen[];
}

export interface BoxLabel {
  readonly eater: { readonly id: string; readonly name: string } | null;
  /** Number of the box among the eater's, from 1, and how many those are. */
  readonly number: number;
  readonly of: number;
  readonly dishes: readonly { readonly component: string; readonly name: string; readonly massG: number | null }[];
  /** g; null: a recipe does not say. */
  readonly massG: number | null;
  /** By the factors of the European Union, whole kJ and kcal, of the share of the weight that is counted; null: of nothing. */
  readonly energy: { readonly kJ: number; readonly kcal: number; readonly countedShare: number } | null;
  readonly contains: AllergenList;
  readonly mayHaveMet: AllergenList;
  /** What the eater avoids and the box is kept free of. */
  readonly keptFree: readonly AllergenMark[];
  /** What the eater avoids and the box holds or may have met: it must not be given to them. */
  readonly notFor: readonly AllergenMark[];
  /** Day on which the first of it was cooked, `YYYY-MM-DD`. */
  readonly cookedOn: string;
  /** Last day in the fridge, by the part that keeps the shortest. */
  readonly useBy: string;
  /** Last day in the freezer; null: some part is not for freezing. */
  readonly frozenUseBy: string | null;
  readonly reheat: string;
  /** Place of the eater's boxes in the order of filling, from 1; hands and spoon are washed first. */
  readonly filled: number;
  readonly washBefore: boolean;
}

/** Shown with every label. */
export const LABEL_CAUTION =
  'Allergen handling in a home kitchen is no guarantee for someone with a severe allergy: what makers add and leave on an ingredient is on its packet alone. Local rules come first.';

/**
 * How boxes are heated again.
 * @source Food Standards Agency, United Kingdom: reheat once only, to 70 °C for 2 minutes or steaming hot at 75 °C (read in secondary
 *   text); United States Department of Agriculture, Food Safety and Inspection Service: leftovers to 165 °F (74 °C)
 */
export const REHEAT =
  'If eaten hot: heat once only, until steaming hot all through, 75 °C in the middle. A probe thermometer decides.';

/**
 * A label for each box of a plan, in the order of filling.
 *
 * @param dayOf day that the wall shows at a minute from the start, `YYYY-MM-DD`
 */
export function boxLabels(plan: Plan, dayOf: (minute: number) => string): readonly BoxLabel[] {
  const nutrition = boxNutrition(plan.session, plan.components);
  return boxContents(plan).flatMap((contents, index) => {
    const own = nutrition.find(({ eater }) => eater?.id === contents.eater?.id);
    const label = labelOf(contents, index + 1, dayOf, energyOn(own));
    return Array.from({ length: contents.boxes }, (_, box): BoxLabel => ({ ...label, number: box + 1 }));
  });
}

function energyOn(box: BoxNutrition | undefined): BoxLabel['energy'] {
  const counted = box === undefined ? 0 : countedShare(box.nutrition);
  if (box === undefined || counted === 0) return null;
  const { energyKJ, energyKcal } = box.nutrition.amounts;
  return { kJ: Math.round(energyKJ), kcal: Math.round(energyKcal), countedShare: counted };
}

function labelOf(
  contents: BoxContents,
  filled: number,
  dayOf: (minute: number) => string,
  energy: BoxLabel['energy'],
): BoxLabel {
  const { eater, shares, avoids, contains, mayHaveMet, washBefore, boxes } = contents;
  const wrong = [...avoids].filter((mark) => contains.has(mark) || mayHaveMet.has(mark));
  const days = shares.map(({ readyMinute }) => dayOf(readyMinute));
  const masses = shares.map(({ massG }) => massG);
  const known = masses.filter((mass) => mass !== null);
  return {
    eater,
    number: 1,
    of: boxes,
    dishes: shares.map(({ component: { id, name }, massG }) => ({ component: id, name, massG })),
    massG: known.length < masses.length ? null : known.reduce((sum, mass) => sum + mass, 0),
    energy,
    contains: listOf(contains),
    mayHaveMet: listOf(mayHaveMet),
    keptFree: [...avoids].filter((mark) => !wrong.includes(mark)),
    notFor: wrong,
    cookedOn: days.length === 0 ? dayOf(0) : days.reduce(earlier),
    useBy: lastDay(shares, dayOf, ({ component }) => component.keeps.fridge) ?? dayOf(0),
    frozenUseBy: lastDay(shares, dayOf, ({ component }) => component.keeps.freezer),
    reheat: REHEAT,
    filled,
    washBefore,
  };
}

/** The last day of the part that keeps the shortest, counted from the day on which each was cooked; null: one does not keep so. */
function lastDay(
  shares: readonly Share[],
  dayOf: (minute: number) => string,
  keeps: (share: Share) => string | undefined,
): string | null {
  const days = shares.map((share) => {
    const life = keeps(share);
    return life === undefined ? null : dayAfter(dayOf(share.readyMinute), Math.floor(durationMinutes(life) / 1440));
  });
  return days.length === 0 || days.includes(null) ? null : (days as readonly string[]).reduce(earlier);
}

/** Allergens as a label says them, in the order of the law. */
export function listOf(marks: ReadonlySet<AllergenMark>): AllergenList {
  const groups = new Set([...marks].map(groupOf));
  const cereals = GLUTEN_CEREALS.filter((cereal) => marks.has(cereal));
  const which = cereals.length < GLUTEN_CEREALS.length && cereals.length > 0 ? ` (${cereals.join(', ')})` : '';
  return {
    eu: EU_GROUPS.filter(({ id }) => groups.has(id)).map(({ id, name }) =>
      id === 'gluten' ? `${name}${which}` : name,
    ),
    us: [...marks].flatMap((mark) => usOf(mark) ?? []).sort(),
  };
}

/** A mark as plain words. */
export const markName = (mark: AllergenMark): string =>
  isCereal(mark) || mark === 'gluten' ? mark : EU_GROUPS.find(({ id }) => id === mark)!.name;
