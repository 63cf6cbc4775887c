/**
 * Kitchens being edited, a draft each: what was typed stands as it was typed, sound or not, until it is saved or put back, whatever
 * other kitchen or place is looked at meanwhile; every change can be undone. The host reckons the open draft a moment after each change.
 */
import type { Fault, Host } from '../../app/api.ts';
import type { KitchenFigures } from '../../solver/answers/kitchen-figures.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import { keepDrafts, keptDrafts, type KeptDraft } from './kept-drafts.ts';
import type { Keeper } from './settings.svelte.ts';
import { alike, valueAt, withAt, type Path } from '../places/draft-paths.ts';

/** Milliseconds after a change before the host is asked. */
const WAIT_MS = 250;

/** With the way between what was read and what stands now. */
interface Draft extends KeptDraft {
  readonly past: readonly unknown[];
  readonly future: readonly unknown[];
}

export class KitchenDraftState {
  #drafts = $state.raw<Readonly<Record<string, Draft>>>({});
  #id = $state.raw<string | null>(null);
  #figures = $state.raw<KitchenFigures | null>(null);
  #faults = $state.raw<readonly Fault[]>([]);
  #unreadable = $state.raw<readonly Fault[]>([]);
  #told = $state('');
  #lost = $state<string | null>(null);
  #asked = 0;
  #timer: ReturnType<typeof setTimeout> | null = null;
  readonly #host: Pick<Host, 'kitchen' | 'kitchenFigures' | 'saveKitchen'>;

  readonly #keeper: Keeper | null;

  /** @param keeper keeps what is not saved; null: it lives as long as the window */
  constructor(host: Pick<Host, 'kitchen' | 'kitchenFigures' | 'saveKitchen'>, keeper: Keeper | null) {
    this.#host = host;
    this.#keeper = keeper;
    this.#drafts = Object.fromEntries(
      Object.entries(keptDrafts(keeper)).map(([id, kept]) => [id, { ...kept, past: [], future: [] }]),
    );
  }

  get #open(): Draft | null {
    return this.#id === null ? null : (this.#drafts[this.#id] ?? null);
  }

  /** What is typed into the open kitchen, of a kitchen's shape as far as it is sound. */
  get draft(): Kitchen | null {
    return (this.#open?.now ?? null) as Kitchen | null;
  }
  /** Of the last sound draft. */
  get figures(): KitchenFigures | null {
    return this.#figures;
  }
  /** Of the open draft. */
  get faults(): readonly Fault[] {
    return this.#faults;
  }
  /** Faults of a kitchen that was asked for and cannot be read; the one before stays open. */
  get unreadable(): readonly Fault[] {
    return this.#unreadable;
  }
  /** What came of saving, in words. */
  get told(): string {
    return this.#told;
  }
  /** Why the host cannot be reached; null while it can. */
  get lost(): string | null {
    return this.#lost;
  }
  /** The open kitchen differs from the saved one. */
  get changed(): boolean {
    return this.#open !== null && differs(this.#open);
  }
  /** Ids of all kitchens that differ from the saved ones, open or not. */
  get unsaved(): readonly string[] {
    return Object.entries(this.#drafts).flatMap(([id, draft]) => (differs(draft) ? [id] : []));
  }
  get canUndo(): boolean {
    return (this.#open?.past.length ?? 0) > 0;
  }
  get canRedo(): boolean {
    return (this.#open?.future.length ?? 0) > 0;
  }

  /** Opens a kitchen as it was left; one that was not changed here is read anew, since its file may have been. */
  async open(id: string): Promise<void> {
    if (this.#id === id) return;
    const asked = this.#ask();
    const left = this.#drafts[id];
    if (left !== undefined && differs(left)) return this.#turnTo(id);
    await this.#reach(async () => {
      const answer = await this.#host.kitchen(id);
      if (asked !== this.#asked) return;
      this.#unreadable = answer.ok ? [] : answer.faults;
      if (!answer.ok) return;
      this.#put(id, { saved: answer.value, now: answer.value, past: [], future: [] });
      await this.#turnTo(id);
    });
  }

  /** @param value undefined: left out of the document */
  set(path: Path, value: unknown): void {
    const open = this.#open;
    // A field that was left as it was is no change.
    if (open === null || alike(valueAt(open.now, path), value)) return;
    this.#show({ ...open, now: withAt(open.now, path, value), past: [...open.past, open.now], future: [] });
  }

  undo(): void {
    const open = this.#open;
    if (open === null || open.past.length === 0) return;
    this.#show({ ...open, now: open.past.at(-1), past: open.past.slice(0, -1), future: [open.now, ...open.future] });
  }

  redo(): void {
    const open = this.#open;
    if (open === null || open.future.length === 0) return;
    const [now, ...future] = open.future;
    this.#show({ ...open, now, past: [...open.past, open.now], future });
  }

  /** @returns id of the kitchen that was saved; null where it was not, and `faults` or `lost` say why */
  async save(): Promise<string | null> {
    const [id, given] = [this.#id, this.draft];
    if (id === null || given === null || !this.changed) return null;
    return this.#reach(async () => {
      const answer = await this.#host.saveKitchen(given);
      const draft = this.#drafts[id];
      if (answer.ok && draft !== undefined) this.#put(id, { ...draft, saved: given });
      if (this.#id === id) {
        this.#faults = answer.ok ? [] : answer.faults;
        this.#told = answer.ok ? `Saved as ${answer.value.file}.` : 'Not saved: mend what is marked first.';
      }
      return answer.ok ? id : null;
    });
  }

  /** What is still on its way is of an older question from now on. */
  #ask(): number {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#asked += 1;
    return this.#asked;
  }

  #put(id: string, draft: Draft): void {
    this.#drafts = { ...this.#drafts, [id]: draft };
    const open = Object.entries(this.#drafts).filter(([, each]) => differs(each));
    keepDrafts(this.#keeper, Object.fromEntries(open.map(([of, { saved, now }]) => [of, { saved, now }])));
  }

  async #turnTo(id: string): Promise<void> {
    this.#id = id;
    this.#figures = null;
    this.#faults = [];
    this.#unreadable = [];
    this.#told = '';
    await this.#reach(() => this.#reckon());
  }

  #show(draft: Draft): void {
    this.#put(this.#id!, draft);
    this.#told = '';
    this.#ask();
    this.#timer = setTimeout(() => void this.#reach(() => this.#reckon()), WAIT_MS);
  }

  async #reckon(): Promise<void> {
    const asked = this.#ask();
    const answer = await this.#host.kitchenFigures(this.draft!);
    if (asked !== this.#asked) return;
    this.#faults = answer.ok ? [] : answer.faults;
    if (answer.ok) this.#figures = answer.value;
  }

  async #reach<T>(ask: () => Promise<T>): Promise<T | null> {
    try {
      const answer = await ask();
      this.#lost = null;
      return answer;
    } catch (error) {
      this.#lost = error instanceof Error ? error.message : String(error);
      return null;
    }
  }
}

const differs = ({ saved, now }: Draft): boolean => !alike(saved, now);
