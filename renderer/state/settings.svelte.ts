/** What this reader prefers: light or dark, near or far, and which lanes. Kept by the window where it may keep things. */
import type { Reading } from '../chart/layout/sizes.ts';

export type Theme = 'system' | 'light' | 'dark';

export interface Keeper {
  readonly getItem: (key: string) => string | null;
  readonly setItem: (key: string, value: string) => void;
}

const KEY = 'afterheat.settings';

interface Kept {
  readonly theme: Theme;
  readonly reading: Reading;
  readonly everything: boolean;
}

const FIRST: Kept = { theme: 'system', reading: 'near', everything: false };

function read(keeper: Keeper | null): Kept {
  try {
    const kept = JSON.parse(keeper?.getItem(KEY) ?? '{}') as Partial<Kept>;
    return {
      theme: kept.theme === 'light' || kept.theme === 'dark' ? kept.theme : FIRST.theme,
      reading: kept.reading === 'far' ? 'far' : FIRST.reading,
      everything: kept.everything === true,
    };
  } catch {
    return FIRST;
  }
}

export class SettingsState {
  #kept = $state.raw<Kept>(FIRST);
  readonly #keeper: Keeper | null;

  constructor(keeper: Keeper | null) {
    this.#keeper = keeper;
    this.#kept = read(keeper);
  }

  #change(change: Partial<Kept>): void {
    this.#kept = { ...this.#kept, ...change };
    try {
      this.#keeper?.setItem(KEY, JSON.stringify(this.#kept));
    } catch {
      // A window that may keep nothing still works; it only forgets.
    }
  }

  get theme(): Theme {
    return this.#kept.theme;
  }
  set theme(theme: Theme) {
    this.#change({ theme });
  }

  get reading(): Reading {
    return this.#kept.reading;
  }
  set reading(reading: Reading) {
    this.#change({ reading });
  }

  /** Boards, pans, tools and sink have lanes too. */
  get everything(): boolean {
    return this.#kept.everything;
  }
  set everything(everything: boolean) {
    this.#change({ everything });
  }
}
