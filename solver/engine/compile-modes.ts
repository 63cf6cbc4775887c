/**
 * Turns the modes of tasks into numbered ones, with uses by number of the resource and soil by number too.
 *
 * The distinct modes of a task are numbered one after the other, task by task. Many tasks of a large problem share one list of modes, which
 * is read once.
 */
import type { CompiledMode, CompiledUse } from './compiled.ts';
import type { Mode, Problem, Task, Use } from './problem.ts';
import { emptyLists, placesOf, type SparseLists } from './sparse-lists.ts';
import { whole } from './whole.ts';

const NONE: readonly string[] = [];

/** Marks by number, each once and ascending. */
interface MarkList {
  readonly marks: readonly number[];
}

const NO_MARKS: MarkList = { marks: [] };

/** What was read; see `Compiled`. */
export interface ModesRead {
  readonly modes: readonly CompiledMode[];
  readonly taskModes: SparseLists;
  readonly optionMode: SparseLists;
  readonly modeOptions: SparseLists;
  readonly soilCount: number;
  readonly soilMeets: Uint8Array;
}

/** Where what was read of a list of modes stands: its first mode and how many, and its first entry in `optionMode`. */
interface Place {
  readonly mode: number;
  readonly count: number;
  readonly option: number;
}

export class ModeReader {
  private readonly resourceIndex: ReadonlyMap<string, number>;
  private readonly stateIndex: ReadonlyMap<string, number>;
  private readonly modes: CompiledMode[] = [];
  private readonly firstMode: number[] = [];
  private readonly firstOption: number[] = [];
  /** The mode of each option of each task, −1 where it is absent. */
  private readonly optionMode: number[] = [];
  private readonly places = new Map<Task['modes'], Place>();
  /** Lists of marks by what they say and, since many uses share one, by themselves. */
  private readonly markLists = new Map<string, MarkList>();
  private readonly knownLists = new Map<readonly string[], MarkList>();
  private readonly marks = new Map<string, number>();
  /** By list of marks left: soils by list of marks avoided. */
  private readonly soils = new Map<MarkList, Map<MarkList, number>>();
  private readonly soilMarks: { leaves: MarkList; avoids: MarkList }[] = [{ leaves: NO_MARKS, avoids: NO_MARKS }];
  /** Lists of one use, by resource: most modes have one use, and most of a resource are alike. */
  private readonly knownUses: CompiledUse[][][];

  constructor(private readonly problem: Problem) {
    this.resourceIndex = new Map(problem.resources.map(({ id }, r) => [id, r]));
    this.stateIndex = new Map(problem.states.map(({ id }, s) => [id, s]));
    this.knownUses = problem.resources.map(() => []);
  }

  /** Reads the modes of a task; tasks come in their order, from 0. */
  read(task: number, list: Task['modes']): void {
    const { modes, optionMode } = this;
    const first = modes.length;
    this.firstMode.push(first);
    this.firstOption.push(optionMode.length);
    const known = this.places.get(list);
    if (known === undefined) {
      const place = { mode: first, option: optionMode.length };
      for (const mode of list) optionMode.push(mode === null ? -1 : this.mode(task, mode, first));
      this.places.set(list, { ...place, count: modes.length - first });
      return;
    }
    for (let k = known.mode; k < known.mode + known.count; k++) modes.push(sameFor(task, modes[k] as CompiledMode));
    for (let k = 0; k < list.length; k++) {
      const mode = optionMode[known.option + k] as number;
      optionMode.push(mode < 0 ? -1 : mode - known.mode + first);
    }
  }

  /** All that was read. */
  all(): ModesRead {
    const { modes, optionMode } = this;
    return {
      modes,
      taskModes: {
        start: Int32Array.from([...this.firstMode, modes.length]),
        items: Int32Array.from({ length: modes.length }, (_, mode) => mode),
      },
      optionMode: {
        start: Int32Array.from([...this.firstOption, optionMode.length]),
        items: Int32Array.from(optionMode),
      },
      modeOptions: this.modeOptions(),
      soilCount: this.soilMarks.length,
      soilMeets: this.soilMeets(),
    };
  }

  private modeOptions(): SparseLists {
    const { optionMode, firstOption, modes } = this;
    const ofModes = optionMode.map((mode) => (mode < 0 ? modes.length : mode));
    const { start, items } = placesOf(modes.length + 1, ofModes);
    modes.forEach(({ task }, mode) => {
      const until = start[mode + 1] as number;
      for (let k = start[mode] as number; k < until; k++)
        items[k] = (items[k] as number) - (firstOption[task] as number);
    });
    return { start, items };
  }

  /** Soil by soil, 1 where the first leaves what the second avoids. */
  private soilMeets(): Uint8Array {
    const { soilMarks } = this;
    const avoiders = emptyLists(this.marks.size);
    soilMarks.forEach(({ avoids }, soil) => {
      for (const mark of avoids.marks) avoiders[mark]?.push(soil);
    });
    const meets = new Uint8Array(soilMarks.length ** 2);
    soilMarks.forEach(({ leaves }, soil) => {
      for (const mark of leaves.marks)
        for (const avoider of avoiders[mark] as number[]) meets[soil * soilMarks.length + avoider] = 1;
    });
    return meets;
  }

  /** The number of a mode of the task; those of its modes already known begin at `first`. */
  private mode(task: number, mode: Mode, first: number): number {
    const compiled: CompiledMode = {
      task,
      shortest: whole(mode.shortest),
      longest: whole(Math.min(mode.longest, this.problem.horizon)),
      uses: this.usesOf(mode),
      state: mode.state === undefined ? -1 : (this.stateIndex.get(mode.state.state) ?? -1),
      stateClass: whole(mode.state?.class ?? 0),
      costFixed: whole(mode.cost?.fixed ?? 0),
      costPerMinute: whole(mode.cost?.perMinute ?? 0),
    };
    for (let known = first; known < this.modes.length; known++)
      if (isSameMode(this.modes[known] as CompiledMode, compiled)) return known;
    return this.modes.push(compiled) - 1;
  }

  /** The uses of a mode by resource; several of one resource are put together. */
  private usesOf(mode: Mode): readonly CompiledUse[] {
    if (mode.uses.length === 1) return this.onlyUse(mode.uses[0] as Use);
    const uses: CompiledUse[] = [];
    for (const use of mode.uses) {
      const compiled = this.use(use);
      for (const { resource } of uses) if (resource === compiled.resource) return this.usesTogether(mode);
      uses.push(compiled);
    }
    return uses.length < 2 ? uses : uses.sort((a, b) => a.resource - b.resource);
  }

  private use(use: Use): CompiledUse {
    const resource = this.resourceIndex.get(use.resource) ?? -1;
    const soil = this.soil(use.leaves ?? NONE, use.avoids ?? NONE);
    return { resource, amount: whole(use.amount), soil, cleans: use.cleans === true };
  }

  /** The list of this use alone, made when it is new. */
  private onlyUse(use: Use): readonly CompiledUse[] {
    const resource = this.resourceIndex.get(use.resource) ?? -1;
    const soil = this.soil(use.leaves ?? NONE, use.avoids ?? NONE);
    const cleans = use.cleans === true;
    const lists = this.knownUses[resource] as CompiledUse[][];
    for (const list of lists) {
      const known = list[0] as CompiledUse;
      if (known.amount === use.amount && known.soil === soil && known.cleans === cleans) return list;
    }
    const list = [{ resource, amount: whole(use.amount), soil, cleans }];
    lists.push(list);
    return list;
  }

  private usesTogether(mode: Mode): readonly CompiledUse[] {
    const resources = mode.uses.map((use) => this.resourceIndex.get(use.resource) ?? -1);
    const order = [...new Set(resources)].sort((a, b) => a - b);
    return order.map((resource) => {
      const uses = mode.uses.filter((_, index) => resources[index] === resource);
      const marks = (of: 'leaves' | 'avoids'): readonly string[] => [
        ...new Set(uses.flatMap((use) => use[of] ?? NONE)),
      ];
      return {
        resource,
        amount: whole(uses.reduce((sum, use) => sum + use.amount, 0)),
        soil: this.soil(marks('leaves'), marks('avoids')),
        cleans: uses.some((use) => use.cleans === true),
      };
    });
  }

  private soil(leaves: readonly string[], avoids: readonly string[]): number {
    if (leaves.length + avoids.length === 0) return 0;
    const left = this.listOf(leaves);
    const avoided = this.listOf(avoids);
    const byAvoided = this.soils.get(left) ?? new Map<MarkList, number>();
    this.soils.set(left, byAvoided);
    const known = byAvoided.get(avoided);
    if (known !== undefined) return known;
    const soil = this.soilMarks.push({ leaves: left, avoids: avoided }) - 1;
    byAvoided.set(avoided, soil);
    return soil;
  }

  /** The marks of a list; the same for all lists that say the same. */
  private listOf(list: readonly string[]): MarkList {
    if (list.length === 0) return NO_MARKS;
    const known = this.knownLists.get(list);
    if (known !== undefined) return known;
    const sorted = list.map((mark) => indexOf(this.marks, mark)).sort((a, b) => a - b);
    const marks = sorted.filter((mark, k) => mark !== sorted[k - 1]);
    const key = marks.join(',');
    const same = this.markLists.get(key) ?? { marks };
    this.markLists.set(key, same);
    this.knownLists.set(list, same);
    return same;
  }
}

/** The same mode for another task. */
function sameFor(task: number, mode: CompiledMode): CompiledMode {
  const { shortest, longest, uses, state, stateClass, costFixed, costPerMinute } = mode;
  return { task, shortest, longest, uses, state, stateClass, costFixed, costPerMinute };
}

/** Whether two modes of one task are the same in all that counts. */
function isSameMode(a: CompiledMode, b: CompiledMode): boolean {
  if (a.shortest !== b.shortest || a.longest !== b.longest || a.uses.length !== b.uses.length) return false;
  if (a.state !== b.state || a.stateClass !== b.stateClass) return false;
  if (a.costFixed !== b.costFixed || a.costPerMinute !== b.costPerMinute) return false;
  // Of one use alone there is one list for all that are alike.
  if (a.uses.length === 1) return a.uses === b.uses;
  return a.uses.every(({ resource, amount, soil, cleans }, k) => {
    const other = b.uses[k] as CompiledUse;
    return resource === other.resource && amount === other.amount && soil === other.soil && cleans === other.cleans;
  });
}

function indexOf(map: Map<string, number>, key: string): number {
  const known = map.get(key);
  if (known !== undefined) return known;
  map.set(key, map.size);
  return map.size - 1;
}
