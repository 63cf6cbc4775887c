/** The working that is laid open, one at a time, and where the keyboard goes on when it is put away. */
import type { Working } from '../../solver/working.ts';

export class WorkingState {
  #shown = $state.raw<Working | null>(null);
  #opener = $state.raw<HTMLElement | null>(null);
  #opened = $state.raw(0);

  get shown(): Working | null {
    return this.#shown;
  }

  /** What was pressed to see it; null while none is open. */
  get opener(): HTMLElement | null {
    return this.#opener;
  }

  /** Changes when another working is opened, and not when the one that is open is reckoned anew. */
  get opened(): number {
    return this.#opened;
  }

  /** @param opener what was pressed to see it */
  open(working: Working, opener: HTMLElement | null): void {
    this.#shown = working;
    this.#opener = opener;
    this.#opened += 1;
  }

  /** The number behind the opener came out anew: its working follows, without a word or a jump of the keyboard. */
  renew(working: Working): void {
    if (this.#shown !== null) this.#shown = working;
  }

  /** Puts it away, and the focus back to where it came from, while that is there. */
  close(): void {
    this.#shown = null;
    if (this.#opener?.isConnected === true) this.#opener.focus();
    this.#opener = null;
  }

  /** Puts it away where what it belongs to is left: the focus is somewhere else by then. */
  leave(): void {
    this.#shown = null;
    this.#opener = null;
  }
}
