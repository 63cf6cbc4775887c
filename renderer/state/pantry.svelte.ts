/** The documents that the host has: what can be picked, and the faults of those that cannot. */
import type { DocumentEntry, Fault, Host } from '../../app/api.ts';
import type { Session } from '../../solver/kitchen/session.ts';

export class PantryState {
  #entries = $state.raw<readonly DocumentEntry[]>([]);
  #session = $state.raw<Session | null>(null);
  #faults = $state.raw<readonly Fault[]>([]);
  #lost = $state<string | null>(null);
  readonly #host: Host;

  constructor(host: Host) {
    this.#host = host;
  }

  get entries(): readonly DocumentEntry[] {
    return this.#entries;
  }
  get session(): Session | null {
    return this.#session;
  }
  /** Faults of the session that was asked for last. */
  get faults(): readonly Fault[] {
    return this.#faults;
  }
  /** Why the host cannot be reached; null while it can. */
  get lost(): string | null {
    return this.#lost;
  }

  ofKind(kind: DocumentEntry['kind']): readonly DocumentEntry[] {
    return this.#entries.filter((entry) => entry.kind === kind);
  }

  get faulty(): readonly DocumentEntry[] {
    return this.#entries.filter((entry) => entry.faults.length > 0);
  }

  name(kind: DocumentEntry['kind'], id: string): string {
    return this.#entries.find((entry) => entry.kind === kind && entry.id === id)?.name ?? id;
  }

  async refresh(): Promise<void> {
    try {
      this.#entries = await this.#host.list();
      this.#lost = null;
    } catch (error) {
      this.#lost = error instanceof Error ? error.message : String(error);
    }
  }

  /** Reads a session; null with its faults where it cannot be used. */
  async openSession(id: string): Promise<Session | null> {
    try {
      const answer = await this.#host.session(id);
      this.#session = answer.ok ? answer.value : null;
      this.#faults = answer.ok ? [] : answer.faults;
      return this.#session;
    } catch (error) {
      this.#lost = error instanceof Error ? error.message : String(error);
      return null;
    }
  }
}
