/** `afterheat nutrition SESSION` */
import { boxNutrition } from '../../../solver/boxes/box-nutrition.ts';
import { energyWorking } from '../../../solver/food/nutrition-workings.ts';
import { nutritionOfPortion, nutritionPer100g, sharesOfIntake } from '../../../solver/food/nutrition.ts';
import { gatherSession } from '../../documents/gather-session.ts';
import type { Options } from '../arguments.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { NUTRITION_CAUTION, nutritionText } from '../text/nutrition.ts';
import { tellNoPlan } from './no-plan.ts';
import { openSession } from './open-session.ts';

/** Prints what a portion of each dish and a box of each eater hold; with `--json` also by 100 g, and how energy comes about. */
export async function nutritionVerb(subject: string, options: Options, terminal: Terminal): Promise<ExitCode> {
  const opened = await openSession(subject, options, terminal.folder);
  if (!opened.ok) return tellNoPlan({ kind: 'refused', faults: opened.faults }, options.json, terminal);
  const gathered = await gatherSession(opened.value.library, opened.value.requestFor());
  if (!gathered.ok) return tellNoPlan({ kind: 'refused', faults: gathered.faults }, options.json, terminal);
  const { session, components } = gathered.value;
  const boxes = boxNutrition(session, components);
  if (!options.json) {
    terminal.out(nutritionText(session, components, boxes));
    return 0;
  }
  const told = {
    components: components.map((component) => ({
      component: component.id,
      perPortion: nutritionOfPortion(component),
      per100g: nutritionPer100g(component)?.amounts ?? null,
      energy: energyWorking(component),
    })),
    boxes: boxes.map(({ eater, boxes: count, helpings, nutrition }) => ({
      eater: eater?.id ?? null,
      boxes: count,
      portions: Object.fromEntries(helpings.map(({ component, portions }) => [component.id, portions])),
      ...nutrition,
      ofReferenceIntake: sharesOfIntake(nutrition.amounts),
    })),
    caution: NUTRITION_CAUTION,
  };
  terminal.out(JSON.stringify(told, null, 2));
  return 0;
}
