/** Gathers the parts of a food-free problem, so that the translation reads as sentences about the kitchen. */
import type {
  Lag,
  Literal,
  Mode,
  Point,
  Problem,
  Reservoir,
  Resource,
  StateResource,
  Task,
  Tier,
  Total,
  Use,
} from '../engine/problem.ts';
import { SharedModes } from './shared-modes.ts';

export const start = (task: string): Exclude<Point, 'origin'> => ({ task, at: 'start' });
export const end = (task: string): Exclude<Point, 'origin'> => ({ task, at: 'end' });

type Conditions = readonly Literal[];
const NONE: readonly string[] = [];

export class ProblemBuilder {
  readonly choices: { id: string; options: string[] }[] = [];
  readonly tasks: Task[] = [];
  readonly resources = new Map<string, Resource>();
  readonly states: StateResource[] = [];
  readonly reservoirs: Reservoir[] = [];
  readonly lags: Lag[] = [];
  readonly forbidden: (readonly Literal[])[] = [];
  readonly totals: Total[] = [];
  readonly tiers: Tier[] = [];

  /** @param horizon every task ends by then, minutes */
  constructor(
    readonly name: string,
    readonly horizon: number,
  ) {}

  /** A decision among options; null where there is only one, for then there is nothing to decide. */
  choice(id: string, options: readonly string[]): string | null {
    if (options.length < 2) return null;
    this.choices.push({ id, options: [...options] });
    return id;
  }

  /** A task whose modes follow a choice (or its one mode where the choice is null). */
  task(
    id: string,
    modes: readonly (Mode | null)[],
    choice: string | null,
    when: Conditions = [],
    group?: string,
  ): string {
    this.tasks.push({
      id,
      modes,
      ...(choice === null ? {} : { choice }),
      ...(when.length === 0 ? {} : { when }),
      ...(group === undefined ? {} : { group }),
    });
    return id;
  }

  resource(id: string, capacity: number): string {
    if (!this.resources.has(id)) this.resources.set(id, { id, capacity });
    return id;
  }

  /** Takes a resource away within `[from, until)`. */
  absence(id: string, from: number, until: number): void {
    const resource = this.resources.get(id);
    if (resource === undefined || until <= from) return;
    const windows = [...(resource.calendar ?? []), { from, until, capacity: 0 }].sort((a, b) => a.from - b.from);
    const merged: { from: number; until: number; capacity: number }[] = [];
    for (const window of windows) {
      const last = merged.at(-1);
      if (last !== undefined && window.from <= last.until) last.until = Math.max(last.until, window.until);
      else merged.push({ ...window });
    }
    this.resources.set(id, { ...resource, calendar: merged });
  }

  /** `to − from ≥ least`. */
  atLeast(from: Point, to: Point, least: number, when: Conditions = [], requirement?: string): void {
    this.lags.push({
      from,
      to,
      least,
      ...(when.length === 0 ? {} : { if: when }),
      ...(requirement === undefined ? {} : { requirement }),
    });
  }

  /** `to − from ≤ most`. */
  atMost(from: Point, to: Point, most: number, when: Conditions = [], requirement?: string): void {
    this.atLeast(to, from, -most, when, requirement);
  }

  /** `to = from + gap`. */
  exactly(from: Point, to: Point, gap: number, when: Conditions = [], requirement?: string): void {
    this.atLeast(from, to, gap, when, requirement);
    this.atMost(from, to, gap, when, requirement);
  }

  forbid(literals: readonly Literal[]): void {
    this.forbidden.push(literals);
  }

  build(): Problem {
    return {
      format: 'afterheat.problem',
      version: 1,
      name: this.name,
      horizon: this.horizon,
      choices: this.choices,
      tasks: this.tasks.map((task) => ({
        ...task,
        modes: this.#shared.list(task.modes.map((mode) => (mode === null ? null : this.#pruned(mode)))),
      })),
      resources: [...this.resources.values()],
      states: this.states,
      reservoirs: this.reservoirs,
      lags: this.lags,
      forbidden: this.forbidden,
      totals: this.totals,
      tiers: this.tiers,
    };
  }

  /** For each resource, the marks that some use leaves and another avoids: only these can ever clash. */
  clashingMarks(resource: string): ReadonlySet<string> {
    const left = new Set<readonly string[]>();
    const avoided = new Set<readonly string[]>();
    for (const { use } of this.usesOf(resource)) {
      if (use.leaves !== undefined) left.add(use.leaves);
      if (use.avoids !== undefined) avoided.add(use.avoids);
    }
    const avoids = new Set<string>();
    for (const list of avoided) for (const mark of list) avoids.add(mark);
    const clashing = new Set<string>();
    for (const list of left) for (const mark of list) if (avoids.has(mark)) clashing.add(mark);
    return clashing;
  }

  /** Uses of a resource in every mode of every task, by task. Tasks may be added meanwhile, and changed only before the first question. */
  usesOf(resource: string): readonly { readonly task: number; readonly use: Use }[] {
    for (; this.#indexed < this.tasks.length; this.#indexed++)
      for (const mode of this.tasks[this.#indexed]!.modes)
        for (const use of mode?.uses ?? []) {
          const entry = { task: this.#indexed, use };
          const list = this.#uses.get(use.resource);
          if (list === undefined) this.#uses.set(use.resource, [entry]);
          else list.push(entry);
        }
    return this.#uses.get(resource) ?? [];
  }

  readonly #shared = new SharedModes();
  #indexed = 0;
  readonly #uses = new Map<string, { readonly task: number; readonly use: Use }[]>();
  /** By resource: the marks that clash on it, and those of each list. */
  readonly #marks = new Map<
    string,
    { readonly marks: ReadonlySet<string>; readonly of: Map<readonly string[], readonly string[]> }
  >();

  /** Drops marks that cannot clash, and uses that then say nothing. */
  #pruned(mode: Mode): Mode {
    const uses = mode.uses.flatMap((use): Use[] => {
      let known = this.#marks.get(use.resource);
      if (known === undefined)
        this.#marks.set(use.resource, (known = { marks: this.clashingMarks(use.resource), of: new Map() }));
      const { marks, of } = known;
      const clashing = (list: readonly string[] | undefined): readonly string[] => {
        if (list === undefined || marks.size === 0) return NONE;
        let some = of.get(list);
        if (some === undefined) of.set(list, (some = this.#shared.marks(list.filter((mark) => marks.has(mark)))));
        return some;
      };
      const leaves = clashing(use.leaves);
      const avoids = clashing(use.avoids);
      const cleans = use.cleans === true && marks.size > 0;
      if (use.amount === 0 && leaves.length === 0 && avoids.length === 0 && !cleans) return [];
      return [
        this.#shared.use({
          resource: use.resource,
          amount: use.amount,
          ...(leaves.length > 0 ? { leaves } : {}),
          ...(avoids.length > 0 ? { avoids } : {}),
          ...(cleans ? { cleans } : {}),
        }),
      ];
    });
    return { ...mode, uses };
  }
}

/** The literal that a choice takes one option; none where there is nothing to decide. */
export function picks(choice: string | null, ...options: readonly number[]): readonly Literal[] {
  return choice === null ? [] : [{ choice, options }];
}
