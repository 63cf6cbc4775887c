/** What the host reckons of the plan that is shown; of a newer plan it is asked anew. */
import type { Host } from '../../app/api.ts';
import type { PlanFigures } from '../../solver/answers/plan-figures.ts';
import type { Plan } from '../../solver/kitchen/plan.ts';

export class PlanFiguresState {
  #figures = $state.raw<PlanFigures | null>(null);
  #of: Plan | null = null;
  readonly #host: Host;

  constructor(host: Host) {
    this.#host = host;
  }

  /** Null until they are known; those of the plan before stay until then. */
  get figures(): PlanFigures | null {
    return this.#figures;
  }

  /** Where the host cannot be reached the figures stay away; the rest of the face says so. */
  async reckon(plan: Plan): Promise<void> {
    if (this.#of === plan) return;
    this.#of = plan;
    const answer = await this.#host.planFigures(plan).catch(() => null);
    if (this.#of !== plan) return;
    this.#figures = answer?.ok === true ? answer.value : null;
  }
}
