/** The labels of a plan's boxes, in lines. */
import { LABEL_CAUTION, markName, type AllergenList, type BoxLabel } from '../../../solver/boxes/labels.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';

/** Of the United States names those that the others do not say already. */
function listText({ eu, us }: AllergenList): string {
  if (eu.length === 0) return 'none of the fourteen allergens';
  const extra = us.length === 0 ? '' : ` (US list: ${us.map((each) => each.replace('-', ' ')).join(', ')})`;
  return `${eu.join(', ')}${extra}`;
}

/** Energy, and how much of the weight it is of where that is not nearly all. */
function energyText(energy: BoxLabel['energy']): readonly string[] {
  if (energy === null) return [];
  const { kJ, kcal, countedShare } = energy;
  if (countedShare >= 0.95) return [`   ${kJ} kJ / ${kcal} kcal`];
  return [`   at least ${kJ} kJ / ${kcal} kcal: ${Math.floor(countedShare * 100)} % of the weight is counted`];
}

/** Labels that are alike are told once. */
export function labelsText(plan: Plan, labels: readonly BoxLabel[]): string {
  if (labels.length === 0) return `${plan.name}: its session fills no boxes`;
  const firsts = labels.filter(({ number }) => number === 1);
  const told = firsts.flatMap((label) => [
    '',
    `${label.filled}. ${label.eater?.name ?? 'For anybody'}, ${label.of} ${label.of === 1 ? 'box' : 'boxes'}${label.washBefore ? ' (hands and spoon washed first)' : ''}`,
    ...label.dishes.map(({ name, massG }) => `   ${name}${massG === null ? '' : `, ${massG} g`}`),
    ...(label.massG === null ? [] : [`   ${label.massG} g in all`]),
    ...energyText(label.energy),
    `   CONTAINS ${listText(label.contains)}`,
    ...(label.mayHaveMet.eu.length === 0 ? [] : [`   MAY HAVE MET ${listText(label.mayHaveMet)}`]),
    ...(label.keptFree.length === 0 ? [] : [`   kept free of ${label.keptFree.map(markName).join(', ')}`]),
    ...(label.notFor.length === 0
      ? []
      : [`   NOT FOR ${label.eater!.name}, who avoids ${label.notFor.map(markName).join(', ')}`]),
    `   cooked ${label.cookedOn}, use by ${label.useBy}${label.frozenUseBy === null ? '' : `, from the freezer by ${label.frozenUseBy}`}`,
  ]);
  return [
    `${plan.name}: ${labels.length} boxes, in the order of filling`,
    ...told,
    '',
    firsts[0]!.reheat,
    LABEL_CAUTION,
  ].join('\n');
}
