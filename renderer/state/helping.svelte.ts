/** The question what would help: asked of one request, followed, stopped, and put away. */
import type { HelpProgress, HelpResult, Host, PlanRequest } from '../../app/api.ts';

export type Helping =
  | { readonly kind: 'closed' }
  | { readonly kind: 'running'; readonly progress: HelpProgress | null; readonly stopping: boolean }
  | { readonly kind: 'done'; readonly result: HelpResult }
  /** The host itself could not be reached. */
  | { readonly kind: 'broken'; readonly words: string };

export class HelpingState {
  #helping = $state.raw<Helping>({ kind: 'closed' });
  #job: { readonly stop: () => void } | null = null;
  /** Counts the questions, so that a left one is no longer heard. */
  #asked = 0;
  readonly #host: Pick<Host, 'startHelp'>;

  constructor(host: Pick<Host, 'startHelp'>) {
    this.#host = host;
  }

  get helping(): Helping {
    return this.#helping;
  }

  ask(request: PlanRequest): void {
    this.close();
    const mine = this.#asked;
    this.#helping = { kind: 'running', progress: null, stopping: false };
    try {
      this.#job = this.#host.startHelp(request, {
        onProgress: (progress) => {
          if (mine === this.#asked && this.#helping.kind === 'running') this.#helping = { ...this.#helping, progress };
        },
        onDone: (result) => {
          if (mine !== this.#asked) return;
          this.#job = null;
          this.#helping = { kind: 'done', result };
        },
      });
    } catch (error) {
      this.#helping = { kind: 'broken', words: error instanceof Error ? error.message : String(error) };
    }
  }

  /** Ends with what is known. */
  stop(): void {
    if (this.#helping.kind !== 'running') return;
    this.#helping = { ...this.#helping, stopping: true };
    this.#job?.stop();
  }

  /** Puts the question away, and stops it where it is still being answered. */
  close(): void {
    this.#asked += 1;
    const left = this.#job;
    this.#job = null;
    this.#helping = { kind: 'closed' };
    left?.stop();
  }
}
