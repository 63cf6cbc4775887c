/** One request and how far it is: picks, progress with the bound closing in, the result, and how to stop. */
import type { Host, PlanProgress, PlanRequest, PlanResult } from '../../app/api.ts';
import type { HowSure } from '../../solver/answers/how-sure.ts';
import type { Plan } from '../../solver/kitchen/plan.ts';

export type Planning =
  | { readonly kind: 'idle' }
  | { readonly kind: 'running'; readonly progress: PlanProgress | null; readonly stopping: boolean }
  | { readonly kind: 'done'; readonly result: PlanResult }
  /** The host itself could not be reached. */
  | { readonly kind: 'broken'; readonly words: string };

export class PlanningState {
  #request = $state.raw<PlanRequest | null>(null);
  #planning = $state.raw<Planning>({ kind: 'idle' });
  /** Last plan that passed the checker; stays in sight while the next is made. */
  #plan = $state.raw<Plan | null>(null);
  #job: { readonly stop: () => void } | null = null;
  readonly #host: Host;

  constructor(host: Host) {
    this.#host = host;
  }

  get request(): PlanRequest | null {
    return this.#request;
  }
  get planning(): Planning {
    return this.#planning;
  }
  get plan(): Plan | null {
    return this.#plan;
  }

  /** How sure the plan in sight is; null while that is not known. */
  get sure(): HowSure | null {
    const planning = this.#planning;
    return planning.kind === 'done' && planning.result.kind === 'planned' ? (planning.result.sure ?? null) : null;
  }

  /** The plan in sight was made for another request, and this one is not there yet. */
  get stale(): boolean {
    return this.#plan !== null && this.#planning.kind !== 'done' && this.#planning.kind !== 'idle';
  }

  /** Shows a plan that is there already. */
  showPlan(plan: Plan, request: PlanRequest): void {
    this.#leave();
    this.#request = request;
    this.#plan = plan;
    this.#planning = { kind: 'idle' };
  }

  start(request: PlanRequest): void {
    this.#leave();
    this.#request = request;
    // A plan of another session would only mislead while this one is made.
    if (this.#plan?.session.id !== request.session) this.#plan = null;
    this.#planning = { kind: 'running', progress: null, stopping: false };
    const isMine = (): boolean => this.#request === request;
    try {
      this.#job = this.#host.startPlan(request, {
        onProgress: (progress) => {
          if (isMine() && this.#planning.kind === 'running') this.#planning = { ...this.#planning, progress };
        },
        onDone: (result) => {
          if (!isMine()) return;
          this.#job = null;
          this.#planning = { kind: 'done', result };
          if (result.kind === 'planned') this.#plan = result.plan;
          else this.#plan = null;
        },
      });
    } catch (error) {
      this.#planning = { kind: 'broken', words: error instanceof Error ? error.message : String(error) };
    }
  }

  /** Ends with the best plan so far. */
  stop(): void {
    if (this.#planning.kind !== 'running') return;
    this.#planning = { ...this.#planning, stopping: true };
    this.#job?.stop();
  }

  #leave(): void {
    const left = this.#job;
    this.#job = null;
    this.#request = null;
    left?.stop();
  }
}
