/** What a step is called by its id. */
import { wholeId, type Plan } from '../../../solver/kitchen/plan.ts';

/** `roast (Roots)`, `wash board`; the id itself where the plan has no such step. @param id of the step as a whole, without its piece */
export function stepName(plan: Plan, id: string): string {
  const step = plan.steps.find((each) => wholeId(each) === id);
  const component = plan.components.find((each) => each.id === step?.component)?.name;
  return step === undefined ? id : component === undefined ? step.name : `${step.name} (${component})`;
}
