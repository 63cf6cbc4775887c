/** What can be reckoned of a finished plan: what it takes of energy, water and money, and what is in its boxes. */
import { accountOf, type PlanAccount } from '../accounts/plan-account.ts';
import { boxNutrition, type BoxNutrition } from '../boxes/box-nutrition.ts';
import { boxLabels, LABEL_CAUTION, type BoxLabel } from '../boxes/labels.ts';
import { energyWorking } from '../food/nutrition-workings.ts';
import { sharesOfIntake } from '../food/nutrition.ts';
import { stepFigures, type StepFigure } from './step-figures.ts';
import { vegetablePortions } from '../food/vegetable-portions.ts';
import type { Plan } from '../kitchen/plan.ts';
import type { Working } from '../working.ts';

/** Boxes that are alike. */
export interface BoxFigures {
  /** Of the first of them. */
  readonly label: BoxLabel;
  readonly nutrition: BoxNutrition['nutrition'];
  /** Of one box, as shares of the reference intakes of an adult's day, 0–1 and above. */
  readonly intake: ReturnType<typeof sharesOfIntake>;
  /** Portions of fruit and vegetables in one box. */
  readonly vegetables: Working;
  /** Energy of each dish in it as the recipe makes it. */
  readonly energy: readonly { readonly name: string; readonly working: Working }[];
}

export interface PlanFigures {
  readonly account: PlanAccount;
  /** In the order of filling; empty where the session packs none. */
  readonly boxes: readonly BoxFigures[];
  /** Shown with every label. */
  readonly labelCaution: string;
  /** Numbers behind the steps, by id of the planned step. */
  readonly steps: Readonly<Record<string, readonly StepFigure[]>>;
}

/**
 * Reckons a plan from its own frozen documents.
 *
 * @param plan a valid plan
 * @param dayOf day that the wall shows at a minute from the start, `YYYY-MM-DD`
 */
export function planFigures(plan: Plan, dayOf: (minute: number) => string): PlanFigures {
  const nutrition = boxNutrition(plan.session, plan.components);
  const boxes = boxLabels(plan, dayOf)
    .filter(({ number }) => number === 1)
    .flatMap((label): readonly BoxFigures[] => {
      const held = nutrition.find(({ eater }) => eater?.id === label.eater?.id);
      if (held === undefined) return [];
      return [
        {
          label,
          nutrition: held.nutrition,
          vegetables: vegetablePortions(held.helpings),
          intake: sharesOfIntake(held.nutrition.amounts),
          energy: held.helpings.map(({ component }) => ({ name: component.name, working: energyWorking(component) })),
        },
      ];
    });
  return { account: accountOf(plan), boxes, labelCaution: LABEL_CAUTION, steps: stepFigures(plan) };
}
