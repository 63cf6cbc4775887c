/**
 * Uses, modes and lists of modes, each made once: in a large kitchen most tasks can be done in the very ways of some other, and what reads
 * the problem can read a list that it has met before by a glance.
 */
import type { Mode, Use } from '../engine/problem.ts';

const NO_MARKS: readonly string[] = [];

type Modes = readonly (Mode | null)[];

export class SharedModes {
  readonly #marks = new Map<string, readonly string[]>();
  readonly #uses = new Map<string, Use[]>();
  /** By their first use. */
  readonly #modes = new Map<Use | undefined, Mode[]>();
  readonly #numbers = new Map<Mode | null, number>([[null, 0]]);
  readonly #lists = new Map<string, Modes>();

  /** The one list of marks that says this. */
  marks(list: readonly string[]): readonly string[] {
    if (list.length === 0) return NO_MARKS;
    // The length of each mark before it, so that no two lists are written alike.
    const key = list.map((mark) => `${mark.length}:${mark}`).join('');
    const known = this.#marks.get(key);
    if (known === undefined) this.#marks.set(key, list);
    return known ?? list;
  }

  /** The one use that says this; its lists of marks must come from `marks`. */
  use(use: Use): Use {
    const { resource, amount, leaves, avoids, cleans } = use;
    const alike = entryOf(this.#uses, resource);
    const known = alike.find(
      (other) =>
        other.amount === amount && other.leaves === leaves && other.avoids === avoids && other.cleans === cleans,
    );
    if (known === undefined) alike.push(use);
    return known ?? use;
  }

  /** The one list that says the same; the uses must come from `use`. */
  list(modes: Modes): Modes {
    const shared = modes.map((mode) => (mode === null ? null : this.#mode(mode)));
    const key = shared.map((mode) => this.#numbers.get(mode)!).join(' ');
    const known = this.#lists.get(key);
    if (known === undefined) this.#lists.set(key, shared);
    return known ?? shared;
  }

  #mode(mode: Mode): Mode {
    const alike = entryOf(this.#modes, mode.uses[0]);
    const known = alike.find((other) => isSame(other, mode));
    if (known !== undefined) return known;
    alike.push(mode);
    this.#numbers.set(mode, this.#numbers.size);
    return mode;
  }
}

function entryOf<K, V>(map: Map<K, V[]>, key: K): V[] {
  const known = map.get(key);
  if (known !== undefined) return known;
  const entry: V[] = [];
  map.set(key, entry);
  return entry;
}

function isSame(a: Mode, b: Mode): boolean {
  return (
    a.shortest === b.shortest &&
    a.longest === b.longest &&
    a.state?.state === b.state?.state &&
    a.state?.class === b.state?.class &&
    a.cost?.fixed === b.cost?.fixed &&
    a.cost?.perMinute === b.cost?.perMinute &&
    a.uses.length === b.uses.length &&
    a.uses.every((use, k) => use === b.uses[k])
  );
}
