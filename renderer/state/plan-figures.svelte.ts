/** What the host reckons of a plan; of a newer plan it is asked anew. */
import type { Host } from '../../app/api.ts';
import type { PlanFigures } from '../../solver/answers/plan-figures.ts';
import type { Plan } from '../../solver/kitchen/plan.ts';

export class PlanFiguresState {
  #known = $state.raw<{ readonly plan: Plan; readonly figures: PlanFigures } | null>(null);
  #of: Plan | null = null;
  readonly #host: Pick<Host, 'planFigures'>;

  constructor(host: Pick<Host, 'planFigures'>) {
    this.#host = host;
  }

  /** Null until they are known. Those of another plan are never given: its boxes may hold other allergens. */
  figuresOf(plan: Plan): PlanFigures | null {
    return this.#known?.plan === plan ? this.#known.figures : null;
  }

  /** Where the host cannot be reached the figures stay away; the rest of the face says so. */
  async reckon(plan: Plan): Promise<void> {
    if (this.#of === plan) return;
    this.#of = plan;
    const answer = await this.#host.planFigures(plan).catch(() => null);
    if (this.#of !== plan) return;
    this.#known = answer?.ok === true ? { plan, figures: answer.value } : null;
  }
}
