/**
 * Priority rules for schedule generation, by their names in the literature (Kolisch 1996; Davis and Patterson 1975; Alvarez-Valdes
 * and Tamarit 1993). A rule gives every task a key from what is known before anything is placed; the smallest key goes first.
 */
import type { CompiledMode } from '../compiled.ts';
import type { Store } from '../propagation/store.ts';
import type { Random } from '../random.ts';
import type { Structure } from '../structure.ts';

export interface PriorityRule {
  readonly name: string;
  /** Serial takes the best task; parallel what can start first, ties by the rule. */
  readonly scheme: 'serial' | 'parallel';
  /** Backward places from the end of the horizon, then pulls the plan forward again. */
  readonly direction: 'forward' | 'backward';
  readonly measure: MeasureName | 'thumb';
  /** Resources whose jobs go first, longest first, for the measure `thumb`. */
  readonly firstResources?: readonly string[];
}

/** What the keys are made of. */
export interface RuleFacts {
  readonly earliestStart: Float64Array;
  readonly latestStart: Float64Array;
  readonly latestFinish: Float64Array;
  readonly length: Float64Array;
  /** Tasks that must come later, all generations. */
  readonly successors: Float64Array;
  readonly directSuccessors: Float64Array;
  /** Own length and the lengths of all later tasks. */
  readonly rankWeight: Float64Array;
  /** Own length and that of direct successors. */
  readonly directRankWeight: Float64Array;
  /** Σ over resources of amount ÷ capacity × length. */
  readonly resourceWork: Float64Array;
  /** The same summed over all later tasks. */
  readonly rankResourceWork: Float64Array;
  /** How many uses the task's block would soil, less how many would soil it; −1 to 1 of the largest. */
  readonly dirt: Float64Array;
}

type Measure = (facts: RuleFacts, task: number, random: Random) => number;

/** Smaller is more urgent. */
const measures = {
  'latest finish': (f, t) => f.latestFinish[t] as number,
  'latest start': (f, t) => f.latestStart[t] as number,
  'minimum slack': (f, t) => (f.latestStart[t] as number) - (f.earliestStart[t] as number),
  'earliest start': (f, t) => f.earliestStart[t] as number,
  'most total successors': (f, t) => -(f.successors[t] as number),
  'most direct successors': (f, t) => -(f.directSuccessors[t] as number),
  'greatest rank positional weight': (f, t) => -(f.directRankWeight[t] as number),
  'greatest total rank positional weight': (f, t) => -(f.rankWeight[t] as number),
  'most resource work': (f, t) => -(f.resourceWork[t] as number),
  'greatest cumulative resource work': (f, t) => -(f.rankResourceWork[t] as number),
  'resource work against latest finish': (f, t) =>
    (f.latestFinish[t] as number) - 0.5 * (f.rankResourceWork[t] as number),
  'shortest length': (f, t) => f.length[t] as number,
  'longest length': (f, t) => -(f.length[t] as number),
  'least start window middle': (f, t) => (f.earliestStart[t] as number) + (f.latestStart[t] as number),
  'cleanest first': (f, t) => (f.dirt[t] as number) * 1000 + (f.latestFinish[t] as number) * 0.5,
  'random mix': (f, t, random) => (f.latestFinish[t] as number) * (70 + random.below(61)),
  'random start mix': (f, t, random) => (f.latestStart[t] as number) * (70 + random.below(61)),
  'random order': (_f, _t, random) => random.below(1_000_000),
} satisfies Record<string, Measure>;
export type MeasureName = keyof typeof measures;

const rule = (
  measure: MeasureName,
  scheme: PriorityRule['scheme'] = 'serial',
  direction: PriorityRule['direction'] = 'forward',
): PriorityRule => ({ name: `${measure}, ${scheme}, ${direction}`, scheme, direction, measure });

/** The rules that a planner is compared with, those that most often give a plan first. */
export const priorityRules: readonly PriorityRule[] = [
  rule('greatest total rank positional weight', 'parallel'),
  rule('cleanest first', 'serial', 'backward'),
  rule('latest start', 'serial', 'backward'),
  rule('latest finish'),
  rule('random start mix', 'serial', 'backward'),
  rule('latest finish', 'serial', 'backward'),
  rule('minimum slack', 'parallel'),
  rule('greatest total rank positional weight', 'serial', 'backward'),
  rule('greatest total rank positional weight'),
  rule('shortest length', 'parallel'),
  rule('resource work against latest finish'),
  rule('latest finish', 'parallel'),
  rule('latest start'),
  rule('cleanest first', 'parallel'),
  rule('random mix', 'parallel'),
  rule('most total successors', 'parallel'),
  rule('greatest rank positional weight'),
  rule('latest start', 'parallel'),
  rule('most direct successors'),
  rule('most total successors'),
  rule('longest length', 'parallel'),
  rule('greatest rank positional weight', 'parallel'),
  rule('random mix'),
  rule('most resource work', 'parallel'),
  rule('greatest cumulative resource work'),
  rule('greatest cumulative resource work', 'parallel'),
  rule('cleanest first'),
  rule('earliest start'),
  rule('minimum slack'),
  rule('least start window middle'),
  rule('most resource work'),
  rule('random order'),
];

/**
 * The keys of a rule.
 *
 * @param backward for a dive from the end back: what must finish last goes first
 */
export function keysOf(
  measure: MeasureName,
  facts: RuleFacts,
  backward: boolean,
  random: Random,
  soilWeight = 0,
): Float64Array {
  const of: Measure = measures[measure];
  const sign = backward ? -1 : 1;
  return Float64Array.from(
    facts.length,
    (_, task) => sign * (of(facts, task, random) + soilWeight * (facts.dirt[task] as number)),
  );
}

/**
 * Keys of the rule of thumb: the longest job on the named resources first, then the longest remaining work. A block counts as long as
 * its longest task that uses one of them.
 */
export function thumbKeys(
  store: Store,
  structure: Structure,
  facts: RuleFacts,
  firstResources: readonly string[],
): Float64Array {
  const { problem, modes, taskCount } = store.compiled;
  const first = new Set(problem.resources.flatMap((resource, r) => (firstResources.includes(resource.id) ? [r] : [])));
  const onFirst = new Float64Array(structure.blockTasks.start.length);
  for (const mode of modes) {
    if (store.isAbsent(mode.task) || !mode.uses.some((use) => first.has(use.resource))) continue;
    const block = structure.block[mode.task] as number;
    onFirst[block] = Math.max(onFirst[block] as number, mode.shortest);
  }
  return Float64Array.from(
    { length: taskCount },
    (_, task) => -(onFirst[structure.block[task] as number] as number) * 100_000 - (facts.rankWeight[task] as number),
  );
}

/** Reads the facts from a store that has been propagated and in which nothing is placed. */
export function ruleFacts(store: Store, structure: Structure): RuleFacts {
  const { taskCount, problem, capacity, horizon } = store.compiled;
  const make = (): Float64Array => new Float64Array(taskCount);
  const facts = {
    earliestStart: make(),
    latestStart: make(),
    latestFinish: make(),
    length: make(),
    successors: make(),
    directSuccessors: make(),
    rankWeight: make(),
    directRankWeight: make(),
    resourceWork: make(),
    rankResourceWork: make(),
    dirt: dirtOf(store, structure),
  };
  const most = problem.resources.map((_, r) => {
    let peak = 1;
    for (let t = 0; t < horizon; t++) peak = Math.max(peak, capacity[r * horizon + t] as number);
    return peak;
  });
  for (let task = 0; task < taskCount; task++) {
    facts.earliestStart[task] = store.earliestStart(task);
    facts.latestStart[task] = store.latestStart(task);
    facts.latestFinish[task] = store.latestEnd(task);
    facts.length[task] = store.shortest(task);
    facts.resourceWork[task] = leastWork(store, task, most);
  }
  const followers = store.compiled.problem.tasks.map((_, task) => later(store, structure, task));
  followers.forEach((list, task) => {
    facts.successors[task] = list.length;
    facts.rankWeight[task] = list.reduce((sum, t) => sum + (facts.length[t] as number), facts.length[task] as number);
    facts.rankResourceWork[task] = list.reduce(
      (sum, t) => sum + (facts.resourceWork[t] as number),
      facts.resourceWork[task] as number,
    );
    const { start, items } = structure.after;
    let weight = facts.length[task] as number;
    const direct = new Set<number>();
    for (let k = start[task] as number; k < (start[task + 1] as number); k++) direct.add(items[k] as number);
    for (const t of direct) weight += facts.length[t] as number;
    facts.directSuccessors[task] = direct.size;
    facts.directRankWeight[task] = weight;
  });
  return facts;
}

function dirtOf(store: Store, structure: Structure): Float64Array {
  const { taskCount, modes, problem, soilCount, soilMeets, taskModes } = store.compiled;
  interface Mark {
    readonly block: number;
    readonly soil: number;
    readonly weight: number;
  }
  const onResource = problem.resources.map((): Mark[] => []);
  for (const mode of modes) {
    const count = (taskModes.start[mode.task + 1] as number) - (taskModes.start[mode.task] as number);
    for (const use of mode.uses)
      if (use.soil > 0 && !store.isAbsent(mode.task))
        onResource[use.resource]?.push({
          block: structure.block[mode.task] as number,
          soil: use.soil,
          weight: 1 / count,
        });
  }
  const dirt = new Float64Array(structure.blockTasks.start.length);
  for (const marks of onResource) {
    // Marks with the same soil meet the same others, so these are summed by soil first.
    const weights = new Float64Array(soilCount);
    for (const { soil, weight } of marks) weights[soil] = (weights[soil] as number) + weight;
    const soils = [...new Set(marks.map(({ soil }) => soil))];
    const surplus = new Float64Array(soilCount);
    for (const u of soils)
      for (const v of soils) {
        if (soilMeets[u * soilCount + v] === 0) continue;
        surplus[u] = (surplus[u] as number) + (weights[v] as number);
        surplus[v] = (surplus[v] as number) - (weights[u] as number);
      }
    for (const { block, soil, weight } of marks)
      dirt[block] = (dirt[block] as number) + weight * (surplus[soil] as number);
  }
  const most = Math.max(1e-9, ...dirt.map(Math.abs));
  return Float64Array.from(
    { length: taskCount },
    (_, task) => (dirt[structure.block[task] as number] as number) / most,
  );
}

function leastWork(store: Store, task: number, most: readonly number[]): number {
  const { taskModes, modes } = store.compiled;
  let least = Infinity;
  for (let k = taskModes.start[task] as number; k < (taskModes.start[task + 1] as number); k++) {
    const mode = modes[taskModes.items[k] as number] as CompiledMode;
    let work = 0;
    for (const use of mode.uses) work += (use.amount / (most[use.resource] ?? 1)) * mode.shortest;
    least = Math.min(least, work);
  }
  return least === Infinity ? 0 : least;
}

/** Tasks that lags put after this one, all generations, absent ones left out. */
function later(store: Store, structure: Structure, task: number): number[] {
  const { start, items } = structure.after;
  const seen = new Set<number>([task]);
  const queue = [task];
  for (let at = queue.pop(); at !== undefined; at = queue.pop())
    for (let k = start[at] as number; k < (start[at + 1] as number); k++) {
      const to = items[k] as number;
      if (seen.has(to) || store.isAbsent(to)) continue;
      seen.add(to);
      queue.push(to);
    }
  seen.delete(task);
  return [...seen];
}
