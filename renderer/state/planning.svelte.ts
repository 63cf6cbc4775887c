/** One request and how far it is: picks, the best plan so far with the bound closing in on it, the result, and how to stop. */
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
  /** The plan in sight is of the request, not of the one before. */
  #own = $state.raw(false);
  #opened = $state.raw(0);
  #job: { readonly stop: () => void } | null = null;
  /** Counts the jobs, so that a left one is no longer heard. */
  #asked = 0;
  #began = 0;
  readonly #host: Pick<Host, 'startPlan'>;
  readonly #now: () => number;

  /** @param now milliseconds that go forward */
  constructor(host: Pick<Host, 'startPlan'>, now: () => number = () => performance.now()) {
    this.#host = host;
    this.#now = now;
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

  /** Changes when the plan in sight becomes one of another request: then it is looked at anew, else only redrawn. */
  get opened(): number {
    return this.#opened;
  }

  /** How sure the plan in sight is; null while that is not known. */
  get sure(): HowSure | null {
    const planning = this.#planning;
    return planning.kind === 'done' && planning.result.kind === 'planned' ? (planning.result.sure ?? null) : null;
  }

  /** The plan in sight is the best so far, while better ones are looked for. */
  get bestSoFar(): boolean {
    return this.#plan !== null && this.#own && this.#planning.kind === 'running';
  }

  /** The plan in sight was made for another request, and this one is not there yet. */
  get stale(): boolean {
    return this.#plan !== null && !this.#own;
  }

  /** Milliseconds since the plan was asked for. */
  elapsedMs(): number {
    return this.#now() - this.#began;
  }

  /** Shows a plan that is there already. */
  showPlan(plan: Plan, request: PlanRequest): void {
    this.#leave();
    this.#request = request;
    this.#planning = { kind: 'idle' };
    this.#show(plan);
  }

  start(request: PlanRequest): void {
    this.#leave();
    const mine = this.#asked;
    this.#request = request;
    this.#began = this.#now();
    // A plan of another session would only mislead while this one is made.
    if (this.#plan?.session.id !== request.session) this.#plan = null;
    this.#planning = { kind: 'running', progress: null, stopping: false };
    try {
      const job = this.#host.startPlan(request, {
        onProgress: (progress) => {
          const running = this.#planning;
          if (mine !== this.#asked || running.kind !== 'running') return;
          this.#planning = { ...running, progress };
          // Who has stopped keeps what was in sight then, until the answer comes.
          if (progress.plan !== undefined && !running.stopping) this.#show(progress.plan);
        },
        onDone: (result) => {
          if (mine !== this.#asked || this.#planning.kind !== 'running') return;
          this.#job = null;
          this.#planning = { kind: 'done', result };
          if (result.kind === 'planned') this.#show(result.plan);
          // A best plan so far stays, whatever ended the search for a better one.
          else if (result.kind !== 'unknown' || !this.#own) this.#plan = null;
        },
      });
      // An answer may have come already.
      if (this.#planning.kind === 'running') this.#job = job;
    } catch (error) {
      if (mine === this.#asked)
        this.#planning = { kind: 'broken', words: error instanceof Error ? error.message : String(error) };
    }
  }

  /** Ends with the best plan so far. */
  stop(): void {
    if (this.#planning.kind !== 'running') return;
    this.#planning = { ...this.#planning, stopping: true };
    this.#job?.stop();
  }

  #show(plan: Plan): void {
    this.#plan = plan;
    if (this.#own) return;
    this.#own = true;
    this.#opened += 1;
  }

  #leave(): void {
    this.#asked += 1;
    const left = this.#job;
    this.#job = null;
    this.#request = null;
    this.#own = false;
    left?.stop();
  }
}
