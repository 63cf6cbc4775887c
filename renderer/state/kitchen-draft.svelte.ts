/**
 * A kitchen being edited: what was typed stands as it was typed, sound or not, until it is saved or put back; every change can be
 * undone. The host reckons the draft a moment after each change.
 */
import type { Fault, Host } from '../../app/api.ts';
import type { KitchenFigures } from '../../solver/answers/kitchen-figures.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import { withAt, type Path } from '../places/draft-paths.ts';

/** Milliseconds after a change before the host is asked. */
const WAIT_MS = 250;

export class KitchenDraftState {
  #saved = $state.raw<Kitchen | null>(null);
  #draft = $state.raw<unknown>(null);
  #past = $state.raw<readonly unknown[]>([]);
  #future = $state.raw<readonly unknown[]>([]);
  #figures = $state.raw<KitchenFigures | null>(null);
  #faults = $state.raw<readonly Fault[]>([]);
  #told = $state('');
  #lost = $state<string | null>(null);
  #asked = 0;
  #timer: ReturnType<typeof setTimeout> | null = null;
  readonly #host: Host;

  constructor(host: Host) {
    this.#host = host;
  }

  /** What is typed, of a kitchen's shape as far as it is sound. */
  get draft(): Kitchen | null {
    return this.#draft as Kitchen | null;
  }
  /** Of the last sound draft. */
  get figures(): KitchenFigures | null {
    return this.#figures;
  }
  get faults(): readonly Fault[] {
    return this.#faults;
  }
  /** What came of saving, in words. */
  get told(): string {
    return this.#told;
  }
  /** Why the host cannot be reached; null while it can. */
  get lost(): string | null {
    return this.#lost;
  }
  get changed(): boolean {
    return this.#draft !== this.#saved;
  }
  get canUndo(): boolean {
    return this.#past.length > 0;
  }
  get canRedo(): boolean {
    return this.#future.length > 0;
  }

  /** Opens a kitchen; one that is being edited and has another id is put away only where nothing in it is unsaved. */
  async open(id: string): Promise<void> {
    if (this.#saved?.id === id) return;
    await this.#reach(async () => {
      const answer = await this.#host.kitchen(id);
      this.#faults = answer.ok ? [] : answer.faults;
      if (!answer.ok) return;
      this.#saved = answer.value;
      this.#draft = answer.value;
      this.#past = [];
      this.#future = [];
      this.#figures = null;
      this.#told = '';
      await this.#reckon();
    });
  }

  /** @param value undefined: left out of the document */
  set(path: Path, value: unknown): void {
    this.#past = [...this.#past, this.#draft];
    this.#future = [];
    this.#show(withAt(this.#draft, path, value));
  }

  undo(): void {
    const before = this.#past.at(-1);
    if (before === undefined) return;
    this.#past = this.#past.slice(0, -1);
    this.#future = [this.#draft, ...this.#future];
    this.#show(before);
  }

  redo(): void {
    const [after, ...rest] = this.#future;
    if (after === undefined) return;
    this.#past = [...this.#past, this.#draft];
    this.#future = rest;
    this.#show(after);
  }

  async save(): Promise<void> {
    const given = this.#draft;
    await this.#reach(async () => {
      const answer = await this.#host.saveKitchen(given as Kitchen);
      this.#faults = answer.ok ? [] : answer.faults;
      this.#told = answer.ok ? `Saved as ${answer.value.file}.` : 'Not saved: mend what is marked first.';
      if (answer.ok) this.#saved = given as Kitchen;
    });
  }

  #show(draft: unknown): void {
    this.#draft = draft;
    this.#told = '';
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#reach(() => this.#reckon()), WAIT_MS);
  }

  async #reckon(): Promise<void> {
    const asked = ++this.#asked;
    const answer = await this.#host.kitchenFigures(this.#draft as Kitchen);
    // An answer about an older draft is of no use any more.
    if (asked !== this.#asked) return;
    this.#faults = answer.ok ? [] : answer.faults;
    if (answer.ok) this.#figures = answer.value;
  }

  async #reach(ask: () => Promise<void>): Promise<void> {
    try {
      await ask();
      this.#lost = null;
    } catch (error) {
      this.#lost = error instanceof Error ? error.message : String(error);
    }
  }
}
