/** The working that is laid open, one at a time, and where the keyboard goes on when it is put away. */
import type { Working } from '../../solver/working.ts';

export class WorkingState {
  #shown = $state.raw<Working | null>(null);
  #opener: HTMLElement | null = null;

  get shown(): Working | null {
    return this.#shown;
  }

  /** @param opener what was pressed to see it */
  open(working: Working, opener: HTMLElement | null): void {
    this.#shown = working;
    this.#opener = opener;
  }

  /** Puts it away, and the focus back to where it came from. */
  close(): void {
    this.#shown = null;
    this.#opener?.focus();
    this.#opener = null;
  }
}
